package config

import (
	"bytes"
	"errors"
	"io"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"

	"acreleaf/cmd/acreleaf/internal/message"
)

// reader turns one stretch of YAML into nodes and their places into spans of the whole source.
type reader struct {
	src      *message.Source
	start    int    // offset of text in the source
	text     []byte // the YAML, without a byte order mark
	lines    []int  // offset in text of each line, as YAML counts lines
	messages message.List
	broken   bool // the text is no table, so nothing can be said to be missing from it
}

func newReader(src *message.Source, span message.Span) *reader {
	r := &reader{src: src, start: span.Start, text: src.Text[span.Start:span.End]}
	if rest, ok := bytes.CutPrefix(r.text, []byte("\uFEFF")); ok {
		r.start, r.text = r.start+len(r.text)-len(rest), rest
	}
	r.lines = []int{0}
	for at := 0; at < len(r.text); {
		size := breakSize(r.text[at:])
		if size > 0 {
			r.lines = append(r.lines, at+size)
		}
		at += max(1, size)
	}
	return r
}

// breakSize gives the length of the line end that a text begins with: YAML has more kinds of them than other formats.
func breakSize(text []byte) int {
	if c := text[0]; c > '\r' && c < utf8.RuneSelf {
		return 0
	}
	for _, end := range []string{"\r\n", "\n", "\r", "\u0085", "\u2028", "\u2029"} {
		if bytes.HasPrefix(text, []byte(end)) {
			return len(end)
		}
	}
	return 0
}

func (r *reader) add(m message.Message) {
	m.Source = r.src
	r.messages = append(r.messages, m)
}

// parse gives the root mapping, or nil when there is none; anything but one mapping is a fault.
func (r *reader) parse() *yaml.Node {
	decoder := yaml.NewDecoder(bytes.NewReader(r.text))
	var document, next yaml.Node
	err := decoder.Decode(&document)
	if errors.Is(err, io.EOF) {
		return nil // empty, or nothing but comments
	}
	if err != nil {
		r.addSlip(err)
		return nil
	}
	if err := decoder.Decode(&next); !errors.Is(err, io.EOF) {
		if err != nil {
			r.addSlip(err)
			return nil
		}
		r.add(message.Message{ID: "yaml", Span: r.span(&next), Text: "a second table begins here",
			Note: `delete the line "---"`})
	}
	root := document.Content[0]
	if root.Kind == yaml.ScalarNode && root.Tag == "!!null" {
		return nil
	}
	if root.Kind != yaml.MappingNode {
		r.addSlip(nil)
		return nil
	}
	r.refuseReuse(root)
	return root
}

// refused is the tag of a value that has its message already.
const refused = "!refused"

// refuseReuse finds YAML's ways to write a value once and use it twice. They are no help in files this small, and
// values hidden behind them have no place of their own.
func (r *reader) refuseReuse(n *yaml.Node) {
	if n.Kind == yaml.AliasNode || n.Anchor != "" || n.Style&yaml.TaggedStyle != 0 {
		r.add(message.Message{ID: "yaml", Span: r.span(n), Text: "a text may not begin with &, * or !",
			Note: "put the text in quotes, or write the value itself"})
		*n = yaml.Node{Kind: yaml.ScalarNode, Tag: refused, Line: n.Line, Column: n.Column}
		return
	}
	for _, child := range n.Content {
		r.refuseReuse(child)
	}
}

// offset turns a line and a column of YAML, both from 1 and counted in characters, into an offset in text.
func (r *reader) offset(line, column int) int {
	if line < 1 || line > len(r.lines) {
		return len(r.text)
	}
	at := r.lines[line-1]
	for ; column > 1 && at < len(r.text); column-- {
		_, size := utf8.DecodeRune(r.text[at:])
		at += size
	}
	return at
}

// span is the place of a node's text: the whole of a scalar on one line, else the rest of its first line.
func (r *reader) span(n *yaml.Node) message.Span {
	at := r.offset(n.Line, n.Column)
	line := string(r.restOfLine(at))
	size := len(line)
	if n.Kind == yaml.ScalarNode {
		switch {
		case strings.HasPrefix(line, n.Value) && n.Value != "":
			size = len(n.Value)
		case strings.HasPrefix(line, `"`) || strings.HasPrefix(line, `'`):
			size = quotedSize(line)
		}
	}
	return message.Span{Start: r.start + at, End: r.start + at + size}
}

// restOfLine is what follows on a line, without the spaces at its end.
func (r *reader) restOfLine(at int) []byte {
	end := at
	for end < len(r.text) && breakSize(r.text[end:]) == 0 {
		end++
	}
	return bytes.TrimRight(r.text[at:end], " \t")
}

// lineSpan is the place of the line that begins at an offset in text.
func (r *reader) lineSpan(at int) message.Span {
	return message.Span{Start: r.start + at, End: r.start + at + len(r.restOfLine(at))}
}

// quotedSize is the length of a text in quotes, or of the whole line when the quotes end on another.
func quotedSize(line string) int {
	quote := line[0]
	for i := 1; i < len(line); i++ {
		switch {
		case quote == '"' && line[i] == '\\':
			i++
		case line[i] == quote && quote == '\'' && i+1 < len(line) && line[i+1] == quote:
			i++
		case line[i] == quote:
			return i + 1
		}
	}
	return len(line)
}

// firstLine is the first line that has something on it, where what is missing from the whole is reported.
func (r *reader) firstLine() message.Span {
	for _, at := range r.lines {
		if s := r.lineSpan(at); s.Start < s.End {
			return s
		}
	}
	return message.Span{Start: r.start, End: r.start}
}
