package rows

import (
	"bytes"
	"fmt"
	"unicode/utf8"

	"acreleaf/cmd/acreleaf/internal/message"
)

// start looks at the first bytes of a file: what it is, and what parts its cells. It gives a sentence and a note if the
// file is none that can be read.
func (w *work) start() (text, note string) {
	s := &w.scanner
	for s.err == nil && bytes.IndexByte(s.buffer[:s.filled], '\n') < 0 && s.filled <= maxRow {
		s.fill()
	}
	begin := s.buffer[:s.filled]
	const saveAs = `save it again as "CSV UTF-8"`
	switch {
	case bytes.HasPrefix(begin, []byte("\xFF\xFE")), bytes.HasPrefix(begin, []byte("\xFE\xFF")):
		return "this file is saved as UTF-16", saveAs
	case bytes.HasPrefix(begin, []byte("PK\x03\x04")), bytes.HasPrefix(begin, []byte("\xD0\xCF\x11\xE0")):
		return "this file is a workbook, and rows are read from a CSV file", "open it, and " + saveAs
	}
	if bytes.HasPrefix(begin, []byte(message.ByteOrderMark)) {
		s.at = len(message.ByteOrderMark)
		w.out.line = append(w.out.line, message.ByteOrderMark...)
	}
	line, _, _ := bytes.Cut(begin[s.at:], []byte("\n"))
	s.separator = separator(line)
	if bytes.HasSuffix(line, []byte("\r")) {
		w.out.lineEnd = "\r\n"
	}
	if bytes.IndexByte(bytes.TrimSuffix(line, []byte("\r")), '\r') >= 0 {
		return "the lines of this file end with a carriage return alone", saveAs
	}
	return "", ""
}

// separator is what parts the cells of a line: the one of three signs that is there most often, outside quotation
// marks.
func separator(line []byte) byte {
	count, quoted := map[byte]int{}, false
	for _, c := range line {
		if c == '"' {
			quoted = !quoted
		}
		if !quoted {
			count[c]++
		}
	}
	most := byte(',')
	for _, c := range []byte{';', '\t'} {
		if count[c] > count[most] {
			most = c
		}
	}
	return most
}

// badByte finds the first byte of a row that is not text, and says what is wrong with it. It gives -1 if there is none.
func badByte(row []byte) (at int, text, note string) {
	if at := bytes.IndexByte(row, 0); at >= 0 {
		return at, "there is a NUL byte here, which no text has", "delete it, or save the file again as CSV UTF-8"
	}
	if utf8.Valid(row) {
		return -1, "", ""
	}
	for {
		r, size := utf8.DecodeRune(row[at:])
		if r == utf8.RuneError && size <= 1 {
			return at, fmt.Sprintf("byte 0x%02X is not UTF-8 text", row[at]),
				"save the file again as CSV UTF-8, then look at the letter in this place"
		}
		at += size
	}
}
