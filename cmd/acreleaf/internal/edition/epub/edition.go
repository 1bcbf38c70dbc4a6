// Package epub is the edition of a book that readers take along: an EPUB 3.3 for each page that somebody wrote for
// growers. It shows the numbers of the example, and nothing in it runs.
//
// It owns what makes a page of the site a book: what is live is made still (still.go), ways lead where they can lead
// from a book (ways.go), and the files of an EPUB (parts.go, pack.go). It must not know what a construct looks like. It
// asks edition/site for the finished page, reads it as a browser does, changes the tree and writes it as XML. A second
// set of views would say the same in other words a year later; printing XHTML in the first place would bind the site
// to rules that only a book needs.
package epub

import (
	"io/fs"
	"path"
	"slices"
	"sync"
	"time"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/theme"
)

type edition struct {
	*book.Settings
	site    book.Edition
	content fs.FS
	only    []string
	words   func() map[string]*render.Words // by language; those of a language that has none are lacking
}

// Of gives what makes the EPUBs of the pages that are named by their files in the content folder; of all pages for
// none. Pictures are read from the content folder.
func Of(content fs.FS, only []string) book.New {
	return func(s *book.Settings) book.Edition {
		words := sync.OnceValue(func() map[string]*render.Words {
			list := map[string]*render.Words{}
			for _, language := range s.Site.Languages {
				if of, err := render.LoadWords(theme.Files, language); err == nil {
					list[language] = of
				}
			}
			return list
		})
		return &edition{s, site.New(s), content, only, words}
	}
}

// kinds are those of the pages that are made into books: growers read them, and each is whole alone.
var kinds = []kind.Kind{kind.Guide, kind.Workshop}

// Pages lists the files of a content folder that books can be made of, in order.
func Pages(content fs.FS) []string {
	var list []string
	for _, k := range kinds {
		// A folder that is not there has no pages, and one that cannot be read is reported when the book is made.
		_ = fs.WalkDir(content, k.Row().Folder, func(name string, entry fs.DirEntry, err error) error {
			if err == nil && !entry.IsDir() && path.Ext(name) == ".md" {
				list = append(list, name)
			}
			return nil
		})
	}
	return list
}

// Check reports what keeps the pages from being made.
func (e *edition) Check(b *book.Book) message.List { return e.site.Check(b) }

// Common is empty: each book is whole.
func (e *edition) Common(*book.Book) ([]book.Part, message.List) { return nil, nil }

// Page makes the book of a page.
func (e *edition) Page(p *book.Page) ([]output.File, message.List) {
	if !slices.Contains(kinds, p.Address.Kind) || len(e.only) > 0 && !slices.Contains(e.only, p.Name) {
		return nil, nil
	}
	if p.Metadata.Reviewed.IsZero() {
		return nil, message.List{{Level: message.Advice, ID: "book-undated", Source: p.Source, Span: p.Metadata.Places.Title,
			Text: "a book states the day of its text, and this page has none, so no book of it is made",
			Note: "write the day on which somebody looked it through: reviewed: 2026-09-14"}}
	}
	files, said := e.site.Page(p)
	if len(files) == 0 || message.HasFault(said) {
		return nil, said
	}
	made, err := e.bind(p, files[0].Bytes)
	if err != nil {
		return nil, append(said, message.Message{ID: "book-unprintable", Source: p.Source, Text: err.Error(),
			Note: "take out what was last written on the page until the book can be made"})
	}
	return []output.File{{Path: fileOf(p.Address), Bytes: made}}, said
}

// fileOf is where the book of a page is: "guides/soil.epub".
func fileOf(a page.Address) string {
	way := a.String()
	return way[:len(way)-len("/")] + ".epub"
}

// A volume is what a book states of itself.
type volume struct {
	identifier   string
	title        string
	summary      string
	language     string
	office       string
	licence      string
	address      string // of the page in the site; empty when it is not known
	reviewed     string
	words        *render.Words
	pictures     []picture
	mathematical bool
	drawn        bool // it has drawings in its text
}

// bind makes the book from the page of the site.
func (e *edition) bind(p *book.Page, set []byte) ([]byte, error) {
	tree, err := read(set)
	if err != nil {
		return nil, err
	}
	v := &volume{
		title: p.Metadata.Title, summary: p.Metadata.Summary, language: p.Language,
		office: e.Site.Office, licence: e.Site.Licence, words: e.words()[p.Language],
		reviewed: p.Metadata.Reviewed.Format(time.DateOnly),
	}
	if e.Site.Address != "" {
		v.address = e.Site.Address + p.Address.String()
	}
	v.identifier = identifier(v.address, v.office, p.Address)
	body := still(tree, v)
	if err := (&ways{edition: e, from: p.Address, volume: v}).settle(body); err != nil {
		return nil, err
	}
	v.mathematical = find(body, isElement("math")) != nil
	v.drawn = find(body, isElement("svg")) != nil
	return v.pack(body)
}
