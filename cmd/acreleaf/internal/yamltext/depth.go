package yamltext

import (
	"bytes"
	"fmt"
	"strings"

	"acreleaf/cmd/acreleaf/internal/message"
)

// depthLimit is how many lists and tables may be inside each other. YAML's reader takes longer for each the more are
// open, and it takes thousands, so the text is looked through first.
const depthLimit = 20

// A deepError says where a text has more than that.
type deepError struct{ at int }

func (deepError) Error() string { return tooDeep }

var tooDeep = fmt.Sprintf("more than %d lists and tables are inside each other here", depthLimit)

// TooDeep says whether an error of Parse is that too many lists and tables are inside each other.
func TooDeep(err error) bool {
	_, is := err.(deepError)
	return is
}

// checkDepth finds the first place that is too deep.
func (t *Text) checkDepth() error {
	d := newDepth(t.bytes)
	for d.next() {
		if d.count() > depthLimit {
			return deepError{d.last}
		}
	}
	return nil
}

// depth goes through a text as YAML's reader does, from one sign or scalar to the next, and counts the lists and
// tables that are open. It must know where each scalar ends, since a bracket or a quote in one means nothing. In a text
// that is no YAML it counts up to the place where YAML's reader stops, and what it counts behind that has no use.
type depth struct {
	text   []byte
	at     int
	last   int     // where the last sign or scalar began; of one that opened a table, where its key did
	line   int     // where the line begins
	open   []level // lists and tables that go by the indent
	flow   int     // those in brackets and braces
	begins bool    // a key may begin here
	key    int     // where what may be a key began on this line; -1 if nothing did
}

// nameCharacters are those of a name of a value.
const nameCharacters = "-_0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"

// level is where the lines of a list or a table begin.
type level struct {
	column int
	list   bool
}

func newDepth(text []byte) *depth { return &depth{text: text, begins: true, key: -1} }

// count is how many lists and tables are open.
func (d *depth) count() int { return len(d.open) + d.flow }

// indent is the column of the list or table that the text is in.
func (d *depth) indent() int {
	if len(d.open) == 0 {
		return -1
	}
	return d.open[len(d.open)-1].column
}

// next goes behind the next sign or scalar. It says false when there is none.
func (d *depth) next() bool {
	for d.blanks() {
		d.begins = d.begins || d.flow == 0
	}
	if d.at == len(d.text) {
		return false
	}
	c, column, alone := d.text[d.at], d.at-d.line, d.isBlank(d.at+1)
	item := c == '-' && alone
	d.last = d.at
	if d.flow == 0 {
		d.leave(column, item)
	}
	switch {
	case column == 0 && c == '%':
		d.begins = false
		d.toLineEnd()
	case d.betweenDocuments():
		if d.flow == 0 {
			d.open = d.open[:0]
		}
		d.sign(3, false)
		d.key = -1
	case item:
		d.opened(level{column, true})
		d.sign(1, true)
	case (c == '?' || c == ':') && (alone || d.flow > 0):
		d.keyOrValue(c, column)
	case c == ',':
		d.sign(1, true)
	case c == ']' || c == '}':
		d.flow = max(0, d.flow-1)
		d.sign(1, false)
	case (c == '|' || c == '>') && d.flow == 0:
		d.key, d.begins = -1, true
		d.blockScalar()
	default:
		d.value(c)
	}
	return true
}

// sign goes behind a sign of some bytes.
func (d *depth) sign(size int, begins bool) { d.at, d.begins = d.at+size, begins }

// keyOrValue goes behind the sign of a key, or of a value after a key with a sign or without one.
func (d *depth) keyOrValue(c byte, column int) {
	begins := d.flow == 0
	if begins && c == ':' && d.key >= 0 {
		begins, column, d.last = false, d.key-d.line, d.key
	}
	d.opened(level{column, false})
	d.sign(1, begins)
}

// value goes behind the start of a list or a table in brackets, or behind a scalar, or the name or the kind of a value.
// Each may be a key.
func (d *depth) value(c byte) {
	if d.begins && d.flow == 0 {
		d.key = d.at
	}
	d.begins = false
	switch c {
	case '[', '{':
		d.flow++
		d.sign(1, true)
	case '"', '\'':
		for end := d.at + quotedSize(d.text[d.at:]); d.at < end; {
			d.step()
		}
	case '&', '*':
		rest := d.text[d.at+1:]
		d.at = len(d.text) - len(bytes.TrimLeft(rest, nameCharacters))
	case '!':
		signs := ",[]{}"
		if d.flow == 0 || bytes.HasPrefix(d.text[d.at:], []byte("!<")) {
			signs = "" // they mean nothing here
		}
		for d.at++; !d.isBlank(d.at) && strings.IndexByte(signs, d.text[d.at]) < 0; {
			d.at++
		}
	default:
		d.plainScalar()
	}
}

// plainScalar goes behind a scalar without quotes, which may go on in the lines below it.
func (d *depth) plainScalar() {
	indent := d.indent() + 1
	for {
		for ; !d.isBlank(d.at); d.at++ {
			c := d.text[d.at]
			if c == ':' && d.isBlank(d.at+1) || d.flow > 0 && strings.IndexByte(",?[]{}", c) >= 0 {
				return
			}
		}
		ended := false
		for d.at < len(d.text) && d.isBlank(d.at) {
			ended = d.step() || ended
		}
		d.begins = d.begins || ended
		if d.at == len(d.text) || d.text[d.at] == '#' || d.betweenDocuments() ||
			d.flow == 0 && d.at-d.line < indent {
			return
		}
	}
}

// blockScalar goes behind a scalar that is the lines below its sign, as far as they are set in.
func (d *depth) blockScalar() {
	indent := 0 // until it is known
	for d.at++; !d.isBlank(d.at); d.at++ {
		if c := d.text[d.at]; c >= '1' && c <= '9' {
			indent = max(0, d.indent()) + int(c-'0')
		}
	}
	d.toLineEnd()
	most := max(1, d.indent()+1)
	for d.at < len(d.text) && d.step() {
		rest := d.text[d.at:]
		spaces := len(rest) - len(bytes.TrimLeft(rest, " "))
		most = max(most, spaces)
		if empty := spaces == len(rest) || breakSize(rest[spaces:]) > 0; !empty {
			if indent == 0 {
				indent = most
			}
			if spaces < indent {
				return
			}
		}
		d.toLineEnd()
	}
}

// blanks goes behind spaces, a comment and one line end after them. It says whether there is a line end.
func (d *depth) blanks() (ended bool) {
	if d.at == d.line && bytes.HasPrefix(d.text[d.at:], []byte(message.ByteOrderMark)) {
		d.at += len(message.ByteOrderMark)
		d.line = d.at - min(1, d.line) // a mark inside the text counts for a column
	}
	for d.at < len(d.text) && (d.text[d.at] == ' ' || d.text[d.at] == '\t') {
		d.at++
	}
	if d.at < len(d.text) && d.text[d.at] == '#' {
		d.toLineEnd()
	}
	return d.at < len(d.text) && breakSize(d.text[d.at:]) > 0 && d.step()
}

// toLineEnd goes to the end of the line.
func (d *depth) toLineEnd() {
	for d.at < len(d.text) && breakSize(d.text[d.at:]) == 0 {
		d.at++
	}
}

// step goes behind a byte or a line end, and says whether it was that.
func (d *depth) step() (ended bool) {
	size := breakSize(d.text[d.at:])
	d.at += max(1, size)
	if size > 0 {
		d.line, d.key = d.at, -1
	}
	return size > 0
}

// isBlank says whether there is a space, a line end or the end of the text at a place.
func (d *depth) isBlank(at int) bool {
	return at >= len(d.text) || d.text[at] == ' ' || d.text[at] == '\t' || breakSize(d.text[at:]) > 0
}

// betweenDocuments says whether the line is the one that parts two documents of YAML, or ends one.
func (d *depth) betweenDocuments() bool {
	rest := d.text[d.at:]
	return d.at == d.line && d.isBlank(d.at+3) &&
		(bytes.HasPrefix(rest, []byte("---")) || bytes.HasPrefix(rest, []byte("...")))
}

// leave ends what begins further in than the sign or scalar that comes next. A list may begin in the column of the key
// that it belongs to, and then ends at the next key.
func (d *depth) leave(column int, item bool) {
	for n := len(d.open) - 1; n >= 0; n-- {
		if last := d.open[n]; last.column < column || last.column == column && (item || !last.list) {
			return
		}
		d.open = d.open[:n]
	}
}

// opened adds a list or a table, when this is its first item or key.
func (d *depth) opened(start level) {
	if d.flow > 0 {
		return
	}
	d.key = -1
	if n := len(d.open); n == 0 || d.open[n-1].column < start.column || start.list && !d.open[n-1].list {
		d.open = append(d.open, start)
	}
}
