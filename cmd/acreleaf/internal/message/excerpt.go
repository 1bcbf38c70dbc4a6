package message

import (
	"strings"
	"unicode/utf8"
)

// Excerpt is the source line of a message in three parts; joined, they are what to show. Tabs are spaces, a long line
// is cut with "…" at the ends, and only the marked part may be empty (the place is then before After).
type Excerpt struct{ Before, Marked, After string }

const (
	windowCells = 96 // widest excerpt, so that gutter and excerpt fit a terminal of 104
	markedCells = 64 // widest marked part, so that some of what surrounds it is always seen
	tabCells    = 4
)

// excerpt shows the line that a span starts on. The span is cut at the end of that line.
func (l *lines) excerpt(s Span) Excerpt {
	line, _ := l.position(s.Start)
	start, end := l.bounds(line)
	from := max(start, min(l.clamp(s.Start), end))
	to := max(from, min(s.End, end))

	before := takeBefore(l.text[start:from])
	marked := takeAfter(l.text[from:to], before.width())
	after := takeAfter(l.text[to:end], before.width()+marked.width())

	marked.cutEnd(markedCells)
	room := windowCells - marked.width()
	after.cutEnd(max(room/3, room-before.width()))
	before.cutStart(room - after.width())
	return Excerpt{before.String(), marked.String(), after.String()}
}

// cell is one character as shown, or a tab as spaces.
type cell struct {
	text  string
	width int
}

// strip is a run of cells; more says that it has been cut at the end that is away from the mark.
type strip struct {
	cells []cell
	more  bool
}

// takeBefore takes the last characters of a text, no more than a window can hold: a line may be megabytes long.
func takeBefore(text []byte) strip {
	at := len(text)
	for taken := 0; at > 0 && taken < windowCells; taken++ {
		_, size := utf8.DecodeLastRune(text[:at])
		at -= size
	}
	return strip{takeAfter(text[at:], 0).cells, at > 0}
}

// takeAfter takes the first characters of a text that starts in the given cell of its line.
func takeAfter(text []byte, column int) strip {
	var s strip
	for len(text) > 0 {
		if len(s.cells) == windowCells {
			s.more = true
			break
		}
		r, size := utf8.DecodeRune(text)
		text = text[size:]
		c := cell{width: tabCells - column%tabCells}
		if r == '\t' {
			c.text = strings.Repeat(" ", c.width)
		} else {
			r = visible(r)
			c = cell{string(r), width(r)}
		}
		column += c.width
		s.cells = append(s.cells, c)
	}
	return s
}

func (s *strip) width() int {
	sum := 0
	for _, c := range s.cells {
		sum += c.width
	}
	return sum
}

// cutEnd drops cells from the end until the rest and an ellipsis fit, when they must.
func (s *strip) cutEnd(limit int) {
	wide := s.width()
	if wide <= limit && !s.more {
		return
	}
	for ; wide > limit-1 && len(s.cells) > 0; s.cells = s.cells[:len(s.cells)-1] {
		wide -= s.cells[len(s.cells)-1].width
	}
	s.cells = append(s.cells, cell{"…", 1})
}

// cutStart is cutEnd at the other end.
func (s *strip) cutStart(limit int) {
	wide := s.width()
	if wide <= limit && !s.more {
		return
	}
	for ; wide > limit-1 && len(s.cells) > 0; s.cells = s.cells[1:] {
		wide -= s.cells[0].width
	}
	s.cells = append([]cell{{"…", 1}}, s.cells...)
}

func (s *strip) String() string {
	var b strings.Builder
	for _, c := range s.cells {
		b.WriteString(c.text)
	}
	return b.String()
}
