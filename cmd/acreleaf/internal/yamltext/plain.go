package yamltext

import (
	"bytes"
	"strings"
	"unicode"
	"unicode/utf8"
)

// plain reads a text whose every line is a plain “key: value”, a “key: [text, text]”, a “key:” with such lines below it
// that are further in, a comment or blank. YAML would read it the same way. It gives up on anything else. Nearly every
// text is plain, and YAML's reader takes longer for it than goldmark does for the rest of the page.
func (t *Text) plain() (root *Node, ok bool) {
	t.whole = string(t.bytes)
	root = &Node{Kind: Table, text: t}
	var below *Node // the table that further lines belong to; nil for none
	for at := 0; at < len(t.bytes); {
		line, next := t.lineAt(at)
		blank := bytes.TrimLeft(line, " ")
		if len(blank) == 0 || blank[0] == '#' && ordinary(blank) {
			at = next
			continue
		}
		in := len(line) - len(blank)
		switch {
		case in > 0:
			if below == nil || !below.plainBelow(at+in, in, blank) {
				return nil, false
			}
		case below != nil && len(below.Entries) == 0: // nothing is written there
			return nil, false
		default:
			e, ok := t.plainOpening(at, line)
			if below = e.Value; !ok {
				if e, ok = t.plainEntry(at, line); !ok {
					return nil, false
				}
			}
			root.Entries = append(root.Entries, e)
		}
		at = next
	}
	if below != nil && len(below.Entries) == 0 {
		return nil, false
	}
	if len(root.Entries) == 0 {
		return nil, true
	}
	root.at = root.Entries[0].Key.at
	return root, true
}

// plainOpening reads a key with nothing after its colon, which opens a table.
func (t *Text) plainOpening(at int, line []byte) (e Entry, opens bool) {
	key, opens := bytes.CutSuffix(bytes.TrimRight(line, " "), []byte(":"))
	if !opens || len(key) == 0 || !plainKey(key) {
		return Entry{}, false
	}
	return Entry{Key: t.plainNode(at, len(key)), Value: &Node{Kind: Table, text: t}}, true
}

// plainBelow reads a line of a table that is so far in. All of its lines are.
func (n *Node) plainBelow(at, in int, line []byte) bool {
	e, ok := n.text.plainEntry(at, line)
	if !ok {
		return false
	}
	if len(n.Entries) == 0 {
		n.at = at
	} else if first := n.Entries[0].Key.at; first-n.text.lineOf(first) != in {
		return false
	}
	n.Entries = append(n.Entries, e)
	return true
}

// PlainStart gives the plain lines that the text starts with, for one that has no end.
func (t *Text) PlainStart() []Entry {
	t.whole = string(t.bytes)
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
		value.Value = t.whole[value.at:][:len(written)]
		value.Null = isNull(value.Value)
	case !value.plainList(written):
		return Entry{}, false
	}
	return Entry{Key: t.plainNode(at, colon), Value: value}, true
}

// plainNode is a node that is written as it is meant. Its value is a part of the whole text: a page has some dozens of
// them, and many stay.
func (t *Text) plainNode(at, size int) *Node {
	return &Node{Value: t.whole[at:][:size], text: t, at: at}
}

// plainList reads a list of plain texts, as the line at a glance of nearly every page is: [soil.nitrogen,
// well.per-inch]. A text with a comma in it is in quotes.
func (n *Node) plainList(written []byte) bool {
	rest, opens := bytes.CutPrefix(written, []byte("["))
	rest, closes := bytes.CutSuffix(rest, []byte("]"))
	at := n.at + len("[")
	for more := opens && closes; more; {
		trimmed := bytes.TrimLeft(rest, " ")
		item := &Node{text: n.text, at: at + len(rest) - len(trimmed)}
		size, ok := item.plainItem(trimmed)
		if !ok {
			return false
		}
		n.Items = append(n.Items, item)
		at = item.at + size + len(",")
		more = size < len(trimmed)
		rest = trimmed[min(size+len(","), len(trimmed)):]
	}
	n.Kind = List
	return len(n.Items) > 0
}

// plainItem reads an item of a list, up to the comma after it or the end.
func (n *Node) plainItem(text []byte) (size int, ok bool) {
	if inside, quoted := bytes.CutPrefix(text, []byte(`"`)); quoted {
		end := bytes.IndexByte(inside, '"')
		if end < 0 || bytes.IndexByte(inside[:end], '\\') >= 0 || !ordinary(inside[:end]) {
			return 0, false
		}
		n.Value, n.Quoted = n.text.whole[n.at+len(`"`):][:end], true
		after := inside[end+1:]
		spaces := len(after) - len(bytes.TrimLeft(after, " "))
		size = len(`""`) + end + spaces
		return size, spaces == len(after) || after[spaces] == ','
	}
	if size = bytes.IndexByte(text, ','); size < 0 {
		size = len(text)
	}
	n.Value = n.text.whole[n.at:][:len(bytes.TrimRight(text[:size], " "))]
	return size, isPhrase(n.Value) && !isNull(n.Value)
}

// isPhrase says whether a text begins with a letter, and has no sign that YAML has a use for within a list.
func isPhrase(text string) bool {
	first, _ := utf8.DecodeRuneInString(text)
	return unicode.IsLetter(first) && !strings.ContainsAny(text, ":?#[]{}&*!|>'\"%@`") && ordinary([]byte(text))
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
	return key[0] != '-' && len(key) < 100 && !isNull(string(key))
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
