package site

import (
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/render"
)

// partLevel is the level of the headings that part a page.
const partLevel = 2

// contents lists the parts of a page of the manual.
func contents(doc *markdown.Document) []render.Link {
	var parts []render.Link
	for _, h := range doc.Headings {
		if h.Level == partLevel && !doc.ForLeader(h.Span) {
			parts = append(parts, render.Link{Href: "#" + h.ID, Text: h.Text})
		}
	}
	return parts
}
