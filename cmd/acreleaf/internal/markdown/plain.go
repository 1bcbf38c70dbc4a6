package markdown

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"acreleaf/cmd/acreleaf/internal/message"
)

// plainEntries reads a body whose every line is a plain “key: value”, a comment or blank, which YAML would read the
// same way. It gives up on anything else.
func (b *body) plainEntries() ([]Entry, bool) {
	found := make([]Entry, 0, len(b.lines))
	for i := range b.lines {
		line := b.line(i)
		if blank := bytes.TrimLeft(line, " "); len(blank) == 0 || blank[0] == '#' && ordinary(blank) {
			continue
		}
		e, ok := b.plainEntry(i)
		if !ok {
			return nil, false
		}
		found = append(found, e)
	}
	return found, true
}

// entriesBeforeProse gives the plain lines that the body starts with.
func (b *body) entriesBeforeProse() []Entry {
	var found []Entry
	for i := range b.lines {
		e, ok := b.plainEntry(i)
		if !ok {
			break
		}
		found = append(found, e)
	}
	return found
}

func (b *body) plainEntry(i int) (Entry, bool) {
	line := bytes.TrimRight(b.line(i), " ")
	colon := bytes.IndexByte(line, ':')
	if colon <= 0 || colon+2 > len(line)-1 || line[colon+1] != ' ' || !plainKey(line[:colon]) {
		return Entry{}, false
	}
	value := bytes.TrimLeft(line[colon+1:], " ")
	if !plainValue(value) {
		return Entry{}, false
	}
	at := b.lines[i].source
	return Entry{
		Key: string(line[:colon]), KeySpan: message.Span{Start: at, End: at + colon},
		Value: string(value), ValueSpan: message.Span{Start: at + len(line) - len(value), End: at + len(line)},
	}, true
}

func plainKey(key []byte) bool {
	for _, c := range key {
		if c != '-' && (c < '0' || c > '9') && (c < 'a' || c > 'z') {
			return false
		}
	}
	return key[0] != '-' && len(key) < 100
}

func plainValue(value []byte) bool {
	return strings.IndexByte("-?:,[]{}#&*!|>'\"%@`", value[0]) < 0 &&
		!bytes.Contains(value, []byte(": ")) && !bytes.Contains(value, []byte(" #")) &&
		value[len(value)-1] != ':' && ordinary(value)
}

// ordinary tells whether text holds only characters that YAML has no use of its own for: no control, no byte order
// mark, no line end of its own.
func ordinary(text []byte) bool {
	for i := 0; i < len(text); {
		if c := text[i]; c < utf8.RuneSelf {
			if c < ' ' || c > '~' {
				return false
			}
			i++
			continue
		}
		r, size := utf8.DecodeRune(text[i:])
		if r < 0xA0 || r >= 0x2000 && r <= 0x200F || r >= 0x2028 && r <= 0x202F || r >= 0xD800 {
			return false
		}
		i += size
	}
	return true
}
