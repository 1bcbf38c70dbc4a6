package site

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/page"
)

// Check reports languages without words, files of the content folder that would be where a page is, and names that are
// not the same on every disk. It looks at every name of the site but those of the theme, which are ours.
func (e *edition) Check(b *book.Book) message.List {
	return append(e.checkLanguages(), e.checkPlaces(b)...)
}

var languageLine = regexp.MustCompile(`(?m)^language:.*$`)

// checkLanguages sees that there are interface words for every language of the site.
func (e *edition) checkLanguages() message.List {
	var said message.List
	known := languagesOfTheme()
	for _, language := range e.Site.Languages {
		if slices.Contains(known, language) {
			continue
		}
		span := message.Span{}
		if found := languageLine.FindIndex(e.SiteFile.Text); found != nil {
			span = message.Span{Start: found[0], End: found[1]}
		}
		said = append(said, message.Message{ID: "language-words", Source: e.SiteFile, Span: span,
			Text: fmt.Sprintf("there are no interface words for the language %q", language),
			Note: "take it out; there are words for: " + strings.Join(known, ", ")})
	}
	return said
}

func (e *edition) checkPlaces(b *book.Book) message.List {
	pages := map[string]string{missing.File(): "the page for a wrong address"}
	var addresses []page.Address
	for _, o := range b.Outlines {
		if o.Address != (page.Address{}) {
			pages[o.Address.File()] = b.Called(o.Name)
			addresses = append(addresses, o.Address)
			if o.Address.Kind.Row().Led {
				pages[o.Address.Leader().File()] = "the page for who leads " + b.Called(o.Name)
			}
		}
	}
	for i, language := range e.Site.Languages {
		if i == 0 {
			language = ""
		}
		if e.Sources.AnyListed() {
			pages[sourcesAddress(language).File()] = "the page of the sources"
		}
		lists := []page.Address{homeOf(page.Address{Language: language}),
			indexAddress(language, kind.Calculation.Row().Folder)}
		for _, i := range indexes(addresses, language) {
			lists = append(lists, i.address)
		}
		for _, list := range lists {
			if _, written := pages[list.File()]; !written {
				pages[list.File()] = "a list of pages"
			}
		}
	}
	planned := slices.Sorted(maps.Keys(pages))
	var said message.List
	for _, name := range b.Files {
		if other, taken := pages[name]; taken {
			said = append(said, message.Message{ID: "place-taken", Source: &message.Source{Name: b.Called(name)},
				Text: "in the site this file would take the place of " + other, Note: "rename one of the two"})
			continue
		}
		planned = append(planned, name)
	}
	return append(said, output.Check(planned)...)
}
