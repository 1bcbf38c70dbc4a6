package proof

import (
	"fmt"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
)

// hazardCheck finds what a page handles that can harm people, and what its signal blocks warn of.
type hazardCheck struct {
	page    *Page
	hazards []hazard
	seen    []sighting // by the index of the hazard
}

// A sighting is what a page says of one hazard.
type sighting struct {
	warned     bool
	ordered    bool         // a sentence tells people to handle it
	paragraphs int          // that talk of it
	first      message.Span // where the first of them does
}

// newHazardCheck looks at pages that tell people what to do. The home page leads to others, and the manual is for those
// who write.
func newHazardCheck(p *Page) hazardCheck {
	if p.Address.Kind == page.Home || p.Address.Kind == page.Manual {
		return hazardCheck{}
	}
	hazards := hazardsOf(p.Language)
	return hazardCheck{page: p, hazards: hazards, seen: make([]sighting, len(hazards))}
}

// prose looks at one text. The text of a link talks of the page that it leads to.
func (c *hazardCheck) prose(p *markdown.Prose) {
	for i := range c.hazards {
		h, seen := &c.hazards[i], &c.seen[i]
		if p.Signal != "" && page.Unwritten(p.Text) {
			seen.warned = seen.warned || h.warnsInAnyLanguage(p.Text)
		}
		if !slices.ContainsFunc(h.stems, func(stem string) bool { return strings.Contains(p.Text, stem) }) {
			continue
		}
		if p.Signal != "" {
			seen.warned = seen.warned || h.warn.MatchString(p.Text)
			continue
		}
		for _, found := range h.talk.FindAllStringSubmatchIndex(p.Text, -1) {
			start, end := found[2], found[3]
			inLink := func(l message.Span) bool { return l.Start <= start && end <= l.End }
			if p.Aside != "" || slices.ContainsFunc(p.Links, inLink) {
				continue
			}
			if seen.paragraphs == 0 {
				seen.first = p.Span(start, end)
			}
			seen.paragraphs++
			seen.ordered = seen.ordered || h.order != nil && h.order.MatchString(p.Text)
			break
		}
	}
}

// cautions reports the hazards that a page handles and does not warn of.
func (c *textCheck) cautions() {
	for i := range c.hazards.hazards {
		h, seen := &c.hazards.hazards[i], c.hazards.seen[i]
		if seen.warned {
			continue
		}
		if at, how, handled := c.hazards.handled(h, seen); handled {
			c.fault(at, "caution-missing",
				fmt.Sprintf("this page %s, and no signal block in it warns of %s", how, h.name),
				"add a quotation such as:\n"+h.example)
		}
	}
}

// handled says whether a page handles a hazard, where it begins to and how. A word in passing is not enough.
func (c *hazardCheck) handled(h *hazard, seen sighting) (at message.Span, how string, handled bool) {
	for _, b := range c.page.Document.Blocks {
		if at, what, ok := brings(c.page, b, h); ok {
			return at, "works with " + what, true
		}
	}
	if h.talksIn(c.page.Metadata.Title) {
		return c.page.Metadata.Places.Title, "is about " + h.name, true
	}
	for _, heading := range c.page.Document.Headings {
		if h.talksIn(heading.Text) {
			return heading.Span, "has a part about " + h.name, true
		}
	}
	if seen.ordered {
		return seen.first, "has people work with " + h.name, true
	}
	return seen.first, "talks of " + h.name, seen.paragraphs >= h.enough
}

// talksIn says whether a title or a heading talks of a hazard. Most are passed over without a look at the pattern.
func (h *hazard) talksIn(text string) bool {
	small := strings.ToLower(text)
	return slices.ContainsFunc(h.stems, func(stem string) bool { return strings.Contains(small, stem) }) &&
		h.talk.MatchString(text)
}

// brings says whether a block works with a hazard: by its calculation, or by a material that was chosen.
func brings(p *Page, b *markdown.Block, h *hazard) (message.Span, string, bool) {
	bound := p.Work.Bound(b)
	if bound == nil {
		return message.Span{}, "", false
	}
	for _, entry := range b.Entries {
		if entry.Key == "calculation" && slices.Contains(h.calculations, entry.Value) {
			return entry.ValueSpan, h.name, true
		}
		given := bound.Sheet.FindGiven(entry.Key)
		read, written := bound.Entries[entry.Key]
		if given == nil || !written || len(given.Choices) == 0 {
			continue
		}
		if name := given.Text(read); slices.Contains(h.materials, name) {
			return entry.ValueSpan, name + ", which is " + h.name, true
		}
	}
	return message.Span{}, "", false
}
