package book

import (
	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/media"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// An Edition makes the files of a book in one form, such as a site. It is of certain settings, and nothing changes it
// after that, so that a page can be made again as it was when the book was last whole.
type Edition interface {
	// Check reports what keeps the files from being made, whatever is in the pages: a language without words, two files
	// in one place. The book lacks the pages that could not be worked.
	Check(b *Book) message.List
	// Page makes the files of a page that somebody wrote, while it is open. It is called from several goroutines at
	// once, and does not keep the page. What it gives depends on the page and on the settings alone; of the sources, on
	// those that the page rests on.
	Page(p *Page) ([]output.File, message.List)
	// Common lists the files that show something of all pages, or of none.
	Common(b *Book) ([]Part, message.List)
}

// New makes an edition of a book with these settings. It is quick: what takes time is done when it is needed.
type New func(*Settings) Edition

// Settings are what a book says of itself and of its sources. One that did not change is the same one as before.
type Settings struct {
	Site        config.Site
	SiteFile    *message.Source
	Sources     config.Sources
	SourcesFile *message.Source // nil when there is none
}

func (s *Settings) same(o *Settings) bool {
	return s.SiteFile == o.SiteFile && s.SourcesFile == o.SourcesFile
}

// A Book is what is known of all pages when they are worked.
type Book struct {
	*Settings
	Outlines  []*Outline // of the pages, in the order of the season
	Files     []string   // of the content folder that pages show or link to, in order
	Catalogue *calc.Catalogue
	Own       map[*sheet.Sheet]*worksheet.Definition // the calculations that authors wrote

	options Options
	shelf   *shelf
}

// Called is how messages call a file of the content folder.
func (b *Book) Called(name string) string { return b.options.called(name) }

// A Page is a page that somebody wrote, while it is open.
type Page struct {
	Name     string // slash path in the content folder
	Source   *message.Source
	Address  page.Address
	Metadata page.Metadata
	Language string

	Document *markdown.Document
	Work     *worksheet.Page // its worksheets
	Links    []Target        // by markdown.Link.Index

	Previous, Next Turn
	Place          Place
	After          []Turn // the pages that come before a lesson
	Twins          []Twin // the page in all of its languages, itself among them, in the order of the site's languages
	Book           *Book  // for a page that lists others; nil for any other
}

// A Turn is what a page may show of the page before or after it. It is empty at the ends.
type Turn struct {
	Address page.Address
	Title   string
}

// A Twin is a page in one of its languages.
type Twin struct {
	Language string
	Address  page.Address
}

// A Target is what a link leads to: one of its kinds of places.
type Target struct {
	Kind TargetKind
	Page page.Address // of a page, or of the one that the part is in
	Text string       // the part, "" for the whole page; the slash path of the file; or the address
	Size media.Size   // of a picture that the page shows, as it was when the link was looked at
}

// TargetKind is what sort of place a link leads to.
type TargetKind uint8

// The kinds of places.
const (
	Nowhere TargetKind = iota // a message says so
	ToPage
	ToFile  // of the content folder
	Outside // of the book
)

// A Part is a file that an edition makes of no page alone. It is a copy of a file of the content folder, or made.
type Part struct {
	Path   string
	Copies string // slash path in the content folder
	Make   func() []byte
}
