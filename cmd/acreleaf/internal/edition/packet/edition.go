// Package packet is the edition of a book for a USB stick or an e-mail: a page in one file, with its style, scripts and
// pictures in it, so that it is live where there is no server and no network.
//
// It owns how a page of the site becomes such a file (file.go), where its links lead (ways.go), the one file that has
// the whole site (whole.go), and the archive of the site (archive.go). It must not know what a construct looks like: it
// asks edition/site for the finished page, reads it as a browser does and changes the tree, as edition/epub does.
package packet

import (
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"
	"sync"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/epub"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/folder"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/theme"
)

// The files that have all pages. They are made only when no page is named.
const (
	WholeFile   = "site.html"
	ArchiveFile = "site.zip"
)

// An edition is for one making: it keeps the pages until all are there.
type edition struct {
	*book.Settings
	site    book.Edition
	books   book.Edition // nil where no EPUBs are asked for
	content fs.FS
	only    []string

	mutex sync.Mutex
	set   map[string][]byte // the pages that somebody wrote, as the site has them, by their files there
	own   map[string]string // the packets of single pages, by the files of these pages in the site
}

// Of gives what makes the packets of the pages that are named by their files in the content folder. For none it makes
// those of all pages that growers read, the whole site in one file, and its archive. With books, an EPUB of each guide,
// workshop and course comes beside them. Pictures are read from the content folder.
func Of(content fs.FS, only []string, books bool) book.New {
	return func(s *book.Settings) book.Edition {
		e := &edition{Settings: s, site: site.New(s), content: content, only: only,
			set: map[string][]byte{}, own: map[string]string{}}
		if books {
			e.books = epub.Of(content, booksOf(only))(s)
		}
		return e
	}
}

// booksOf names the books of pages: a lesson is in that of its course, and a home page is in none.
func booksOf(only []string) []string {
	var names []string
	for _, name := range only {
		of, _ := kind.Of(strings.Split(name, "/")[0])
		if of == kind.Lesson {
			name = path.Dir(name)
		}
		if of != kind.None && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

// forGrowers says whether a packet is made of each page of a kind.
func forGrowers(k kind.Kind) bool { return k.Row().Written && k.Row().Reader == kind.Grower }

// Pages lists the files of the pages that packets can be made of, in order.
func Pages(content fs.FS) []string {
	pages, _ := fs.Glob(content, "*.md") // the home pages; the pattern is right
	for k := range kind.All() {
		if k.Row().Folder != "" && forGrowers(k) {
			pages = append(pages, folder.Pages(content, k.Row().Folder)...)
		}
	}
	return pages
}

// Check reports what keeps the pages from being made.
func (e *edition) Check(b *book.Book) message.List { return e.site.Check(b) }

// Page keeps a page as the site has it, and makes its book.
func (e *edition) Page(p *book.Page) ([]output.File, message.List) {
	files, said := e.site.Page(p)
	e.mutex.Lock()
	for _, f := range files {
		e.set[f.Path] = f.Bytes
	}
	if forGrowers(p.Address.Kind) && (len(e.only) == 0 || slices.Contains(e.only, p.Name)) {
		e.own[p.Address.File()] = fileOf(p.Address)
	}
	e.mutex.Unlock()
	if e.books == nil {
		return nil, said
	}
	books, more := e.books.Page(p)
	return books, append(said, ofBooks(more)...)
}

// ofBooks leaves out what the pages of the site have said already.
func ofBooks(said message.List) message.List {
	return slices.DeleteFunc(said, func(m message.Message) bool { return !strings.HasPrefix(m.ID, "book-") })
}

// fileOf is where the packet of a page is: "guides/soil.html".
func fileOf(a page.Address) string {
	way := strings.TrimSuffix(a.String(), "/")
	switch a.Kind {
	case kind.Home:
		return path.Join(way, "home.html")
	case kind.Course:
		return way + "/course.html" // beside its lessons, as what a browser keeps of a course goes by its folder
	}
	return way + ".html"
}

// Common makes the packets, for which all pages must be there.
func (e *edition) Common(b *book.Book) ([]book.Part, message.List) {
	shared, said := e.site.Common(b)
	m := &maker{edition: e, files: map[string]func() []byte{}, words: map[string]*render.Words{}}
	for name, set := range e.set {
		m.files[name] = func() []byte { return set }
	}
	for _, part := range shared {
		m.files[part.Path] = sync.OnceValue(func() []byte { return e.bytesOf(part) })
	}
	for _, language := range e.Site.Languages {
		words, err := render.LoadWords(theme.Files, language)
		if err != nil {
			return nil, said // Check says so
		}
		m.words[language] = words
	}
	var parts []book.Part
	for _, name := range slices.Sorted(maps.Keys(e.own)) {
		parts = append(parts, book.Part{Path: e.own[name], Make: func() []byte { return m.single(name) }})
	}
	if len(e.only) == 0 {
		parts = append(parts, book.Part{Path: WholeFile, Make: m.whole}, book.Part{Path: ArchiveFile, Make: m.archive})
	}
	if e.books != nil {
		books, more := e.books.Common(b)
		parts, said = append(parts, books...), append(said, ofBooks(more)...)
	}
	return parts, said
}

func (e *edition) bytesOf(part book.Part) []byte {
	if part.Copies == "" {
		return part.Make()
	}
	content, err := fs.ReadFile(e.content, part.Copies)
	if err != nil {
		panic(err) // the book read it a moment ago
	}
	return content
}

// A maker has all files of the site by their paths. It is for several goroutines at once.
type maker struct {
	*edition
	files map[string]func() []byte
	words map[string]*render.Words // by language
}
