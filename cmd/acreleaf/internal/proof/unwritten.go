package proof

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
)

// shownLines is how many lines a message names. A fresh translation has a part to do on nearly every line.
const shownLines = 8

// unfinished advises once on all that a draft left for the author, at the first such part.
func (c *textCheck) unfinished() {
	m := c.page.Metadata
	type written struct {
		text string
		at   message.Span
	}
	texts := []written{{m.Title, m.Places.Title}, {m.Summary, m.Places.Summary}, {m.Crop, m.Places.Crop}}
	for _, q := range m.Questions {
		texts = append(texts, written{q.Text, q.Page.Span})
	}
	for _, change := range m.Changes {
		texts = append(texts, written{change.Text, change.Span})
	}
	for _, can := range m.Lesson.Outcomes {
		texts = append(texts, written{can.Text, can.Span})
	}
	for _, one := range texts {
		if c.rules.Advice && page.Unwritten(one.text) {
			c.unwritten = append(c.unwritten, one.at)
		}
	}
	if len(c.unwritten) == 0 {
		return
	}
	slices.SortFunc(c.unwritten, func(a, b message.Span) int { return cmp.Compare(a.Start, b.Start) })
	var lines []string
	for _, at := range c.unwritten {
		lines = append(lines, strconv.Itoa(c.page.Source.Line(at.Start)))
	}
	lines = slices.Compact(lines)
	where := "it is on line " + lines[0]
	switch n := len(lines); {
	case n > shownLines:
		where = fmt.Sprintf("the first are on lines %s", strings.Join(lines[:shownLines], ", "))
	case n > 1:
		where = fmt.Sprintf("they are on lines %s and %s", strings.Join(lines[:n-1], ", "), lines[n-1])
	}
	parts, are := "parts", "are"
	if len(c.unwritten) == 1 {
		parts, are = "part", "is"
	}
	marks := page.MarksOf(c.page.Language)
	c.advise(c.unwritten[0], "text-unwritten",
		fmt.Sprintf("%d %s of this page %s still to be written", len(c.unwritten), parts, are),
		fmt.Sprintf("write the text, and delete %s or %s before it; %s", marks.Write, marks.Translate, where))
}
