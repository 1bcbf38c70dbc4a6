package site

import (
	"bytes"
	"maps"
	"slices"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/page"
)

// A common is what the pages that nobody writes are made from.
type common struct {
	*edition
	book *book.Book
}

// Common lists the pages that nobody writes, the theme's files, and the files of the content folder that pages show.
func (e *edition) Common(b *book.Book) ([]book.Part, message.List) {
	built, said := bundle()
	c := &common{e, b}
	parts := c.pages()
	found := c.found(parts)
	shared := []output.File{built.Ranges, built.Style, built.PracticeStyle, built.CourseStyle, built.WallStyle,
		built.BlockStyle, built.DrawingStyle, built.Icon}
	if len(e.Site.Languages) > 1 {
		shared = append(shared, built.Language)
	}
	for _, language := range slices.Sorted(maps.Keys(e.renderers())) {
		of := scripts()[language]
		shared = append(shared, of.page, of.after, of.paper, of.practice, of.wall, of.course, of.block, of.blocks,
			of.drawing, of.offline, of.find)
	}
	for _, icon := range icons() {
		shared = append(shared, icon.File)
	}
	shared = slices.Concat(shared, e.manifests(), found)
	for _, f := range shared {
		parts = append(parts, book.Part{Path: f.Path, Make: func() []byte { return f.Bytes }})
	}
	for _, name := range b.Files {
		parts = append(parts, book.Part{Path: name, Copies: name})
	}
	return parts, said
}

// part is a page that nobody writes.
func part(at page.Address, set func(w *bytes.Buffer)) book.Part {
	return book.Part{Path: at.File(), Make: func() []byte { return withBuffer(set) }}
}

// pages lists the pages that nobody writes: the bibliography, the calculations, the lists of the folders, the index of
// terms, the home pages that are lacking, the page for a reader without a network, and the one for an address that is
// not there.
func (c *common) pages() []book.Part {
	var pages []book.Part
	add := func(at page.Address, set func(w *bytes.Buffer)) { pages = append(pages, part(at, set)) }
	addresses := c.addresses()
	folders := foldersOf(addresses)
	for i, language := range c.Site.Languages {
		code := language
		if i == 0 {
			code = ""
		}
		r := c.renderer(language)
		if c.Sources.AnyListed() {
			address := sourcesAddress(code)
			add(address, func(w *bytes.Buffer) { r.Sources(w, c.sourcesView(address, r.Words())) })
		}
		for _, list := range indexes(addresses, code) {
			add(list.address, func(w *bytes.Buffer) { r.Index(w, c.indexView(list, r, folders)) })
		}
		if home := homeOf(page.Address{Language: code}); !slices.Contains(addresses, home) {
			add(home, c.madeHome(home, r))
		}
		pages = append(pages, c.calculationPages(code, r)...)
		terms := c.termsAddress(code)
		add(terms, func(w *bytes.Buffer) { r.Terms(w, c.termsView(terms, r.Words())) })
		kept := offlineAddress(code)
		add(kept, func(w *bytes.Buffer) { r.Offline(w, c.offlineView(kept, r.Words())) })
		if i == 0 {
			add(missing, func(w *bytes.Buffer) { r.Missing(w, c.missingView(r.Words())) })
		}
	}
	return pages
}

// addresses are those of the pages that somebody wrote.
func (c *common) addresses() []page.Address {
	list := make([]page.Address, len(c.book.Outlines))
	for i, o := range c.book.Outlines {
		list[i] = o.Address
	}
	return list
}
