package yamltext

import (
	"bytes"
	"fmt"
)

// depthLimit is how many lists and tables may be inside each other. YAML's reader takes longer for each the more are
// open, and it takes thousands, so the text is looked through first.
const depthLimit = 20

// A deepError says where a text has more than that.
type deepError struct{ at int }

func (deepError) Error() string { return tooDeep }

var tooDeep = fmt.Sprintf("more than %d lists and tables are inside each other here", depthLimit)

// depth counts how many lists and tables are open, line by line.
type depth struct {
	open  []level // those that go by the indent
	block int     // how far the key is set in whose text is the lines below it; -1 if no such text is open
	flow  int     // those in brackets and braces
	quote byte    // the quote of a text that is open; 0 if none is
}

// level is where the lines of a list or a table begin.
type level struct {
	column int
	list   bool
}

// checkDepth finds the first place that is too deep.
func (t *Text) checkDepth() error {
	d := depth{block: -1}
	for _, at := range t.lineStarts() {
		if i := d.line(t.restOfLine(at)); i >= 0 {
			return deepError{at + i}
		}
	}
	return nil
}

// line counts on through a line. It gives the place in it that is too deep; -1 if none is.
func (d *depth) line(line []byte) int {
	start := 0
	if d.flow == 0 && d.quote == 0 {
		start = d.indent(line)
		if len(d.open) > depthLimit {
			return d.open[depthLimit].column
		}
	}
	begins := true // a value may begin here
	for i := start; i < len(line); i++ {
		c := line[i]
		space := i == 0 || line[i-1] == ' ' || line[i-1] == '\t'
		switch {
		case d.quote != 0:
			if c == '\\' && d.quote == '"' {
				i++
			} else if c == d.quote { // a second ' after it opens it again
				d.quote, begins = 0, c == '\''
			}
		case c == '#' && space:
			return -1
		case c == ' ' || c == '\t':
			begins = begins || i > 0 && isMark(line[i-1])
		case begins && (c == '&' || c == '!'): // a name or a kind of the value, which comes after it
			for i+1 < len(line) && line[i+1] != ' ' {
				i++
			}
		case begins && (c == '"' || c == '\''):
			d.quote = c
		case begins && (c == '[' || c == '{'):
			if d.flow++; len(d.open)+d.flow > depthLimit {
				return i
			}
		case (c == ']' || c == '}') && d.flow > 0:
			d.flow--
			begins = false
		default:
			begins = c == ',' && d.flow > 0
		}
	}
	return -1
}

// indent counts what goes by the indent of a line, and gives where the rest of the line begins.
func (d *depth) indent(line []byte) int {
	at := len(line) - len(bytes.TrimLeft(line, " "))
	if d.block >= 0 && (at == len(line) || at > d.block) {
		return len(line)
	}
	d.block = -1
	if at == len(line) || line[at] == '#' {
		return len(line)
	}
	for at < len(line) && len(d.open) <= depthLimit {
		rest := line[at:]
		if list := isMark(rest[0]) && (len(rest) == 1 || rest[1] == ' '); list {
			d.add(level{at, true})
			at += len(rest) - len(bytes.TrimLeft(rest[1:], " "))
			continue
		}
		key := bytes.Contains(rest, []byte(": ")) || bytes.HasSuffix(rest, []byte(":"))
		if key && rest[0] != '[' && rest[0] != '{' {
			d.add(level{at, false})
		}
		if opensBlock.Match(rest) {
			d.block = at
		}
		break
	}
	return at
}

// add ends what the start of a list or a table is no part of, and opens it. A list may begin in the column of the key
// that it belongs to.
func (d *depth) add(start level) {
	for n := len(d.open) - 1; n >= 0; n-- {
		if last := d.open[n]; last.column < start.column || last.column == start.column && start.list && !last.list {
			break
		}
		d.open = d.open[:n]
	}
	d.open = append(d.open, start)
}

func isMark(c byte) bool { return c == '-' || c == '?' || c == ':' }

// TooDeep says whether an error of Parse is that too many lists and tables are inside each other.
func TooDeep(err error) bool {
	_, is := err.(deepError)
	return is
}
