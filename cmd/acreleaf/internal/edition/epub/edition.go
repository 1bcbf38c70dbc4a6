// Package epub is the edition of a book that readers take along: an EPUB 3.3 for each guide and workshop, and one for
// each course. It shows the numbers of the example, and nothing in it runs.
//
// It owns what makes a page of the site a book: what is live is made still (still.go), links lead where they can lead
// from a book (ways.go), lessons are the chapters of their course (course.go), and the files of an EPUB (parts.go,
// pack.go). It must not know what a construct looks like. It
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

	"golang.org/x/net/html"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/folder"
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
	courses courses
}

// Of gives what makes the EPUBs of the pages that are named by their files in the content folder, and of the courses
// that are named by their folders; for none, of all guides, workshops and courses. Pictures are read from the content
// folder. Such an edition is for one making: it keeps what it has seen of the lessons until their courses are made.
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
		return &edition{Settings: s, site: site.New(s), content: content, only: only, words: words}
	}
}

// kinds are those of the pages that are each made into a book of their own: growers read them, and each is whole alone.
// A lesson rests on those before it, so it is made into such a book only where it is asked for by its name.
var kinds = []kind.Kind{kind.Guide, kind.Workshop}

// Books lists what books can be made of, in order: the files of pages, and the folders of courses.
func Books(content fs.FS) []string {
	var list []string
	for _, k := range kinds {
		list = append(list, folder.Pages(content, k.Row().Folder)...)
	}
	for _, name := range Lessons(content) {
		if course := path.Dir(name); !slices.Contains(list, course) {
			list = append(list, course)
		}
	}
	return list
}

// Lessons lists the files of the lessons.
func Lessons(content fs.FS) []string {
	return slices.DeleteFunc(folder.Pages(content, kind.Lesson.Row().Folder), func(name string) bool {
		return path.Base(name) == CourseFile
	})
}

// CourseFile is the page that somebody wrote of a course.
const CourseFile = "course.md"

// Check reports what keeps the pages from being made.
func (e *edition) Check(b *book.Book) message.List { return e.site.Check(b) }

// Page makes the book of a page, and keeps what a course needs of a lesson.
func (e *edition) Page(p *book.Page) ([]output.File, message.List) {
	alone := slices.Contains(e.only, p.Name) || len(e.only) == 0 && slices.Contains(kinds, p.Address.Kind)
	course := p.Address.Course()
	inCourse := course != "" && (len(e.only) == 0 || slices.Contains(e.only, course))
	if !alone && !inCourse {
		return nil, nil
	}
	if alone && p.Metadata.Reviewed.IsZero() {
		return nil, message.List{undated(p.Source, p.Metadata)}
	}
	files, said := e.site.Page(p)
	if len(files) == 0 || message.HasFault(said) {
		return nil, said
	}
	if inCourse {
		e.courses.keep(p, files[0].Bytes)
	}
	if !alone {
		return nil, said
	}
	made, err := e.bind(p, files[0].Bytes)
	if err != nil {
		return nil, append(said, unprintable(p.Source, err))
	}
	return []output.File{{Path: fileOf(p.Address), Bytes: made}}, said
}

func undated(source *message.Source, m page.Metadata) message.Message {
	return message.Message{Level: message.Advice, ID: "book-undated", Source: source, Span: m.Places.Title,
		Text: "a book states the day of its text, and this page has none, so no book of it is made",
		Note: "write the day on which somebody looked it through: reviewed: 2026-09-14"}
}

func unprintable(source *message.Source, err error) message.Message {
	return message.Message{ID: "book-unprintable", Source: source, Text: err.Error(),
		Note: "take out what was last written on the page until the book can be made"}
}

// fileOf is where the book of a page is: "guides/soil.epub".
func fileOf(a page.Address) string {
	way := a.String()
	return way[:len(way)-len("/")] + ".epub"
}

// A volume is what a book states of itself, and its text.
type volume struct {
	identifier string
	title      string
	summary    string
	language   string
	office     string
	licence    string
	address    string // of the page in the site; empty when it is not known
	reviewed   string
	words      *render.Words
	pictures   []picture
	chapters   []*chapter
}

// A chapter is a file of the text.
type chapter struct {
	file  string
	title string
	body  *html.Node
}

// volume begins the book of a page or a course.
func (e *edition) volume(at page.Address, language, title, summary string, reviewed time.Time) *volume {
	v := &volume{
		title: title, summary: summary, language: language, office: e.Site.Office, licence: e.Site.Licence,
		words: e.words()[language], reviewed: reviewed.Format(time.DateOnly),
	}
	if e.Site.Address != "" {
		v.address = e.Site.Address + at.String()
	}
	v.identifier = identifier(v.address, v.office, at)
	return v
}

// bind makes the book from the page of the site.
func (e *edition) bind(p *book.Page, set []byte) ([]byte, error) {
	tree, err := read(set)
	if err != nil {
		return nil, err
	}
	v := e.volume(p.Address, p.Language, p.Metadata.Title, p.Metadata.Summary, p.Metadata.Reviewed)
	s := still(tree, v, place{})
	body := s.body
	s.example(v)
	if len(s.answers) > 0 {
		body.AppendChild(answerPart(v, "h2", s.answers))
	}
	s.end(body)
	v.chapters = []*chapter{{textFile, v.title, body}}
	if err := (&ways{edition: e, from: p.Address, volume: v}).settle(body); err != nil {
		return nil, err
	}
	return v.pack()
}
