package markdown

import (
	"bytes"
	"sort"
)

// unixEnds gives a text whose lines all end with a line feed, and where carriage returns were dropped for it: the
// offsets in the new text of the line feeds that stood behind one. CommonMark has three kinds of line ends; goldmark
// trips over a carriage return in a code span and after the mark of an empty item. A text without any is not copied.
func unixEnds(text []byte) (unix []byte, dropped []int) {
	next := bytes.IndexByte(text, '\r')
	if next < 0 {
		return text, nil
	}
	unix = make([]byte, 0, len(text))
	for next >= 0 {
		unix = append(unix, text[:next]...)
		text = text[next+1:]
		if len(text) > 0 && text[0] == '\n' {
			dropped = append(dropped, len(unix))
			text = text[1:]
		}
		unix = append(unix, '\n')
		next = bytes.IndexByte(text, '\r')
	}
	return append(unix, text...), dropped
}

// beforeDropping gives the offset that a place had before the carriage returns were dropped. The end of a line is
// before its carriage return.
func beforeDropping(at int, dropped []int) int {
	return at + sort.SearchInts(dropped, at)
}
