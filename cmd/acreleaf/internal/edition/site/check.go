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

// Check reports languages without words, and names that are not the same on every disk. It looks at every name of the
// site but those of the theme, which are ours.
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

// checkPlaces looks at the names of all files. No file of the content folder can be where a page is, since a page is an
// HTML file in a folder without a dot, and no such file is published.
func (e *edition) checkPlaces(b *book.Book) message.List {
	planned := map[string]bool{missing.File(): true}
	var addresses []page.Address
	for _, o := range b.Outlines {
		if o.Address != (page.Address{}) {
			planned[o.Address.File()] = true
			addresses = append(addresses, o.Address)
			if o.Address.Kind.Row().Led {
				planned[o.Address.Leader().File()] = true
			}
		}
	}
	for i, language := range e.Site.Languages {
		if i == 0 {
			language = ""
		}
		if e.Sources.AnyListed() {
			planned[sourcesAddress(language).File()] = true
		}
		planned[homeOf(page.Address{Language: language}).File()] = true
		planned[offlineAddress(language).File()] = true
		planned[e.termsAddress(language).File()] = true
		planned[indexAddress(language, kind.Calculation.Row().Folder).File()] = true
		for _, i := range indexes(addresses, language) {
			planned[i.address.File()] = true
		}
	}
	for _, name := range b.Files {
		planned[name] = true
	}
	return output.Check(slices.Sorted(maps.Keys(planned)))
}
