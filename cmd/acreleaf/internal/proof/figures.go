package proof

import (
	"fmt"
	"slices"
	"strings"

	"acreleaf/calc/prose"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

// figureCheck checks the numbers in the prose: each is worked, which worksheet has compared with its value, or sourced,
// or it is no figure of the trade.
type figureCheck struct {
	page     *Page
	site     *Site
	rules    Rules
	language *prose.Language
	table    columns
	known    []candidate // nil until a number asks for them
	measured *bool       // whether the page works with measures; nil until a number asks
	messages message.List
}

func newFigureCheck(p *Page, s *Site, r Rules) *figureCheck {
	return &figureCheck{page: p, site: s, rules: r, language: prose.For(p.Language)}
}

// finish checks the metadata and the titles, and gives all that was found.
func (c *figureCheck) finish() message.List {
	c.metadata("title", c.page.Metadata.Title, c.page.Metadata.Places.Title)
	c.metadata("summary", c.page.Metadata.Summary, c.page.Metadata.Places.Summary)
	c.metadata("season", c.page.Metadata.Season, c.page.Metadata.Places.Season)
	for _, can := range c.page.Metadata.Lesson.Outcomes {
		c.metadata("outcomes", can.Text, can.Span)
	}
	c.titles()
	return c.messages
}

func (c *figureCheck) fault(id string, at message.Span, text, note string) {
	c.messages = append(c.messages, message.Message{
		Level: message.Fault, ID: id, Source: c.page.Source, Span: at, Text: text, Note: note,
	})
}

// prose checks one paragraph, heading, cell, caption or aside.
func (c *figureCheck) prose(p *markdown.Prose) {
	if c.isTyped(p) {
		return
	}
	for _, f := range p.Figures {
		if !c.joined(p, f) {
			c.figure(f.Figure, c.after(p.Text, f.At+len(markdown.Stand)))
		}
		c.beside(p, f)
		c.contradicted(p, f)
	}
	c.table.inCell = false
	if !p.Running && p.Aside == "" {
		c.cell(p)
	}
	c.countsAndDays(p)
	found := c.language.Find(p.Text)
	c.measures(p, found)
	for _, a := range found {
		at := p.Span(a.Start, a.End)
		text, around := oneLine(p.Text[a.Start:a.End]), c.around(p, a.Start, a.End)
		switch {
		case p.Aside != "":
			c.repeated(a, text, string(p.Aside), around, at)
		case c.isMistyped(at):
		case inLink(p, a):
			c.repeated(a, text, "the text of this link", around, at)
		default:
			if b, leads := c.language.NumberBefore(p.Text[:a.Start]); leads && b.IsSpacing() && b.SharesUnit(a.Unit) {
				c.spacing(p, b, a, around)
				continue
			}
			c.loose(a, text, around, at)
		}
	}
}

// figure checks a figure by its scheme. Worksheet has checked the worked ones.
func (c *figureCheck) figure(f *markdown.Figure, rest string) {
	if f.Faulty {
		return
	}
	if f.Scheme != construct.Worked && c.language.MisplacesComma(f.Text) {
		c.fault("figure-comma", f.TextSpan, fmt.Sprintf("%s has a comma before its decimals, and the numbers of "+
			"this page have a point there", f.Text), "write a point: "+unit.PointDecimals(f.Text))
		return
	}
	switch f.Scheme {
	case construct.Sourced:
		c.sourced(f, rest)
	case construct.Recorded:
		c.record(f, rest)
	case construct.Sized:
		c.size(f, rest)
	}
}

// isTyped says whether a text is there to be typed and not to be believed: "nitrate: 12 ppm" between backticks, and all
// listings of a manual.
func (c *figureCheck) isTyped(p *markdown.Prose) bool {
	switch p.Aside {
	case markdown.Code:
		return c.page.Address.Kind.Row().Typed || strings.ContainsAny(p.Text, ":=[]()<>|")
	case markdown.Listing:
		return c.page.Address.Kind.Row().Typed
	}
	return false
}

// after gives what of a text belongs to the figure before it. A substance in parentheses does: "12 ppm (NO3)".
func (c *figureCheck) after(text string, at int) string {
	const enough = 80
	rest := text[at:min(len(text), at+enough)]
	if substance := c.language.SubstanceInParentheses(rest); substance != "" {
		return substance
	}
	if end := strings.IndexAny(rest, markdown.Stand+"[]().,;:!?"); end >= 0 {
		rest = rest[:end]
	}
	return strings.ToValidUTF8(rest, "")
}

// isMistyped says whether a place is in a link to the name of a way to tie a figure, without its colon: [18 ft](size).
// The join reports the link.
func (c *figureCheck) isMistyped(at message.Span) bool {
	return slices.ContainsFunc(c.page.Document.Links, func(l *markdown.Link) bool {
		return isScheme(l.Destination) && l.Span.Start <= at.Start && at.End <= l.Span.End
	})
}

// isScheme says whether a text is the name of a way to tie a figure.
func isScheme(text string) bool {
	_, is := construct.SchemeOf(text)
	return is
}

func inLink(p *markdown.Prose, a prose.Amount) bool {
	for _, l := range p.Links {
		if l.Start <= a.Start && a.End <= l.End {
			return true
		}
	}
	return false
}

func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }
