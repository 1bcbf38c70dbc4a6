package yamltext

import (
	"cmp"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"acreleaf/cmd/acreleaf/internal/message"
)

// A YAML library says what it found in the terms of YAML's grammar, and often a line too late. When it refuses a text,
// the lines are looked through for the slips that people make, and only when none is found its own words are shown.

// unfitSign is the message for a sign that has a meaning of its own in YAML.
const unfitSign = "a text cannot begin with this sign"

// slip is a way to get a line wrong.
type slip struct {
	line  *regexp.Regexp // the group is the place
	text  string
	note  string
	quote bool // add the line with its text in quotes to the note
}

const keyStart = `^\s*(?:- +)?[\w-]+:[ \t]+` // a key and the space before its text

var slips = []slip{
	{line: regexp.MustCompile(`^ *(\t+)`),
		text: "there is a tab at the start of this line", note: "use spaces to indent a line"},
	{line: regexp.MustCompile(keyStart + `[^"'#|>\[{\s][^#]*?(:)(?: |$)`),
		text: "a colon with a space after it ends the text too early", note: "put the text in quotes", quote: true},
	{line: regexp.MustCompile(keyStart + "([@`%&*!,\\]}]|[|>][-+0-9]*[ \\t]+[^#\\s])"),
		text: unfitSign, note: "put the text in quotes", quote: true},
	{line: regexp.MustCompile(keyStart + `("(?:[^"\\]|\\.)*)$`),
		text: "these quotes are not closed", note: `type " at the end of the text`},
	{line: regexp.MustCompile(keyStart + `('(?:[^']|'')*)$`),
		text: "these quotes are not closed", note: "type ' at the end of the text"},
	{line: regexp.MustCompile(keyStart + `"(?:[^"\\]|\\.)*"[ \t]*([^#\s].*)$`),
		text: "there is text after the quotes", note: `put the whole text in one pair of ", with ' inside`},
	{line: regexp.MustCompile(keyStart + `'(?:[^']|'')*'[ \t]*([^#\s'].*)$`),
		text: "there is text after the quotes", note: `put the whole text in one pair of ", with ' inside`},
	{line: regexp.MustCompile(keyStart + `(\[[^\]]*)$`),
		text: "this list is not closed", note: "type ] at its end, or put the text in quotes"},
	{line: regexp.MustCompile(`^\s*[\w-]+(:)[^\s:]`),
		text: "a space is missing after the colon", note: "type a space after the colon"},
	{line: regexp.MustCompile("^(```+|~~~+)"),
		text: "a block begins here, and the one above it is not closed",
		note: "close the block above on a line of its own, with the signs that it begins with"},
	{line: regexp.MustCompile(`: \[(?:[^\]"']*,)?[ \t]*(,)`),
		text: "there is nothing before this comma", note: "take the comma out, or write a text before it"},
	{line: regexp.MustCompile(`^([^-#\s:][^:]*)$`),
		text: "this line has no colon"},
}

var (
	opensBlock = regexp.MustCompile(`: +[|>][-+0-9]*$`)            // the text is in the lines below
	keyAndText = regexp.MustCompile(`^( *)([\w-]+):[ \t]+(\S.*)$`) // a key with a text
	setIn      = regexp.MustCompile(`^( +)[\w-]+:(?: |$)`)
)

// typeLine says how a line is written.
func (t *Text) typeLine() string {
	return fmt.Sprintf("type a key, a colon, a space and the text, as in %q", t.Example)
}

// Slip is the message for a text that is no YAML, or no table when err is nil.
func (t *Text) Slip(err error) message.Message {
	if deep, is := err.(deepError); is {
		return t.fault(t.restSpan(deep.at), tooDeep, "close some of them, or put a text that has such signs in it in quotes")
	}
	if m, known := t.knownSlip(); known {
		return m
	}
	switch {
	case err == nil && len(t.lineStarts()) <= 2:
		return t.fault(t.FirstLine(), "this line is not a key with a text", t.typeLine())
	case err == nil:
		return t.fault(t.FirstLine(), "these lines are not a table of keys and texts", t.typeLine())
	}
	line, words := yamlWords(err)
	span := t.FirstLine()
	if line > 0 {
		span = t.restSpan(t.offset(line, 1))
	}
	return t.fault(span, "this cannot be read: "+words,
		"look at this line and the one above it; put texts that have signs in them in quotes")
}

// knownSlip looks for the first line that has one of the usual slips.
func (t *Text) knownSlip() (message.Message, bool) {
	block := -1    // how far the key is set in whose text is the lines below it
	outer := "   " // the space in front of the last key with a text
	last := false  // whether the last line was such a key
	before := 0    // how far the last line is set in
	dashed := false
	for _, at := range t.lineStarts() {
		line := string(t.restOfLine(at))
		indent := len(line) - len(strings.TrimLeft(line, " "))
		if block >= 0 && (line == "" || indent > block) {
			continue
		}
		block = -1
		if opensBlock.MatchString(line) {
			block, last = indent, false
			continue
		}
		if found := setIn.FindStringSubmatchIndex(line); found != nil && last && found[3] > len(outer) {
			return t.fault(t.span(at, at+found[3]), "this line is indented, and the line above it has a text of its own",
				"begin this line in the same column as the line above it"), true
		}
		if m, known := t.slipOfLine(at, line); known {
			return m, true
		}
		dash := strings.HasPrefix(line[indent:], "- ")
		if indent > 0 && indent == before && dash != dashed && (dashed || last) {
			return t.fault(t.span(at+indent, at+len(line)), "a list and a table of keys are mixed here",
				`begin all of these lines with "- ", or all with a key and a colon`), true
		} else if line != "" {
			dashed = dash && (dashed || indent > before)
			before = indent
		}
		if found := keyAndText.FindStringSubmatch(line); found != nil {
			outer, last = found[1], true
		} else if line != "" {
			last = false
		}
	}
	return message.Message{}, false
}

// slipOfLine looks for one of the usual slips in a line that begins at an offset.
func (t *Text) slipOfLine(at int, line string) (message.Message, bool) {
	for _, s := range slips {
		if found := s.line.FindStringSubmatchIndex(line); found != nil {
			return t.fault(t.span(at+found[2], at+found[3]), s.text, cmp.Or(s.noteFor(line), t.typeLine())), true
		}
	}
	return message.Message{}, false
}

// noteFor says what to type in place of a line, "" where the text's own example says it.
func (s slip) noteFor(line string) string {
	if found := keyAndText.FindStringSubmatch(line); s.quote && found != nil {
		text := strings.ReplaceAll(found[3], `"`, "'")
		return fmt.Sprintf(`%s: %s: "%s"`, s.note, found[2], text)
	}
	return s.note
}

var yamlError = regexp.MustCompile(`^yaml: (?:line (\d+): )?(.*)$`)

// yamlWords takes the line, 0 when there is none, out of an error of the YAML library.
func yamlWords(err error) (line int, words string) {
	first, _, _ := strings.Cut(err.Error(), "\n")
	found := yamlError.FindStringSubmatch(first)
	if found == nil {
		return 0, first
	}
	line, _ = strconv.Atoi(found[1]) // no digits: no line
	return line, found[2]
}
