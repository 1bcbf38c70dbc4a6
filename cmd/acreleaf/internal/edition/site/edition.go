// Package site is the edition of a book that is a site: a page in HTML for each page, with its numbers live, and pages
// that nobody writes, which list them.
//
// It owns how a page of a site is put together: what each construct of the text looks like, the addresses to which
// links lead, the numbers of citations, lists, contents and the files that pages share. It must not read a file, bind
// or check a page: package book gives it pages that are whole. HTML itself is written in package render.
package site

import (
	"bytes"
	"html/template"
	"sync"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/render"
)

// An edition is what all pages of a site share.
type edition struct {
	*book.Settings
	renderers func() map[string]*render.Renderer // by language
	told      sync.Map                           // of *sourceText by sourceID
}

// New makes the edition of a book that is a site.
func New(s *book.Settings) book.Edition {
	e := &edition{Settings: s}
	e.renderers = sync.OnceValue(func() map[string]*render.Renderer { return renderersOf(&s.Site) })
	return e
}

// renderer sets the pages of a language. It is nil for one without words, which Check reports.
func (e *edition) renderer(language string) *render.Renderer { return e.renderers()[language] }

// buffers are where pages are put together. They are used again, since they grow to the size of the largest page.
var buffers = sync.Pool{New: func() any { return new(bytes.Buffer) }}

// largeBuffer is more than a page that somebody wrote may grow to, in bytes.
const largeBuffer = 1 << 20

// withBuffer lends a buffer and gives what was written into it.
func withBuffer(write func(w *bytes.Buffer)) []byte {
	w := buffers.Get().(*bytes.Buffer)
	w.Reset()
	write(w)
	if w.Len() > largeBuffer { // a list of all pages of a large site; there is no other of that size
		return w.Bytes()
	}
	defer buffers.Put(w)
	return bytes.Clone(w.Bytes())
}

// Page makes the file of a page, and that of who leads it.
func (e *edition) Page(p *book.Page) ([]output.File, message.List) {
	r := e.renderer(p.Language)
	if r == nil {
		return nil, nil
	}
	set, said := e.set(p, r)
	files := []output.File{{Path: p.Address.File(), Bytes: set}}
	if isLed(p) {
		led, more := e.leader(p, r)
		files, said = append(files, led), append(said, more...)
	}
	return files, said
}

// set sets a page that somebody wrote.
func (e *edition) set(p *book.Page, r *render.Renderer) (set []byte, said message.List) {
	f := &fragments{edition: e, page: p, at: p.Address, renderer: r, cited: e.newCitations(p.Address)}
	body := buffers.Get().(*bytes.Buffer)
	defer buffers.Put(body)
	body.Reset()
	if err := p.Document.HTML(body, f, markdownWords(r.Words())); err != nil {
		said = message.List{{ID: "page-unprintable", Source: p.Source, Text: err.Error(),
			Note: "look at the listings of the page"}}
	}
	module, err := p.Work.Module()
	if err != nil {
		said = append(said, message.Message{ID: "worksheet-unprintable", Source: p.Source,
			Text: err.Error(), Note: "take out worksheets or exercises until the page can be made"})
	}
	text := template.HTML(body.String())
	set = withBuffer(func(w *bytes.Buffer) {
		if p.Address.Kind == kind.Home {
			lists := &common{e, p.Book}
			r.Home(w, &render.Home{Page: e.pageView(p), Intro: text, Module: module, Seasons: lists.seasons(p.Address),
				Questions: lists.questions(p), More: lists.more(p.Address, r.Words()), Cited: f.cited.list})
			return
		}
		g := e.guideView(p)
		if p.Address.Kind == kind.Block {
			g.Block, g.Glance = f.blockView(), nil
			g.Block.Text, text = text[f.below:], text[:f.below]
		}
		g.Body, g.Module, g.Cited = text, module, f.cited.list
		g.Exercises, g.Drawings = f.exercises > 0, f.drawings > 0
		r.Guide(w, g)
	})
	return set, said
}

func markdownWords(w *render.Words) *markdown.Words {
	return &markdown.Words{
		Danger: w.Signals.Danger, Warning: w.Signals.Warning, Caution: w.Signals.Caution, Notice: w.Signals.Notice,
		SelfLink: w.Text.HeadingLink, Table: w.Text.Table, Code: w.Text.Code,
		Example: w.Text.Example, Written: w.Text.Written, Made: w.Text.Made,
		Notes: w.Text.Footnotes, Note: w.Text.Footnote, BackToText: w.Text.FootnoteBack,
	}
}
