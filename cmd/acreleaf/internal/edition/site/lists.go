package site

import (
	"cmp"
	"path"
	"slices"
	"strings"

	"acreleaf/calc/fact"
	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
)

// seasons lists the guides of a page's language by the part of the season they belong to, in order.
func (c *common) seasons(from page.Address) []render.Season {
	var seasons []render.Season
	for _, o := range c.book.Outlines {
		if o.Address.Kind != kind.Guide || o.Address.Language != from.Language {
			continue
		}
		if n := len(seasons); n == 0 || seasons[n-1].Name != o.Season {
			seasons = append(seasons, render.Season{Name: o.Season})
		}
		listed := entry(from, o)
		listed.Example = render.Example(o.Example)
		last := &seasons[len(seasons)-1]
		last.Guides = append(last.Guides, listed)
	}
	return seasons
}

func (c *common) sourcesView(address page.Address, words *render.Words) *render.Sources {
	v := &render.Sources{Page: c.edition.frame(address, words.Sources.Title, words.Sources.Summary)}
	v.Page.Languages = c.homesInLanguages(address)
	cited := c.book.Cited()
	for _, id := range c.edition.Sources.IDs() {
		told := c.edition.tell(id, address.Language)
		source, entry := &told.reference, told.view
		if !source.Listed && len(cited[id]) == 0 || entry.Kind == string(fact.Definition) {
			continue
		}
		if main := c.edition.Site.Languages[0]; address.Language != "" && address.Language != main {
			if source.Note == c.edition.Sources[id].Note {
				entry.NoteLang = main // sources.yaml is in the main language
			}
		}
		for _, o := range cited[id] {
			if o.Address.Language == address.Language {
				entry.Cited = append(entry.Cited, render.Link{Href: address.To(o.Address), Text: o.Title})
			}
		}
		v.Entries = append(v.Entries, entry)
	}
	return v
}

// missingView is served at any depth, and no way from there is known. So its ways start at the site's address, or,
// where site.yaml has none, at the top of the server.
func (c *common) missingView(words *render.Words) *render.Missing {
	root := cmp.Or(c.Site.Address, "/")
	ways := func(code string, words *render.Words) []render.Link {
		top := page.Address{Kind: kind.Home, Language: code}
		list := append([]render.Link{{Text: words.Page.Home}}, c.more(top, words)...)
		for i := range list {
			list[i].Href = root + top.String() + strings.TrimPrefix(list[i].Href, "./")
		}
		return list
	}
	v := &render.Missing{
		Page: c.edition.frame(missing, words.Missing.Title, words.Missing.Summary), Ways: ways("", words),
	}
	for _, language := range c.spoken(missing) {
		if code := c.inAddress(language); code != "" {
			other := c.renderer(language).Words()
			v.Others = append(v.Others, render.MissingIn{Lang: language, Words: other, Ways: ways(code, other)})
		}
	}
	v.Page.Root, v.Page.Home, v.Page.Unlisted, v.Page.Astray = root, root, true, true
	v.Page.Terms = root + c.termsAddress("").String()
	if v.Page.Sources != "" {
		v.Page.Sources = root + sourcesAddress("").String()
	}
	return v
}

// questions are those of a home page. Below each is what its page says of itself.
func (c *common) questions(p *book.Page) []render.Question {
	var list []render.Question
	for _, q := range p.Metadata.Questions {
		name := path.Clean(q.Page.Text) // a home page is at the top of the content folder
		at := slices.IndexFunc(c.book.Outlines, func(o *book.Outline) bool { return o.Name == name })
		if at >= 0 {
			answer := c.book.Outlines[at]
			list = append(list, render.Question{Text: q.Text, Href: p.Address.To(answer.Address), Summary: answer.Summary})
		}
	}
	return list
}
