package message

import (
	"bytes"
	"sort"
	"unicode/utf8"
)

// ByteOrderMark may come before the first character of a file. It is no character of the text and has no column.
const ByteOrderMark = "\uFEFF"

// Source is a text that messages point into.
type Source struct {
	Name string // slash path relative to the project folder, as the user gave it: "content/guides/soil.md"
	Text []byte // as it was read; a byte order mark and carriage returns are still in it

	// Above is how many lines of the file are above Text, when it is only a part of a long one.
	Above int
}

// Position gives the line and the column of a byte offset, both from 1. A column counts characters (Unicode code
// points), whatever their width; an offset inside a character counts as its start, one outside the text as the
// nearest end.
func (s *Source) Position(offset int) (line, column int) {
	l := newLines(s)
	line, column = l.position(offset)
	return s.Above + line, column
}

// Line gives the line of a byte offset, from 1.
func (s *Source) Line(offset int) int {
	return s.Above + bytes.Count(s.Text[:offset], []byte("\n")) + 1
}

// lines finds lines in one source. It remembers the last place it was asked for, so that a run of sorted offsets
// costs one pass over the text even when the text is a single long line.
type lines struct {
	text   []byte
	starts []int // offset of the first byte of each line
	last   struct{ offset, line, column int }
}

func newLines(s *Source) *lines {
	l := &lines{text: s.Text, starts: []int{0}}
	for at := 0; ; {
		next := bytes.IndexByte(l.text[at:], '\n')
		if next < 0 {
			return l
		}
		at += next + 1
		l.starts = append(l.starts, at)
	}
}

// clamp brings an offset inside the text and to the start of a character.
func (l *lines) clamp(offset int) int {
	offset = max(0, min(offset, len(l.text)))
	for back := 1; back < utf8.UTFMax && offset < len(l.text) && !utf8.RuneStart(l.text[offset]); back++ {
		if offset-back < 0 {
			break
		}
		if _, size := utf8.DecodeRune(l.text[offset-back:]); size > back {
			return offset - back
		}
	}
	return offset
}

// bounds gives the first byte of a line (from 1), after a byte order mark, and the end of what is seen of it: the line
// end is left out, be it a line feed or a carriage return and a line feed.
func (l *lines) bounds(line int) (start, end int) {
	start, end = l.starts[line-1], len(l.text)
	if line < len(l.starts) {
		end = l.starts[line] - 1
		if end > start && l.text[end-1] == '\r' {
			end--
		}
	}
	if line == 1 && bytes.HasPrefix(l.text, []byte(ByteOrderMark)) {
		start = len(ByteOrderMark)
	}
	return start, max(start, end)
}

func (l *lines) position(offset int) (line, column int) {
	offset = l.clamp(offset)
	line = sort.SearchInts(l.starts, offset+1)
	start, end := l.bounds(line)
	offset = max(start, min(offset, end))
	column = 1
	if l.last.line == line && l.last.offset <= offset {
		start, column = l.last.offset, l.last.column
	}
	column += utf8.RuneCount(l.text[start:offset])
	l.last.offset, l.last.line, l.last.column = offset, line, column
	return line, column
}

// end is the position of a span's end. It leaves the memory of the last place as it was: the next message may start
// before the end of this one, and would be counted from the start of its line.
func (l *lines) end(s Span) (line, column int) {
	last := l.last
	line, column = l.position(max(s.Start, s.End))
	l.last = last
	return line, column
}
