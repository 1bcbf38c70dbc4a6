package proof

import (
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

// textCheck checks what a page says and how it is built, but for its numbers. It gathers while the prose is visited.
type textCheck struct {
	page        *Page
	site        *Site
	rules       Rules
	hazards     hazardCheck
	readability readingCheck
	messages    message.List
}

func newTextCheck(p *Page, s *Site, r Rules) *textCheck {
	return &textCheck{page: p, site: s, rules: r, hazards: newHazardCheck(p), readability: newReadingCheck(p, r)}
}

// prose looks at one paragraph, heading, cell, caption or description of an image.
func (c *textCheck) prose(p *markdown.Prose) {
	c.hazards.prose(p)
	c.readability.prose(p)
}

// finish checks what needs the whole page, and gives all that was found.
func (c *textCheck) finish() message.List {
	c.headings()
	c.links()
	c.cautions()
	c.review()
	c.grade()
	c.lengths()
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
