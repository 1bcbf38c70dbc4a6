package proof

import (
	"fmt"

	"acreleaf/calc/prose"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A lapse is a length of time that the prose tells: "three months".
type lapse struct {
	text  string
	hours float64
	one   bool // by a word
	span  message.Span
}

// times advises on a length of time that only the translation tells beside one that only the original tells, in the
// same part of both. A month is no figure by itself, so nothing else compares it.
func (t *translation) times() {
	if !t.rules.Advice || len(t.original.Document.Headings) != len(t.page.Document.Headings) {
		return
	}
	theirs, ours := lapses(t.original), lapses(t.page)
	for part := range ours {
		own, original := without(ours[part], theirs[part], func(a, b lapse) bool { return near(a.hours, b.hours) })
		for i := range min(len(own), len(original)) {
			if own[i].one && original[i].one {
				continue // "that one day", and the other's "un mes de lluvia"
			}
			t.messages = append(t.messages, message.Message{Level: message.Advice, ID: "translation-time",
				Source: t.page.Source, Span: own[i].span,
				Text: fmt.Sprintf("the translation says %s, and the original %s (%s)", own[i].text, original[i].text,
					t.at(original[i].span.Start)),
				Note: "write the same time in both, or leave it if the two tell of different things"})
		}
	}
}

// lapses gives the lengths of time of a page by its parts: before the first heading, and below each.
func lapses(p *Page) [][]lapse {
	parts := make([][]lapse, len(p.Document.Headings)+1)
	language, hour := prose.For(p.Language), unit.MustParse("h")
	p.Document.Prose(func(prose *markdown.Prose) {
		if prose.Aside != "" {
			return
		}
		for _, c := range language.Times(prose.Text) {
			span := prose.Span(c.Start, c.End)
			a := c.Amount()
			if by, err := a.Unit.To(hour); err == nil {
				part := partAt(p, span.Start)
				parts[part] = append(parts[part], lapse{oneLine(prose.Text[c.Start:c.End]), by.Apply(a.Low), c.IsOne(), span})
			}
		}
	})
	return parts
}

// partAt counts the headings before a place.
func partAt(p *Page, offset int) int {
	n := 0
	for _, h := range p.Document.Headings {
		if h.Span.Start <= offset {
			n++
		}
	}
	return n
}
