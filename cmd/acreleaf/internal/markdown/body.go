package markdown

import (
	"bytes"
	"sort"
	"unicode/utf8"

	"github.com/yuin/goldmark/text"
	"go.yaml.in/yaml/v3"

	"acreleaf/cmd/acreleaf/internal/message"
)

// body is the text of a block without what comes before its lines (the indent of the fence, the marks of lists and
// quotations), and where each line of it is in the source.
type body struct {
	text  []byte
	lines []bodyLine
	end   int // offset in the source after the last line
}

// bodyLine is one line of a body.
type bodyLine struct {
	start   int // offset in body.text
	source  int // offset in the source of its first character
	padding int // spaces at its start that stand for part of a tab of the source
}

func newBody(r *reading, lines *text.Segments) *body {
	b := &body{lines: make([]bodyLine, 0, lines.Len())}
	for i := range lines.Len() {
		s := lines.At(i)
		b.lines = append(b.lines, bodyLine{start: len(b.text), source: r.offset(s.Start), padding: s.Padding})
		b.text = append(b.text, bytes.Repeat([]byte(" "), s.Padding)...)
		line := bytes.TrimRight(r.doc.text[s.Start:s.Stop], "\n")
		b.text = append(append(b.text, line...), '\n')
		b.end = r.offset(s.Start) + len(line)
	}
	return b
}

// line gives one line without its end.
func (b *body) line(i int) []byte {
	end := len(b.text)
	if i+1 < len(b.lines) {
		end = b.lines[i+1].start
	}
	return b.text[b.lines[i].start : end-1]
}

// only gives the body that has nothing but one line.
func (b *body) only(i int) *body {
	l := b.lines[i]
	line := b.line(i)
	return &body{
		text:  b.text[l.start : l.start+len(line)+1],
		lines: []bodyLine{{source: l.source, padding: l.padding}},
		end:   l.source + len(line) - l.padding,
	}
}

// hasMarker tells whether a line starts, ends or directs a YAML document: what follows it would not be read.
func (b *body) hasMarker() bool {
	for i := range b.lines {
		line := b.line(i)
		for _, mark := range []string{"---", "...", "%"} {
			if bytes.HasPrefix(line, []byte(mark)) {
				return true
			}
		}
	}
	return false
}

// sourceOf gives the offset in the source of an offset in the text.
func (b *body) sourceOf(at int) int {
	i := sort.Search(len(b.lines), func(i int) bool { return b.lines[i].start > at }) - 1
	if i < 0 {
		return b.end
	}
	l := b.lines[i]
	return min(b.end, l.source+max(0, at-l.start-l.padding))
}

func (b *body) span(start, end int) message.Span {
	from := b.sourceOf(start)
	return message.Span{Start: from, End: max(from, b.sourceOf(end))}
}

// offset gives the place in the text of a node of YAML, which counts lines and characters from 1, and has more kinds
// of line ends than a page.
func (b *body) offset(n *yaml.Node) int {
	at := 0
	for line := 1; line < n.Line && at < len(b.text); {
		r, size := utf8.DecodeRune(b.text[at:])
		at += size
		switch r {
		case '\r':
			if at < len(b.text) && b.text[at] == '\n' {
				continue
			}
			line++
		case '\n', '\u0085', '\u2028', '\u2029':
			line++
		}
	}
	for column := 1; column < n.Column && at < len(b.text); column++ {
		_, size := utf8.DecodeRune(b.text[at:])
		at += size
	}
	return at
}

// lineSpan is a node's place and the rest of its line.
func (b *body) lineSpan(n *yaml.Node) message.Span {
	at := b.offset(n)
	rest, _, _ := bytes.Cut(b.text[at:], []byte("\n"))
	return b.span(at, at+len(bytes.TrimRight(rest, " \t\r")))
}

// scalarSpan is the place of a scalar's text; of a quoted one, without the quotes.
func (b *body) scalarSpan(n *yaml.Node) message.Span {
	at := b.offset(n)
	switch {
	case n.Style&yaml.DoubleQuotedStyle != 0:
		end := at + 1
		for end < len(b.text) && b.text[end] != '"' {
			if b.text[end] == '\\' {
				end++
			}
			end++
		}
		return b.span(at+1, min(end, len(b.text)))
	case n.Style&yaml.SingleQuotedStyle != 0:
		end := at + 1
		for end < len(b.text) && (b.text[end] != '\'' || end+1 < len(b.text) && b.text[end+1] == '\'') {
			if b.text[end] == '\'' {
				end++
			}
			end++
		}
		return b.span(at+1, min(end, len(b.text)))
	case bytes.HasPrefix(b.text[at:], []byte(n.Value)):
		return b.span(at, at+len(n.Value))
	}
	return b.lineSpan(n) // over several lines: the first of them
}
