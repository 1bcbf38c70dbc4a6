package site

import (
	"bytes"
	"slices"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// A common is the pages that nobody writes, with all that they are made from.
type common struct {
	edition               *edition
	siteFile, sourcesFile *message.Source
	outlines              *[]*outline
	added                 []*sheet.Sheet
	catalogue             *calc.Catalogue
	own                   map[*sheet.Sheet]*worksheet.Definition
	files                 []File
}

// A commonPage is a page that nobody writes.
type commonPage struct {
	address page.Address
	set     func(w *bytes.Buffer)
}

// commonPages are the pages that nobody writes, made again only if something in them may have changed.
func (p *press) commonPages() []File {
	now := &common{edition: p.edition, siteFile: p.siteFile, sourcesFile: p.sourcesFile, outlines: p.outlines,
		added: p.added, catalogue: p.catalogue, own: p.own}
	if p.before != nil && now.same(p.before.common) {
		p.common = p.before.common
		return p.common.files
	}
	pages := now.pages()
	now.files = make([]File, len(pages))
	failed := make([]message.List, len(pages))
	each(len(pages), func(i int) { // to color the code of calculations is a quarter of the time that a small site takes
		c := pages[i]
		path := c.address.File()
		failed[i] = guard(&message.Source{Name: path}, func() {
			now.files[i] = p.give(path, withBuffer(c.set), func() []byte { return withBuffer(c.set) })
		})
	})
	if failed := slices.Concat(failed...); len(failed) > 0 {
		p.say(failed)
		return nil
	}
	p.common = now
	return now.files
}

// same says whether the pages are made from the same.
func (c *common) same(o *common) bool {
	return o != nil && c.outlines == o.outlines && c.siteFile == o.siteFile && c.sourcesFile == o.sourcesFile &&
		slices.Equal(c.added, o.added)
}

// pages lists the pages that nobody writes: the bibliography, the calculations, the lists of the folders, the home
// pages that are lacking, and the page for an address that is not there.
func (c *common) pages() []commonPage {
	var pages []commonPage
	add := func(at page.Address, set func(w *bytes.Buffer)) { pages = append(pages, commonPage{at, set}) }
	for i, language := range c.edition.site.Languages {
		code := language
		if i == 0 {
			code = ""
		}
		r := c.edition.renderers[language]
		if c.edition.sources.AnyListed() {
			address := sourcesAddress(code)
			add(address, func(w *bytes.Buffer) { r.Sources(w, c.sourcesView(address, r.Words())) })
		}
		for _, list := range indexes(c.addresses(), code) {
			add(list.address, func(w *bytes.Buffer) { r.Index(w, c.indexView(list, r)) })
		}
		if home := homeOf(page.Address{Language: code}); !slices.Contains(c.addresses(), home) {
			add(home, c.madeHome(home, r))
		}
		pages = append(pages, c.calculationPages(code, r)...)
		if i == 0 {
			add(missing, func(w *bytes.Buffer) { r.Missing(w, c.missingView(r.Words())) })
		}
	}
	return pages
}

// addresses are those of the pages that somebody wrote.
func (c *common) addresses() []page.Address {
	list := make([]page.Address, len(*c.outlines))
	for i, o := range *c.outlines {
		list[i] = o.address
	}
	return list
}
