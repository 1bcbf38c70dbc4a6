// Package handout is the edition of a book that is printed for one workshop: cards with different numbers to cut out,
// the key for the leader, and a sheet to sign in. Each is one page in HTML that needs no other file.
//
// It owns which cards are printed, and what is on each and in the key. The numbers are those of package practice, as in
// the page of the workshop. It must not read a file, bind or check a page; HTML itself is written in package render.
package handout

import (
	"bytes"
	"fmt"
	"io/fs"
	"strings"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/theme"
)

// The files of a handout.
const (
	CardsFile  = "cards.html"
	KeyFile    = "key.html"
	SignInFile = "sign-in.html"
)

// Options say what is printed.
type Options struct {
	Page        string // slash path in the content folder, as PageOf gives it
	First, Last int    // the cards; 0 for all that an exercise has
	PerSide     int    // how many cards are on a side of paper, 2 or 4; of long ones there are fewer
	Paper       Paper
}

// A Paper is one of the sizes to print on.
type Paper = render.Paper

// The sizes of paper.
var (
	Letter = Paper{Width: "215.9mm", Height: "279.4mm"}
	A4     = Paper{Width: "210mm", Height: "297mm"}
)

// PageOf is the page of a workshop or of a lesson as a user names it: a workshop in short, as in "report", or either
// with its folder, as in "courses/feeding/soil" or as its file is.
func PageOf(name string) string {
	page := kind.Workshop.Row().Folder + "/" + name
	for _, of := range withCards {
		folder := of.Row().Folder + "/"
		if _, after, found := strings.Cut(name, folder); found {
			page = folder + after
			break
		}
	}
	return strings.TrimSuffix(page, pageEnd) + pageEnd
}

// withCards are the kinds of pages whose exercises are printed.
var withCards = []kind.Kind{kind.Workshop, kind.Lesson}

const pageEnd = ".md"

// An edition is what the pages of a handout share.
type edition struct {
	*book.Settings
	Options
}

// New gives what makes an edition of a book that is the handout of one page.
func New(o Options) book.New {
	return func(s *book.Settings) book.Edition { return &edition{s, o} }
}

// Check reports nothing: the files of a handout have names of their own.
func (e *edition) Check(*book.Book) message.List { return nil }

// Page makes the files, of the page that is asked for alone.
func (e *edition) Page(p *book.Page) ([]output.File, message.List) {
	if p.Name != e.Options.Page {
		return nil, nil
	}
	if len(p.Work.Exercises) == 0 {
		return nil, message.List{{ID: "handout-exercises", Source: p.Source,
			Text: "this page has no exercise, so there are no cards to print",
			Note: "name another page, or write an exercise: the manual has a page on them"}}
	}
	if said := e.checkCards(p); said != nil {
		return nil, said
	}
	var said message.List
	if e.Site.Address == "" {
		said = append(said, message.Message{Level: message.Advice, ID: "handout-address", Source: e.SiteFile,
			Text: "the site file has no address, so the cards have no QR code",
			Note: "add the address of the home page, as in \"address: https://guides.example.org/walnuts/\""})
	}
	h, err := e.view(p)
	if err != nil {
		return nil, append(said, unprintable(p, err))
	}
	own := e.Site.In(p.Language)
	r, err := render.New(theme.Files, render.Site{Language: p.Language, Office: e.Site.Office, Invented: e.Site.Invented,
		Notice: own.Notice, LocalRule: own.LocalRule})
	if err != nil {
		return nil, append(said, unprintable(p, err))
	}
	made := func(path string, write func(*bytes.Buffer, *render.Handout)) output.File {
		var w bytes.Buffer
		write(&w, h)
		return output.File{Path: path, Bytes: w.Bytes()}
	}
	return []output.File{made(CardsFile, r.Cards), made(KeyFile, r.Key), made(SignInFile, r.SignIn)}, said
}

func unprintable(p *book.Page, err error) message.Message {
	return message.Message{ID: "handout-unprintable", Source: p.Source, Text: "the handout cannot be made: " + err.Error(),
		Note: "change the page or the site file until it can"}
}

// checkCards sees that every exercise has the cards that are asked for.
func (e *edition) checkCards(p *book.Page) message.List {
	var said message.List
	for _, exercise := range p.Work.Exercises {
		if e.Last <= exercise.Cards {
			continue
		}
		said = append(said, message.Message{ID: "handout-cards", Source: p.Source, Span: exercise.Block.Span,
			Text: fmt.Sprintf("this exercise has %d cards, and card %d is asked for", exercise.Cards, e.Last),
			Note: fmt.Sprintf("ask for cards that it has, as in --cards=1-%d, or let it have more: the key \"cards\"",
				exercise.Cards)})
	}
	return said
}

// Common makes no file. It says so when there is no page of that name.
func (e *edition) Common(b *book.Book) ([]book.Part, message.List) {
	of := kindOf(e.Options.Page)
	var names []string
	for _, o := range b.Outlines {
		if o.Name == e.Options.Page {
			return nil, nil
		}
		if o.Address.Kind == of {
			names = append(names, shortName(o.Name))
		}
	}
	note := fmt.Sprintf("this site has no %ss yet; start one: acreleaf draft %s", of, e.Options.Page)
	if near, ok := message.Nearest(shortName(e.Options.Page), names); ok {
		note = "write " + near
	} else if len(names) > 0 {
		note = "write one of: " + strings.Join(names, ", ")
	}
	return nil, message.List{{ID: "handout-page",
		Text: fmt.Sprintf("there is no %s %q", of, shortName(e.Options.Page)), Note: note}}
}

// kindOf is the kind of a page that PageOf gives.
func kindOf(page string) kind.Kind {
	if strings.HasPrefix(page, kind.Lesson.Row().Folder+"/") {
		return kind.Lesson
	}
	return kind.Workshop
}

// shortName is a page as a user names it: a workshop without its folder.
func shortName(page string) string {
	return strings.TrimSuffix(strings.TrimPrefix(page, kind.Workshop.Row().Folder+"/"), pageEnd)
}

// style is that of all pages of a handout.
func style() (string, error) {
	text, err := fs.ReadFile(theme.Files, "style/handout.css")
	return string(text), err
}
