package yamltext

import (
	"bytes"
	"sort"
	"unicode/utf8"

	"acreleaf/cmd/acreleaf/internal/message"
)

// Text is YAML in a source: in one stretch, or in lines with the marks of lists and quotations between them.
type Text struct {
	Example string // a line as it may be written, for messages: "title: Nitrogen in your soil"

	src    *message.Source
	bytes  []byte
	pieces []piece
	end    int    // offset in the source after the last piece
	lines  []int  // offset in bytes of each line, as YAML counts lines; made when it is first asked for
	whole  string // the bytes, for values that are parts of them
}

// piece is a part of a text that stands together in the source.
type piece struct {
	start   int // offset in Text.bytes
	source  int // offset in the source of its first character
	padding int // spaces at its start that stand for part of a tab of the source
}

// Cut gives the text of a span of a source, without a byte order mark.
func Cut(src *message.Source, span message.Span) *Text {
	text, start := src.Text[span.Start:span.End], span.Start
	if rest, ok := bytes.CutPrefix(text, []byte(message.ByteOrderMark)); ok {
		start, text = span.End-len(rest), rest
	}
	return &Text{src: src, bytes: text, pieces: []piece{{source: start}}, end: span.End}
}

// New gives a text that has no lines yet, with room for some lines and bytes.
func New(src *message.Source, lines, size int) *Text {
	return &Text{src: src, pieces: make([]piece, 0, lines), bytes: make([]byte, 0, size)}
}

// AddLine adds a line, without its end, that is at an offset of the source. Padding is how many spaces come before
// it that stand for part of a tab.
func (t *Text) AddLine(line []byte, source, padding int) {
	t.pieces = append(t.pieces, piece{start: len(t.bytes), source: source, padding: padding})
	t.bytes = append(t.bytes, bytes.Repeat([]byte(" "), padding)...)
	t.bytes = append(append(t.bytes, line...), '\n')
	t.end = source + len(line)
	t.lines = nil
}

// Len is the length of the text in bytes.
func (t *Text) Len() int { return len(t.bytes) }

// Lines is how many lines were added.
func (t *Text) Lines() int { return len(t.pieces) }

// Line gives a line that was added, without its end.
func (t *Text) Line(i int) []byte {
	end := len(t.bytes)
	if i+1 < len(t.pieces) {
		end = t.pieces[i+1].start
	}
	return t.bytes[t.pieces[i].start : end-1]
}

// Only gives the text that has nothing but one of the lines that were added.
func (t *Text) Only(i int) *Text {
	p, line := t.pieces[i], t.Line(i)
	return &Text{
		Example: t.Example, src: t.src, bytes: t.bytes[p.start : p.start+len(line)+1],
		pieces: []piece{{source: p.source, padding: p.padding}}, end: p.source + len(line) - p.padding,
	}
}

// LineSpan is the place of a part of a line that was added, in offsets of that line.
func (t *Text) LineSpan(i, start, end int) message.Span {
	return t.span(t.pieces[i].start+start, t.pieces[i].start+end)
}

// sourceOf gives the offset in the source of an offset in the text.
func (t *Text) sourceOf(at int) int {
	i := sort.Search(len(t.pieces), func(i int) bool { return t.pieces[i].start > at }) - 1
	if i < 0 {
		return t.end
	}
	p := t.pieces[i]
	return min(t.end, p.source+max(0, at-p.start-p.padding))
}

func (t *Text) span(start, end int) message.Span {
	from := t.sourceOf(start)
	return message.Span{Start: from, End: max(from, t.sourceOf(end))}
}

// lineStarts lists where the lines of YAML begin, which has more kinds of line ends than other formats.
func (t *Text) lineStarts() []int {
	if t.lines == nil {
		t.lines = make([]int, 1, 2+bytes.Count(t.bytes, []byte("\n")))
		for at := 0; at < len(t.bytes); {
			size := breakSize(t.bytes[at:])
			if size > 0 {
				t.lines = append(t.lines, at+size)
			}
			at += max(1, size)
		}
	}
	return t.lines
}

// breakSize gives the length of the line end that a text begins with, 0 for none.
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

// offset turns a line and a column of YAML, both from 1 and counted in characters, into an offset in the text.
func (t *Text) offset(line, column int) int {
	starts := t.lineStarts()
	if line < 1 || line > len(starts) {
		return len(t.bytes)
	}
	at := starts[line-1]
	for ; column > 1 && at < len(t.bytes); column-- {
		_, size := utf8.DecodeRune(t.bytes[at:])
		at += size
	}
	return at
}

// restOfLine is what follows on a line, without the spaces at its end.
func (t *Text) restOfLine(at int) []byte {
	end := at
	for end < len(t.bytes) && breakSize(t.bytes[end:]) == 0 {
		end++
	}
	return bytes.TrimRight(t.bytes[at:end], " \t")
}

// restSpan is the place of what follows on a line.
func (t *Text) restSpan(at int) message.Span { return t.span(at, at+len(t.restOfLine(at))) }

// FirstLine is the place of the first line that has something on it, where what is missing from the whole is reported.
func (t *Text) FirstLine() message.Span {
	for _, at := range t.lineStarts() {
		if s := t.restSpan(at); s.Start < s.End {
			return s
		}
	}
	start := t.sourceOf(0)
	return message.Span{Start: start, End: start}
}
