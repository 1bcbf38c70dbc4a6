package site

import (
	"bytes"
	"html/template"
	"sync"

	"acreleaf/calc"
	"acreleaf/cmd/acreleaf/internal/assets"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// An edition makes the files of the site: it has what all of its pages share. Nothing changes it, so that a page can be
// made again when somebody asks for it, as it was when the site was last whole.
type edition struct {
	site      config.Site
	sources   config.Sources
	bundle    assets.Bundle
	renderers map[string]*render.Renderer // by language
}

// A text is what somebody wrote of a page, with the calculations that it may use.
type text struct {
	source    *message.Source
	start     int
	address   page.Address
	metadata  page.Metadata
	language  string
	catalogue *calc.Catalogue
}

// A view is a page that is open, to be set.
type view struct {
	*text
	around *surroundings
	doc    *markdown.Document
	work   *worksheet.Page
}

// openText reads and binds a text again. What is wrong in it was told when it was first read.
func openText(t *text, around *surroundings) *view {
	doc, _ := markdown.Parse(t.source, t.start)
	work, _ := worksheet.Bind(doc, t.catalogue, t.language)
	return &view{text: t, around: around, doc: doc, work: work}
}

// buffers are where pages are put together. They are used again, since they grow to the size of the largest page.
var buffers = sync.Pool{New: func() any { return new(bytes.Buffer) }}

// withBuffer lends a buffer and gives what was written into it.
func withBuffer(write func(w *bytes.Buffer)) []byte {
	w := buffers.Get().(*bytes.Buffer)
	defer buffers.Put(w)
	w.Reset()
	write(w)
	return bytes.Clone(w.Bytes())
}

// page sets a page that somebody wrote.
func (e *edition) page(v *view) (set []byte, said message.List) {
	r := e.renderers[v.language]
	f := &fragments{edition: e, view: v, renderer: r, cited: e.newCitations(v.address)}
	body := buffers.Get().(*bytes.Buffer)
	defer buffers.Put(body)
	body.Reset()
	if err := v.doc.HTML(body, f, markdownWords(r.Words())); err != nil {
		said = message.List{{ID: "page-unprintable", Source: v.source, Text: err.Error(),
			Note: "look at the listings of the page"}}
	}
	module, err := v.work.Module()
	if err != nil {
		said = append(said, message.Message{ID: "worksheet-unprintable", Source: v.source,
			Text: err.Error(), Note: "take out worksheets until the page can be made"})
	}
	text := template.HTML(body.String())
	set = withBuffer(func(w *bytes.Buffer) {
		if v.address.Kind == kind.Home {
			lists := e.lists(v)
			r.Home(w, &render.Home{Page: e.pageView(v), Intro: text, Module: module, Seasons: lists.seasons(v.address),
				Questions: lists.questions(v), More: lists.more(v.address, r.Words()), Cited: f.cited.list})
			return
		}
		g := e.guideView(v)
		g.Body, g.Module, g.Cited = text, module, f.cited.list
		r.Guide(w, g)
	})
	return set, said
}

// lists is what a page that lists others lists them from.
func (e *edition) lists(v *view) *common {
	return &common{edition: e, outlines: v.around.outlines, catalogue: v.catalogue}
}

// languageOf is the language that the pages at an address are written in.
func languageOf(site config.Site, address page.Address) string {
	switch {
	case address.Language != "":
		return address.Language
	case len(site.Languages) == 0: // site.yaml has a fault; the pages are looked through all the same
		return "en"
	}
	return site.Languages[0]
}
