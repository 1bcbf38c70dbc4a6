package proof

import (
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
)

// textCheck checks what a page says and how it is built, but for its numbers. It gathers while the prose is visited.
type textCheck struct {
	page        *Page
	site        *Site
	rules       Rules
	hazards     hazardCheck
	readability readingCheck
	unwritten   []message.Span
	foreign     []message.Span // texts in another language than the page
	messages    message.List
}

func newTextCheck(p *Page, s *Site, r Rules) *textCheck {
	return &textCheck{page: p, site: s, rules: r, hazards: newHazardCheck(p, s), readability: newReadingCheck(p, r)}
}

// prose looks at one paragraph, heading, cell, caption or description of an image.
func (c *textCheck) prose(p *markdown.Prose) {
	if p.Aside != "" && p.Aside != markdown.Description {
		return
	}
	c.hazards.prose(p)
	c.readability.prose(p)
	c.foreignText(p)
	c.unlinked(p)
	c.marks(p)
	if c.rules.Advice && page.Unwritten(p.Text) {
		c.unwritten = append(c.unwritten, p.Span(0, len(p.Text)))
	}
}

// finish checks what needs the whole page, and gives all that was found.
func (c *textCheck) finish() message.List {
	c.headings()
	c.leader()
	c.links()
	c.cautions()
	c.review()
	c.changes()
	c.grade()
	c.foreignBlocks(c.page.Document.Blocks)
	c.untranslated()
	c.lengths()
	c.unfinished()
	return c.messages
}

func (c *textCheck) fault(at message.Span, id, text, note string) {
	c.say(message.Fault, at, id, text, note)
}

func (c *textCheck) advise(at message.Span, id, text, note string) {
	c.say(message.Advice, at, id, text, note)
}

func (c *textCheck) say(level message.Level, at message.Span, id, text, note string) {
	c.messages = append(c.messages, message.Message{
		Level: level, ID: id, Source: c.page.Source, Span: at, Text: text, Note: note,
	})
}
