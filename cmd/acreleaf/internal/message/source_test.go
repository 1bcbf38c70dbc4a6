package message

import (
	"strings"
	"testing"
	"time"
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
		{byteOrderMark + "ab", 0, 1, 1},
		{byteOrderMark + "ab", 3, 1, 1},
		{byteOrderMark + "ab", 4, 1, 2},
		{byteOrderMark + "a\n" + byteOrderMark + "b", 8, 2, 2}, // only the first is no character
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
		case at == 0 && strings.HasPrefix(text, byteOrderMark):
		case r == '\r' && strings.HasPrefix(text[at+1:], "\n"):
		default:
			column++
		}
		at += size
	}
	return line, column
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

// A page of the largest size on a single line, with a message every few bytes, must not take quadratic time.
func TestManyMessagesOnOneLongLine(t *testing.T) {
	src := &Source{Name: "a.md", Text: []byte(strings.Repeat("é=", MaxSize/3))}
	var l List
	for at := 0; at < len(src.Text); at += 420 {
		l = append(l, Message{Source: src, Span: Span{at, at + 1}, Text: "x"})
	}
	done := make(chan []Placed)
	go func() { done <- Place(l) }()
	select {
	case placed := <-done:
		last := placed[len(placed)-1]
		if want := (len(l)-1)*280 + 1; last.Column != want {
			t.Errorf("the last column is %d, want %d", last.Column, want)
		}
	case <-time.After(20 * time.Second):
		t.Error("not done after 20 seconds")
	}
}
