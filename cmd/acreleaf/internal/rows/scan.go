package rows

import (
	"bytes"
	"io"
	"strings"
)

const (
	// maxRow is the longest row that is read, in bytes. It bounds what a quotation mark that is never closed can take.
	maxRow = 1 << 20

	firstBuffer = 1 << 16
)

// A scanner cuts a text into rows and cells. What it gives holds until the next row.
type scanner struct {
	in        io.Reader
	separator byte

	row    []byte // the text of the row, with its line end
	cells  []cell
	broken bool // the quotation marks of the last cell are wrong, and it goes on to the end of the line
	above  int  // how many lines of the file are above the row

	buffer     []byte
	at, filled int   // what is read and not yet cut lies between them
	err        error // why no more can be read
	height     int   // how many line ends the row has
}

// A cell is where one is in the text of its row, with its quotation marks.
type cell struct {
	start, end int
	quoted     bool
}

// next goes to the next row that is not blank. The error is io.EOF after the last one, errLong, or that of the reader.
func (s *scanner) next() error {
	for {
		s.above += s.height
		s.height = 0
		if err := s.cutNext(); err != nil {
			return err
		}
		s.height = bytes.Count(s.row, []byte("\n"))
		if len(s.cells) > 1 || s.cells[0].end > 0 {
			return nil
		}
	}
}

func (s *scanner) cutNext() error {
	for {
		text := s.buffer[s.at:s.filled]
		if len(text) == 0 && s.err != nil {
			return s.err
		}
		size, found := s.cut(text, s.err == io.EOF || len(text) > maxRow)
		switch {
		case found && size > maxRow:
			return errLong
		case found:
			s.row = text[:size]
			s.at += size
			return nil
		case s.err != nil:
			return s.err
		}
		s.fill()
	}
}

// fill reads more behind what has not been cut yet.
func (s *scanner) fill() {
	s.filled = copy(s.buffer, s.buffer[s.at:s.filled])
	s.at = 0
	if s.filled == len(s.buffer) {
		s.buffer = append(s.buffer, make([]byte, max(firstBuffer, len(s.buffer)))...)
	}
	for range 100 { // a reader may come back with nothing, but not for ever
		var n int
		if n, s.err = s.in.Read(s.buffer[s.filled:]); n > 0 || s.err != nil {
			s.filled += n
			return
		}
	}
	s.err = io.ErrNoProgress
}

// cut finds the cells of the first row of a text, and where the next row begins. last says that nothing comes after the
// text; without it, a row that is not ended is not found.
func (s *scanner) cut(text []byte, last bool) (size int, found bool) {
	s.cells, s.broken = s.cells[:0], false
	for at := 0; ; at++ { // past the separator
		c := cell{start: at, quoted: at < len(text) && text[at] == '"'}
		var ended bool
		if c.quoted {
			c.end, ended = s.quoted(text, at, last)
		} else {
			c.end, ended = s.plain(text, at, last)
		}
		if !ended {
			return 0, false
		}
		s.cells = append(s.cells, c)
		at = c.end
		if at == len(text) || text[at] != s.separator {
			return at + lineEnd(text[at:]), true
		}
	}
}

// plain finds the end of a cell without quotation marks around it.
func (s *scanner) plain(text []byte, start int, last bool) (end int, ended bool) {
	for end = start; end < len(text); end++ {
		if text[end] == s.separator {
			return end, true
		}
		if text[end] == '\n' {
			break
		}
	}
	if end == len(text) && !last {
		return 0, false
	}
	if end > start && text[end-1] == '\r' {
		end--
	}
	return end, true
}

// quoted finds the end of a cell in quotation marks. If they are wrong the cell is all of the line that they start on.
func (s *scanner) quoted(text []byte, start int, last bool) (end int, ended bool) {
	for end = start + 1; ; end++ { // past the second mark of two, which stand for one
		mark := bytes.IndexByte(text[end:], '"')
		if mark < 0 {
			break
		}
		end += mark + 1
		rest := text[end:]
		if !last && len(rest) < len("\r\n") {
			return 0, false
		}
		if len(rest) == 0 || rest[0] == s.separator || lineEnd(rest) > 0 {
			return end, true
		}
		if rest[0] != '"' {
			return s.breakOff(text, start, last)
		}
	}
	if !last {
		return 0, false
	}
	return s.breakOff(text, start, last)
}

// breakOff ends a cell whose quotation marks are wrong.
func (s *scanner) breakOff(text []byte, start int, last bool) (end int, ended bool) {
	line, _, found := bytes.Cut(text[start:], []byte("\n"))
	if !found && !last {
		return 0, false
	}
	s.broken = true
	return start + len(bytes.TrimSuffix(line, []byte("\r"))), true
}

// lineEnd is the length of the line end that a text starts with; 0 for none. A carriage return ends the last line too.
func lineEnd(text []byte) int {
	switch {
	case bytes.HasPrefix(text, []byte("\n")), len(text) == 1 && text[0] == '\r':
		return 1
	case bytes.HasPrefix(text, []byte("\r\n")):
		return 2
	}
	return 0
}

// text is what a cell says.
func (s *scanner) text(c cell) string {
	if !c.quoted || s.broken && c == s.cells[len(s.cells)-1] {
		return string(s.row[c.start:c.end])
	}
	return strings.ReplaceAll(string(s.row[c.start+1:c.end-1]), `""`, `"`)
}
