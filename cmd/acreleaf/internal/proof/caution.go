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

	title    string   // of the page, and
	headings []string // those in its text, in small letters
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
func newHazardCheck(p *Page, s *Site) hazardCheck {
	if !p.Address.Kind.Row().Warns {
		return hazardCheck{}
	}
	hazards := slices.Concat(hazardsOf(p.Language), ownHazards(p.Language, s.Config.Hazards))
	c := hazardCheck{page: p, hazards: hazards, seen: make([]sighting, len(hazards))}
	c.title = strings.ToLower(p.Metadata.Title)
	for _, heading := range p.Document.Headings {
		c.headings = append(c.headings, strings.ToLower(heading.Text))
	}
	return c
}

// prose looks at one text. The text of a link talks of the page that it leads to.
func (c *hazardCheck) prose(p *markdown.Prose) {
	if p.Signal != "" && c.page != nil && len(c.page.Document.Leader) > 0 && c.page.Document.ForLeader(p.Span(0, 1)) {
		return // participants do not see it
	}
	small := strings.ToLower(p.Text)
	for i := range c.hazards {
		h, seen := &c.hazards[i], &c.seen[i]
		if seen.warned || seen.ordered && p.Signal == "" {
			continue // whatever this text says, the result is the same
		}
		if p.Signal != "" && page.Unwritten(p.Text) {
			seen.warned = seen.warned || h.warnsInAnyLanguage(p.Text)
		}
		if !h.mayBeIn(small) {
			continue
		}
		if p.Signal != "" {
			seen.warned = seen.warned || h.warn.MatchString(p.Text)
			continue
		}
		if at, there := c.spoken(p, h.order); there {
			seen.note(at)
			seen.ordered = true
			continue
		}
		if h.talks != nil && !anyIn(small, h.talks) {
			continue
		}
		if at, there := c.spoken(p, h.talk); there {
			seen.note(at)
		}
	}
}

// note takes in one more paragraph that talks of the hazard.
func (s *sighting) note(at message.Span) {
	if s.paragraphs == 0 {
		s.first = at
	}
	s.paragraphs++
}

// spoken finds what a pattern is for in a text of the page's own: neither in a note beside it, nor in a link.
func (c *hazardCheck) spoken(p *markdown.Prose, pattern *pattern) (message.Span, bool) {
	if p.Aside != "" || !pattern.mayBeIn(p.Text) {
		return message.Span{}, false
	}
	for _, found := range pattern.FindAllStringSubmatchIndex(p.Text, -1) {
		start, end := found[2], found[3]
		if start < 0 { // the other of two patterns
			start, end = found[4], found[5]
		}
		inLink := func(l message.Span) bool { return l.Start <= start && end <= l.End }
		if !slices.ContainsFunc(p.Links, inLink) {
			return p.Span(start, end), true
		}
	}
	return message.Span{}, false
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
				fmt.Sprintf("%s, and no signal block here warns of it", how),
				"add a quotation such as:\n"+h.example)
		}
	}
}

// handled says whether a page handles a hazard, where it begins to and how. A word in passing is not enough.
func (c *hazardCheck) handled(h *hazard, seen sighting) (at message.Span, how string, handled bool) {
	for _, b := range c.page.Document.Blocks {
		if at, what, is := brought(c.page, b, h); is {
			return at, what, true
		}
	}
	if h.talksIn(c.page.Metadata.Title, c.title) {
		return c.page.Metadata.Places.Title, "this page is about " + h.Name.In("en"), true
	}
	for i, heading := range c.page.Document.Headings {
		if h.talksIn(heading.Text, c.headings[i]) {
			return heading.Span, "this page has a part about " + h.Name.In("en"), true
		}
	}
	if seen.ordered {
		return seen.first, "this page tells people to handle " + h.Name.In("en"), true
	}
	return seen.first, "this page talks about " + h.Name.In("en"), seen.paragraphs >= h.enough
}

// talksIn says whether a title or a heading talks of a hazard: the text, and the same in small letters. Most are passed
// over without a look at the pattern.
func (h *hazard) talksIn(text, small string) bool {
	return h.mayBeIn(small) && h.talk.MatchString(text)
}

// mayBeIn says whether a text in small letters has a part of a word for a hazard.
func (h *hazard) mayBeIn(small string) bool { return anyIn(small, h.stems) }

func anyIn(text string, stems []string) bool {
	return slices.ContainsFunc(stems, func(stem string) bool { return strings.Contains(text, stem) })
}
