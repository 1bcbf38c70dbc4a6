package site

import (
	"slices"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
)

// languages lists languages of a site, and which page in each is the twin of the one at an address. Where there is
// none, the home page is named, and that the twin is lacking. One language alone is no list.
func (e *edition) languages(
	from page.Address, of []string, twin func(language string) (page.Address, bool),
) []render.Language {
	var list []render.Language
	for _, language := range of {
		code, r := e.inAddress(language), e.renderer(language)
		if r == nil {
			return nil // there is a fault
		}
		view := render.Language{Code: language, Name: r.Words().Page.Language, Current: code == from.Language,
			Index: r.Words().Terms.Here}
		to, found := twin(language)
		switch {
		case view.Current:
			to = from
		case !found:
			to = page.Address{Kind: kind.Home, Language: code}
			view.Name, view.Lacks = r.Words().Page.Home, r.Words().Page.Untranslated
		}
		view.Href, view.Address = from.To(to), to.String()
		list = append(list, view)
	}
	if len(list) < 2 {
		return nil
	}
	return list
}

// inAddress is a language as addresses have it: that of the main one is empty.
func (e *edition) inAddress(language string) string {
	if language == e.Site.Languages[0] {
		return ""
	}
	return language
}

// spoken are the languages of a page nobody wrote, and those in which somebody wrote pages.
func (c *common) spoken(from page.Address) []string {
	var list []string
	for _, language := range c.Site.Languages {
		code := c.inAddress(language)
		speaks := func(o *book.Outline) bool { return o.Address.Language == code }
		if code == from.Language || slices.ContainsFunc(c.book.Outlines, speaks) {
			list = append(list, language)
		}
	}
	return list
}

// homesInLanguages are the home pages of the languages.
func (c *common) homesInLanguages(from page.Address) []render.Language {
	return c.sameInLanguages(from, func(string) bool { return true })
}

// sameInLanguages are the pages of the same name in the languages that have it, by the code in their addresses.
func (c *common) sameInLanguages(from page.Address, has func(code string) bool) []render.Language {
	return c.languages(from, c.spoken(from), func(language string) (page.Address, bool) {
		same := from
		same.Language = c.inAddress(language)
		return same, has(same.Language)
	})
}
