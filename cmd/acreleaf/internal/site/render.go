package site

import (
	"bytes"
	"fmt"
	"html/template"
	"io/fs"
	"slices"
	"sync"
	"time"

	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/theme"
)

// render makes the bytes of every file of the site.
func (p *press) render() *Made {
	var messages message.List
	p.bundle, messages = bundle()
	p.say(messages)
	p.renderers = map[string]*render.Renderer{}
	for _, language := range p.site.Languages {
		r, err := render.New(theme.Files, p.siteView(language))
		if err != nil {
			panic(err) // the theme is part of the program, and join has seen that the language is in it
		}
		p.renderers[language] = r
	}
	files := make([]output.File, len(p.pages))
	each(len(p.pages), func(i int) { files[i] = p.renderPage(p.pages[i]) })
	for _, d := range p.pages {
		p.say(d.messages)
	}
	files = append(files, p.bundle.Script, p.bundle.Style)
	files = append(files, p.commonPages()...)
	files = append(files, p.copies()...)
	return &Made{Files: files, Pages: len(p.pages)}
}

// language is the language that a page is written in.
func (p *press) language(d *draft) string {
	if d.address.Language != "" {
		return d.address.Language
	}
	return p.site.Languages[0]
}

// pageBuffers are where a page is put together. They are used again, since they grow to the size of the largest page.
type pageBuffers struct{ body, page bytes.Buffer }

var buffers = sync.Pool{New: func() any { return new(pageBuffers) }}

func (p *press) renderPage(d *draft) output.File {
	d.messages = nil // those of the reading were said
	r := p.renderers[p.language(d)]
	f := &fragments{press: p, draft: d, renderer: r, cited: p.newCitations(d.address, r)}
	b := buffers.Get().(*pageBuffers)
	defer buffers.Put(b)
	body, w := &b.body, &b.page
	body.Reset()
	w.Reset()
	if err := d.doc.HTML(body, f, markdownWords(r.Words())); err != nil {
		d.messages = append(d.messages, message.Message{ID: "page-unprintable", Source: d.source, Text: err.Error(),
			Note: "look at the listings of the page"})
	}
	module, err := d.work.Module()
	if err != nil {
		d.messages = append(d.messages, message.Message{ID: "worksheet-unprintable", Source: d.source,
			Text: err.Error(), Note: "take out worksheets until the page can be made"})
	}
	if d.address.Kind == page.Home {
		r.Home(w, &render.Home{
			Page: p.pageView(d), Intro: template.HTML(body.Bytes()), Module: module, Seasons: p.seasons(d),
			Cited: f.cited.list,
		})
	} else {
		g := p.guideView(d)
		g.Body, g.Module, g.Cited = template.HTML(body.Bytes()), module, f.cited.list
		r.Guide(w, g)
	}
	return output.File{Path: d.address.File(), Bytes: bytes.Clone(w.Bytes())}
}

// commonPages are the pages that nobody writes: the bibliography, the calculations, and the page for an address that is
// not there.
func (p *press) commonPages() []output.File {
	var files []output.File
	for i, language := range p.site.Languages {
		code := language
		if i == 0 {
			code = ""
		}
		r := p.renderers[language]
		if len(p.sources) > 0 {
			address := sourcesAddress(code)
			var w bytes.Buffer
			r.Sources(&w, p.sourcesView(address, r.Words()))
			files = append(files, output.File{Path: address.File(), Bytes: w.Bytes()})
		}
		files = append(files, p.calculationPages(code, r)...)
		if i == 0 {
			var w bytes.Buffer
			r.Missing(&w, p.missingView(r.Words()))
			files = append(files, output.File{Path: missingFile, Bytes: w.Bytes()})
		}
	}
	return files
}

// usedFiles lists the files of the content folder that pages show or link to. An editor's backup or a draft of an
// image is no part of the site.
func (p *press) usedFiles() []string {
	return slices.DeleteFunc(slices.Clone(p.files), func(name string) bool { return !p.used[name] })
}

// copies are the used files as they are.
func (p *press) copies() []output.File {
	var files []output.File
	for _, name := range p.usedFiles() {
		content, err := fs.ReadFile(p.options.Content, name)
		if err != nil {
			p.say(message.List{{ID: "file-unreadable", Text: fmt.Sprintf("%s cannot be read: %v", p.called(name), cause(err)),
				Note: "see that you may read it, or move it out of the content folder"}})
			continue
		}
		files = append(files, output.File{Path: name, Bytes: content})
	}
	return files
}

// date is a day as views take it; "" for none.
func date(day time.Time) string {
	if day.IsZero() {
		return ""
	}
	return day.Format(time.DateOnly)
}

func markdownWords(w *render.Words) *markdown.Words {
	return &markdown.Words{
		Danger: w.Signals.Danger, Warning: w.Signals.Warning, Caution: w.Signals.Caution, Notice: w.Signals.Notice,
		SelfLink: w.Text.HeadingLink, Table: w.Text.Table, Code: w.Text.Code,
		Example: w.Text.Example, Written: w.Text.Written, Made: w.Text.Made,
		Notes: w.Text.Footnotes, Note: w.Text.Footnote, BackToText: w.Text.FootnoteBack,
	}
}
