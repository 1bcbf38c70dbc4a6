// Package proof checks what a proof-reader and a second calculator would check in finished pages: every figure in the
// prose tied to a worksheet or a source, with the right unit; headings, tables and pictures that every reader can use;
// reviews, translations, sources and cautions.
//
// It owns what is a fault of the text and what is advice. It must not read files, resolve links or work a calculation:
// package book hands the pages over read and bound, and worksheet has compared each worked figure with its value.
package proof

import (
	"slices"
	"time"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// A Page is one page to check, read and bound.
type Page struct {
	Name     string // slash path in the content folder: "guides/soil.es.md"
	Source   *message.Source
	Address  page.Address
	Language string // the code of the language that it is written in, never empty
	Metadata page.Metadata
	Document *markdown.Document
	Work     *worksheet.Page
}

// A Site is what the pages of one site share.
type Site struct {
	Config      config.Site
	ConfigFile  *message.Source
	Sources     config.Sources
	SourcesFile *message.Source // nil when the site has no sources.yaml

	// Cited has the ids of the sources that a page or a calculation in use rests on. It is nil while that is not known:
	// for advice it is wanted, and pages with a fault hide what they cite.
	Cited map[string]bool
}

// Rules say how far the checks go.
type Rules struct {
	Advice bool      // also what is worth a look and stops nothing
	Today  time.Time // a day at midnight UTC, to find overdue reviews; the zero time finds none
}

// Alone checks what can be seen in a page by itself. Pages may be checked at the same time.
func Alone(p *Page, s *Site, r Rules) message.List {
	figures, text, passages := newFigureCheck(p, s, r), newTextCheck(p, s, r), newPassageCheck(p)
	p.Document.Prose(func(prose *markdown.Prose) {
		figures.prose(prose)
		text.prose(prose)
		passages.prose(prose)
	})
	return slices.Concat(figures.finish(), text.finish(), passages.finish(), askedTwice(p, r))
}

// Together checks the sources of a site against all that its pages quote of them.
func Together(quotes []Quote, s *Site, r Rules) message.List {
	messages := citations(s)
	if r.Advice {
		messages = append(messages, uncited(s)...)
		messages = append(messages, entries(quotes, s)...)
	}
	return messages
}
