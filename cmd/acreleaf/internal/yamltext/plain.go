package yamltext

import (
	"bytes"
	"strings"
	"unicode/utf8"
)

// plain reads a text whose every line is a plain “key: value”, a “key: [name, name]”, a comment or blank. YAML would
// read it the same way. It gives up on anything else. Nearly every text is plain, and YAML's reader takes longer for
// it than goldmark does for the rest of the page.
func (t *Text) plain() (root *Node, ok bool) {
	root = &Node{Kind: Table, text: t}
	for at := 0; at < len(t.bytes); {
		line, next := t.lineAt(at)
		if blank := bytes.TrimLeft(line, " "); len(blank) == 0 || blank[0] == '#' && ordinary(blank) {
			at = next
			continue
		}
		e, ok := t.plainEntry(at, line)
		if !ok {
			return nil, false
		}
		root.Entries = append(root.Entries, e)
		at = next
	}
	if len(root.Entries) == 0 {
		return nil, true
	}
	root.at = root.Entries[0].Key.at
	return root, true
}

// PlainStart gives the plain lines that the text starts with, for one that has no end.
func (t *Text) PlainStart() []Entry {
	var found []Entry
	for at := 0; at < len(t.bytes); {
		line, next := t.lineAt(at)
		e, ok := t.plainEntry(at, line)
		if !ok {
			break
		}
		found = append(found, e)
		at = next
	}
	return found
}

// lineAt gives the line that begins at an offset, without its end, and where the next one begins.
func (t *Text) lineAt(at int) (line []byte, next int) {
	end := bytes.IndexByte(t.bytes[at:], '\n')
	if end < 0 {
		return t.bytes[at:], len(t.bytes)
	}
	return t.bytes[at : at+end], at + end + 1
}

func (t *Text) plainEntry(at int, line []byte) (Entry, bool) {
	line = bytes.TrimRight(line, " ")
	colon := bytes.IndexByte(line, ':')
	if colon <= 0 || colon+2 > len(line)-1 || line[colon+1] != ' ' || !plainKey(line[:colon]) {
		return Entry{}, false
	}
	written := bytes.TrimLeft(line[colon+1:], " ")
	value := &Node{text: t, at: at + len(line) - len(written)}
	switch {
	case PlainValue(written):
		value.Value = string(written)
		value.Null = isNull(value.Value)
	case !value.plainNames(written):
		return Entry{}, false
	}
	return Entry{Key: &Node{Value: string(line[:colon]), text: t, at: at}, Value: value}, true
}

// plainNames reads a list of names, as the line at a glance of nearly every page is: [soil.nitrogen, well.per-inch].
func (n *Node) plainNames(written []byte) bool {
	inside, opens := bytes.CutPrefix(written, []byte("["))
	inside, closes := bytes.CutSuffix(inside, []byte("]"))
	at := n.at + len("[")
	for name := range bytes.SplitSeq(inside, []byte(",")) {
		trimmed := bytes.TrimLeft(name, " ")
		item := &Node{text: n.text, at: at + len(name) - len(trimmed), Value: string(bytes.TrimRight(trimmed, " "))}
		if !opens || !closes || !isName(item.Value) || isNull(item.Value) {
			return false
		}
		n.Items = append(n.Items, item)
		at += len(name) + len(",")
	}
	n.Kind = List
	return true
}

// isName says whether a text is letters, with digits, points and hyphens after the first.
func isName(text string) bool {
	for i, c := range []byte(text) {
		if letter := c >= 'a' && c <= 'z'; !letter && (i == 0 || c != '.' && c != '-' && (c < '0' || c > '9')) {
			return false
		}
	}
	return text != ""
}

// isNull says whether YAML takes a word for nothing.
func isNull(word string) bool {
	return word == "~" || word == "null" || word == "Null" || word == "NULL"
}

func plainKey(key []byte) bool {
	for _, c := range key {
		if c != '-' && (c < '0' || c > '9') && (c < 'a' || c > 'z') {
			return false
		}
	}
	return key[0] != '-' && len(key) < 100
}

// PlainValue says whether YAML reads a text on one line just as it is written.
func PlainValue(value []byte) bool {
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
