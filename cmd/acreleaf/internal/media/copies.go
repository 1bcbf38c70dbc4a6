package media

import (
	"encoding/xml"
	"strings"
)

// copies counts the elements that a browser shows of a drawing in which <use> elements copy parts of it: parts that
// copy parts that copy others are more than any browser can show, in a file of a few lines.
type copies struct {
	parts []*part // the first is the whole drawing
	open  []*part
	ids   map[string]*part
}

// A part is an element with what is in it.
type part struct {
	inside []*part
	use    string // the id of what it copies
	size   int    // 0 until it is known
	busy   bool   // it is being counted: it copies itself, which browsers refuse
}

func newCopies() copies { return copies{ids: map[string]*part{}} }

func (c *copies) start(e xml.StartElement) {
	p := &part{}
	for _, a := range e.Attr {
		switch {
		case a.Name.Local == "id":
			c.ids[a.Value] = p
		case a.Name.Local == "href" && e.Name.Local == "use":
			p.use = strings.TrimPrefix(a.Value, "#")
		}
	}
	if n := len(c.open); n > 0 {
		c.open[n-1].inside = append(c.open[n-1].inside, p)
	}
	c.parts = append(c.parts, p)
	c.open = append(c.open, p)
}

func (c *copies) end() {
	if n := len(c.open); n > 0 {
		c.open = c.open[:n-1]
	}
}

// shown is how many elements the drawing has with all copies; of too many, some number over the limit.
func (c *copies) shown() int {
	if len(c.parts) == 0 {
		return 0
	}
	return c.count(c.parts[0])
}

func (c *copies) count(p *part) int {
	if p.size > 0 || p.busy {
		return p.size
	}
	p.busy = true
	size := 1
	for _, inside := range p.inside {
		size = min(size+c.count(inside), mostShown+1)
	}
	if copied := c.ids[p.use]; p.use != "" && copied != nil {
		size = min(size+c.count(copied), mostShown+1)
	}
	p.busy, p.size = false, size
	return size
}
