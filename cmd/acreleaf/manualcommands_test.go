package main

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/cli"
)

const commandsBefore = `Acreleaf is one program.
You type its name in a terminal, then what it should do, then options if you need them.
This page lists them all. The program tells you the same: type ` + "`acreleaf --help`" + `,
or the name of a command with ` + "`--help`" + ` after it.
`

const commandsAfter = `## Exit codes

A command ends with a number that other programs can read.

| number | means |
| --- | --- |
| ` + "`0`" + ` | all is well |
| ` + "`1`" + ` | errors were found, and nothing was written |
| ` + "`2`" + ` | the words you typed were not understood |

Answers go to standard output, messages to standard error. Messages are in colour on a terminal.
Set ` + "`NO_COLOR`" + ` to have them plain.
`

// Where the manual has more about a command.
var commandPages = map[string]string{
	"press":   "See [your first page](start.md).",
	"draft":   "See [your first page](start.md).",
	"desk":    "See [the desk](desk.md).",
	"epub":    "See [books to take along](books.md).",
	"packet":  "See [packets](packet.md).",
	"proof":   "See [the proof](proof.md).",
	"handout": "See [handouts](handouts.md).",
	"record":  "See [courses](courses.md).",
	"reckon": "The names and what each one takes are under [every calculation](calculations.md). " +
		"What is given follows as a name, an equals sign and a quantity. [Every unit](units.md) lists how to write it.",
}

// commandPage is made from what the program says when it is asked for help.
func commandPage(t *testing.T) *manualPage {
	var b strings.Builder
	b.WriteString(commandsBefore + "\n## acreleaf\n\n")
	root := help(t)
	writeCommand(&b, root[:slices.Index(root, "Commands:")])
	commands := commandNames(t)
	for _, name := range commands {
		fmt.Fprintf(&b, "\n## acreleaf %s\n\n", name)
		writeCommand(&b, help(t, name))
		if more := commandPages[name]; more != "" {
			b.WriteString("\n" + more + "\n")
		}
	}
	b.WriteString("\n" + commandsAfter)
	return &manualPage{name: "commands", title: "Commands and options", order: 29, body: b.String(),
		summary: "Everything that can be typed after the program's name, and what each option does."}
}

// help is what the program says of a command, in lines.
func help(t *testing.T, words ...string) []string {
	t.Helper()
	var out, err bytes.Buffer
	if exit := cli.Run(append(words, "--help"), &out, &err); exit != 0 {
		t.Fatalf("help of %v: %d\n%s", words, exit, &err)
	}
	return strings.Split(out.String(), "\n")
}

var commandLine = regexp.MustCompile(`^  ([a-z][a-z-]*)( |$)`)

func commandNames(t *testing.T) []string {
	var names []string
	listing := false
	for _, line := range help(t) {
		if found := commandLine.FindStringSubmatch(line); listing && found != nil {
			names = append(names, found[1])
		}
		listing = listing || line == "Commands:"
	}
	if len(names) < 4 {
		t.Fatalf("only the commands %v were found", names)
	}
	return names
}

// optionLine is one thing that can be typed and, two spaces or more behind it, what it does. An option of its own has a
// short name in front, or the room for one.
var optionLine = regexp.MustCompile(`^  (?:-\w, |    )?(\S.*?)(?:\s{2,}(\S.*))?$`)

// writeCommand writes what help says of a command: what it does, how it is typed, and a row for each thing after it.
func writeCommand(b *strings.Builder, lines []string) {
	usage := strings.TrimPrefix(lines[0], "Usage: ")
	var does []string
	at := 1
	for ; at < len(lines) && !strings.HasSuffix(lines[at], ":"); at++ {
		does = append(does, lines[at])
	}
	fmt.Fprintf(b, "%s\n\n```text\n%s\n```\n\n| you type | it does |\n| --- | --- |\n",
		strings.TrimSpace(strings.Join(does, "\n")), usage)
	typed, said := "", ""
	flush := func() {
		if typed != "" {
			fmt.Fprintf(b, "| `%s` | %s |\n", typed, plainCell(said))
		}
	}
	for _, line := range lines[at:] {
		deep := len(line)-len(strings.TrimLeft(line, " ")) > len("      ")
		switch found := optionLine.FindStringSubmatch(line); {
		case deep: // it goes on from the line above
			said = strings.TrimSpace(said + " " + strings.TrimSpace(line))
		case found != nil:
			flush()
			typed, said = found[1], found[2]
		}
	}
	flush()
}

// plainCell is a text for a cell of a table, in which nothing is Markdown.
func plainCell(text string) string { return strings.ReplaceAll(escaped(text), "|", `\|`) }

// escaped is a sentence in which nothing but code between backticks is Markdown.
func escaped(text string) string {
	var b strings.Builder
	inCode := false
	for _, r := range text {
		if r == '`' {
			inCode = !inCode
		}
		if !inCode && strings.ContainsRune(`\*_[]<>&#`, r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}
