package markdown

import (
	"bytes"

	"go.yaml.in/yaml/v3"

	"acreleaf/cmd/acreleaf/internal/message"
)

// searchLimit bounds the lines of a body that are tried one after the other to find the one at fault.
const searchLimit = 200

// unreadable says which line of a body YAML's reader stumbles over. Its own message names a line that is often one of
// the next, in words that are not for growers, so the line is sought: it follows the longest start that can be read.
func (r *reading) unreadable(b *body, block message.Span) {
	if len(b.lines) > searchLimit {
		r.fault("block-line", block, "a line of this block cannot be read as “name: value”", entryExample)
		return
	}
	for i := len(b.lines) - 1; i >= 0; i-- {
		if i > 0 {
			var document yaml.Node
			if yaml.Unmarshal(b.text[:b.lines[i].start], &document) != nil {
				continue
			}
		}
		line := b.line(i)
		indent := len(line) - len(bytes.TrimLeft(line, " \t"))
		start := b.lines[i].start
		r.fault("block-line", b.span(start+indent, start+len(bytes.TrimRight(line, " \t\r"))),
			"this line cannot be read as “name: value”", hintFor(line))
		return
	}
}

// hintFor guesses from its look what to change in a line.
func hintFor(line []byte) string {
	key, value, found := bytes.Cut(bytes.TrimSpace(line), []byte(":"))
	value = bytes.TrimSpace(value)
	switch {
	case bytes.IndexByte(line[:len(line)-len(bytes.TrimLeft(line, " \t"))], '\t') >= 0:
		return "put spaces in place of the tab at its start"
	case !found:
		return entryExample
	case len(line) > 0 && (line[0] == ' ' || line[0] == '\t'):
		return "take out the spaces before it"
	case len(value) > 0 && (value[0] == '"' || value[0] == '\''):
		return "close the quote, and write nothing behind it"
	case len(value) > 0 && plainKey(append([]byte("x"), key...)):
		return "put the value between quotes: " + string(key) + ": \"" + string(value) + "\""
	}
	return entryExample
}

// marker finds a line that starts, ends or directs a YAML document: what follows it would not be read.
func (b *body) marker() (message.Span, bool) {
	for i, l := range b.lines {
		line := b.line(i)
		for _, mark := range []string{"---", "...", "%"} {
			if bytes.HasPrefix(line, []byte(mark)) {
				return b.span(l.start, l.start+len(bytes.TrimRight(line, " \t\r"))), true
			}
		}
	}
	return message.Span{}, false
}
