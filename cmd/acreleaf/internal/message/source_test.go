package message

import (
	"strings"
	"testing"
	"unicode/utf8"
)

func TestPosition(t *testing.T) {
	for _, test := range []struct {
		text         string
		offset       int
		line, column int
	}{
		{"", 0, 1, 1},
		{"", 5, 1, 1},
		{"abc", -1, 1, 1},
		{"abc", 3, 1, 4},
		{"abc", 99, 1, 4},
		{"a\nb", 1, 1, 2},
		{"a\nb", 2, 2, 1},
		{"a\n", 2, 2, 1},
		{"a\r\nb", 1, 1, 2},
		{"a\r\nb", 2, 1, 2}, // between the two characters of a line end
		{"a\r\nb", 3, 2, 1},
		{"\t\tb", 2, 1, 3},
		{"é=x", 2, 1, 2},
		{"é=x", 1, 1, 1}, // inside a character
		{"窒素N", 6, 1, 3},
		{"窒素N", 4, 1, 2},
		{"e\u0301x", 3, 1, 3},
		{"🌱x", 4, 1, 2},
		{"🌱x", 3, 1, 1},
		{"\xffx", 1, 1, 2},
		{"a\x80\x80x", 2, 1, 3},
		{ByteOrderMark + "ab", 0, 1, 1},
		{ByteOrderMark + "ab", 3, 1, 1},
		{ByteOrderMark + "ab", 4, 1, 2},
		{ByteOrderMark + "a\n" + ByteOrderMark + "b", 8, 2, 2}, // only the first is no character
	} {
		line, column := (&Source{Text: []byte(test.text)}).Position(test.offset)
		if line != test.line || column != test.column {
			t.Errorf("%q at %d: %d:%d, want %d:%d", test.text, test.offset, line, column, test.line, test.column)
		}
	}
}

// positionSlowly counts from the start of the text, one character after another.
func positionSlowly(text string, offset int) (line, column int) {
	line, column = 1, 1
	for at := 0; at < len(text); {
		r, size := utf8.DecodeRuneInString(text[at:])
		if at+size > offset {
			break
		}
		switch {
		case r == '\n':
			line, column = line+1, 1
		case at == 0 && strings.HasPrefix(text, ByteOrderMark):
		case r == '\r' && strings.HasPrefix(text[at+1:], "\n"):
		default:
			column++
		}
		at += size
	}
	return line, column
}

// A mark ends before the first character that is not in it, wherever that stands.
func TestPlaceOfTheEnd(t *testing.T) {
	for _, test := range []struct {
		text                             string
		start, end                       int
		line, column, endLine, endColumn int
	}{
		{"abc", 0, 0, 1, 1, 1, 1},      // the place before a character
		{"abc", 3, 3, 1, 4, 1, 4},      // the place after the last
		{"abc", 2, 1, 1, 3, 1, 3},      // a mark that ends before it starts marks a place
		{"abc", 1, 99, 1, 2, 1, 4},     // and none goes beyond the text
		{"ab\ncd\n", 1, 5, 1, 2, 2, 3}, // over two lines
		{"ab\ncd\n", 0, 3, 1, 1, 2, 1}, // with the line end
		{"ab\ncd\n", 0, 6, 1, 1, 3, 1},
		{"ab\r\ncd", 0, 2, 1, 1, 1, 3},
		{"ab\r\ncd", 0, 3, 1, 1, 1, 3}, // between the two characters of a line end
		{"ab\r\ncd", 0, 5, 1, 1, 2, 2},
		{"\t12\tin", 1, 4, 1, 2, 1, 5}, // a tab is one character
		{ByteOrderMark + "ab", 0, 4, 1, 1, 1, 2},
		{ByteOrderMark + "ab", 0, 0, 1, 1, 1, 1},
		{"é=窒素\n🌱N", 0, 9, 1, 1, 1, 5},
		{"é=窒素\n🌱N", 2, 14, 1, 2, 2, 2},
		{"é=窒素", 0, 4, 1, 1, 1, 3}, // inside a character
	} {
		p := Place(List{{Source: &Source{Text: []byte(test.text)}, Span: Span{test.start, test.end}}})[0]
		got := [4]int{p.Line, p.Column, p.EndLine, p.EndColumn}
		if want := [4]int{test.line, test.column, test.endLine, test.endColumn}; got != want {
			t.Errorf("%q, %d to %d: %v, want %v", test.text, test.start, test.end, got, want)
		}
	}
}

func FuzzPlace(f *testing.F) {
	seeds := []string{"", "a\r\nb", "\uFEFFa", "窒素\te\u0301🌱\xff\x80", "\x1b[31m", strings.Repeat("ab\t", 99)}
	for _, text := range seeds {
		f.Add(text, 0, 3)
		f.Add(text, 2, 1)
	}
	f.Fuzz(func(t *testing.T, text string, start, end int) {
		src := &Source{Name: text, Text: []byte(text)}
		p := Place(List{{Source: src, Span: Span{start, end}, Text: text, Note: text}})[0]
		line, column := positionSlowly(text, start)
		if p.Line != line || p.Column != column {
			t.Errorf("%q at %d: %d:%d, want %d:%d", text, start, p.Line, p.Column, line, column)
		}
		line, column = positionSlowly(text, max(start, end))
		if p.EndLine != line || p.EndColumn != column {
			t.Errorf("%q to %d: %d:%d, want %d:%d", text, end, p.EndLine, p.EndColumn, line, column)
		}
		e := p.Excerpt
		if got := cells(e.Before) + cells(e.Marked) + cells(e.After); got > windowCells {
			t.Errorf("the excerpt has %d cells", got)
		}
		for _, shown := range []string{p.File, p.Text, strings.Join(p.Note, ""), e.Before, e.Marked, e.After} {
			for _, r := range shown {
				if visible(r) != r {
					t.Errorf("%U is shown", r)
				}
			}
		}
	})
}

// A run of messages on one long line must not count the line from its start each time. What has been counted is
// overwritten here, so that counting it again would give another column.
func TestPositionsOnOneLineAreCountedOnce(t *testing.T) {
	l := newLines(&Source{Text: []byte(strings.Repeat("a", 1000))})
	for at := 0; at < 1000; at += 100 {
		if line, column := l.position(at); line != 1 || column != at+1 {
			t.Errorf("at %d: %d:%d", at, line, column)
		}
		copy(l.text, strings.Repeat("é", at/2))
	}
	l = newLines(&Source{Text: []byte(strings.Repeat("a", 1000))})
	for at := 0; at < 1000; at += 100 {
		if _, column := l.position(at); column != at+1 {
			t.Errorf("at %d: column %d", at, column)
		}
		if _, column := l.end(Span{at, 1000}); column != 1001 { // must not be what the next one is counted from
			t.Errorf("the end from %d: column %d", at, column)
		}
		copy(l.text, strings.Repeat("é", at/2))
		copy(l.text[at:], strings.Repeat("a", 1000-at))
	}
	l = newLines(&Source{Text: []byte("abc\nabc")})
	for _, test := range []struct{ offset, line, column int }{{2, 1, 3}, {1, 1, 2}, {6, 2, 3}, {3, 1, 4}, {5, 2, 2}} {
		if line, column := l.position(test.offset); line != test.line || column != test.column {
			t.Errorf("at %d: %d:%d, want %d:%d", test.offset, line, column, test.line, test.column)
		}
	}
}
