package config

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"acreleaf/cmd/acreleaf/internal/message"
)

// A YAML library says what it found in the terms of YAML's grammar, and often a line too late. When it refuses a text,
// the lines are looked through for the slips that people make, and only when none is found its own words are shown.

// slip is a way to get a line wrong.
type slip struct {
	line *regexp.Regexp // the first group is the place
	text string
	note string
}

var slips = []slip{
	{regexp.MustCompile(`^ *(\t+)`),
		"a tab stands in front of this line", "use spaces to set a line in"},
	{regexp.MustCompile(`^\s*(?:- +)?[\w-]+: +[^"'#|>\[{\s][^#]*?(:)(?: |$)`),
		"a colon with a space after it ends the text too early", `put the whole text in quotes: title: "Soil: the basics"`},
	{regexp.MustCompile("^\\s*(?:- +)?[\\w-]+:[ \\t]+([@`%&*!|>,\\]}])"),
		"a text cannot begin with this sign", "put the text in quotes"},
	{regexp.MustCompile(`^\s*(?:- +)?[\w-]+: +("(?:[^"\\]|\\.)*)$`),
		"these quotes are not closed", "type \" at the end of the text"},
	{regexp.MustCompile(`^\s*(?:- +)?[\w-]+: +('(?:[^']|'')*)$`),
		"these quotes are not closed", "type ' at the end of the text"},
	{regexp.MustCompile(`^\s*(?:- +)?[\w-]+: +"(?:[^"\\]|\\.)*"[ \t]*([^#\s].*)$`),
		"there is text after the quotes", "put the whole text in one pair of quotes, with single quotes inside"},
	{regexp.MustCompile(`^\s*(?:- +)?[\w-]+: +(\[[^\]]*)$`),
		"this list is not closed", "type ] at its end, or put the text in quotes"},
	{regexp.MustCompile(`^\s*[\w-]+(:)[^\s:]`),
		"a space is missing after the colon", "type a space after the colon"},
	{regexp.MustCompile(`^([^-#\s:][^:]*)$`),
		"this line has no colon", `type a key, a colon, a space and the text, as in "title: Nitrogen in your soil"`},
}

var opensBlock = regexp.MustCompile(`: +[|>][-+0-9]*$`)

// addSlip adds the message for a text that is not YAML, or not a table when err is nil.
func (r *reader) addSlip(err error) {
	block := -1 // the indent of a key whose text is the lines below it
	for _, at := range r.lines {
		line := string(r.restOfLine(at))
		indent := len(line) - len(strings.TrimLeft(line, " "))
		if block >= 0 && (line == "" || indent > block) {
			continue
		}
		block = -1
		if opensBlock.MatchString(line) {
			block = indent
		}
		for _, s := range slips {
			if found := s.line.FindStringSubmatchIndex(line); found != nil {
				start := r.start + at
				r.add(message.Message{ID: "yaml", Text: s.text, Note: s.note,
					Span: message.Span{Start: start + found[2], End: start + found[3]}})
				return
			}
		}
	}
	m := message.Message{ID: "yaml", Span: r.firstLine(), Text: "these lines are not a table of keys and values",
		Note: `type a key, a colon, a space and the text on each line, as in "title: Nitrogen in your soil"`}
	if err != nil {
		line, words := yamlWords(err)
		m.Text = fmt.Sprintf("this cannot be read: %s", words)
		m.Note = "look at this line and the one above it; put texts that have signs in them in quotes"
		if line > 0 {
			start := r.offset(line, 1)
			m.Span = message.Span{Start: r.start + start, End: r.start + start + len(r.restOfLine(start))}
		}
	}
	r.add(m)
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
