package proof

import (
	"fmt"
	"strings"

	"acreleaf/cmd/acreleaf/internal/markdown"
)

// headings sees that the headings are a table of contents: the title of the page is the only one of the first level,
// and none skips a level on the way down. Readers who cannot see a page walk it by its headings (WCAG 2.2, 1.3.1).
func (c *textCheck) headings() {
	levels := map[bool]int{true: 1, false: 1} // the level of the last heading, of leader's notes and of the page
	for _, h := range c.page.Document.Headings {
		led := c.page.Document.ForLeader(h.Span)
		last := levels[led]
		levels[led] = h.Level
		switch {
		case h.Level == 1:
			c.fault(h.Span, "heading-title", "the title of the page is its only heading of the first level",
				"write ## before this one, or make it the title")
		case h.Level > last+1:
			c.fault(h.Span, "heading-jump",
				fmt.Sprintf("this heading is of level %d, and the one above it of level %d", h.Level, last),
				"write "+strings.Repeat("#", last+1)+" before it")
		}
	}
	if c.rules.Advice {
		c.sameHeadings()
	}
}

// sameHeadings advises on two headings of the same words in the same part: a list of the parts could not tell them
// apart.
func (c *textCheck) sameHeadings() {
	first := map[string]*markdown.Heading{}
	var above [7]string // the headings that the one at hand is below, by level
	for _, h := range c.page.Document.Headings {
		words := strings.ToLower(oneLine(h.Text))
		above[h.Level] = words
		path := strings.Join(above[:h.Level+1], "\n")
		clear(above[h.Level+1:])
		if words == "" {
			continue // markdown reports it
		}
		if other := first[path]; other != nil {
			c.advise(h.Span, "heading-twice", fmt.Sprintf("%q is already a heading of this part, on line %d",
				oneLine(h.Text), c.page.Source.Line(other.Span.Start)), "say in one of the two what is different about it")
			continue
		}
		first[path] = h
	}
}
