package site

import (
	"bytes"
	"fmt"
	"html/template"
	"io/fs"
	"slices"
	"sync"
	"time"

	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/theme"
)

// prepare gets ready what the pages are printed with.
func (p *press) prepare() {
	if !p.prints {
		return
	}
	var messages message.List
	p.bundle, messages = bundle()
	p.say(messages)
	if p.before != nil && p.siteFile == p.before.siteFile {
		p.renderers = p.before.renderers
		return
	}
	p.renderers = map[string]*render.Renderer{}
	known := languagesOfTheme()
	for _, language := range p.site.Languages {
		if !slices.Contains(known, language) {
			continue // join says so, and no page is made
		}
		r, err := render.New(theme.Files, p.siteView(language))
		if err != nil {
			panic(err) // the theme is part of the program
		}
		p.renderers[language] = r
	}
}

// render makes the bytes of every file of the site.
func (p *press) render() *Made {
	p.outlinePages()
	files := make([]output.File, len(p.pages))
	each(len(p.pages), func(i int) {
		d := p.pages[i]
		d.guarded(func() {
			if !p.stands(d) {
				p.setPage(d)
			}
			files[i] = d.set.file
		})
		d.printed = nil
	})
	for _, d := range p.pages {
		if d.failed {
			p.say(d.said.failing)
			continue
		}
		p.say(d.set.said)
	}
	files = append(files, p.bundle.Script, p.bundle.Ranges, p.bundle.Style, p.bundle.Icon)
	files = append(files, p.commonPages()...)
	files = append(files, p.copies()...)
	return &Made{Files: files, Pages: len(p.pages)}
}

// language is the language that a page is written in.
func (p *press) language(d *draft) string {
	switch {
	case d.address.Language != "":
		return d.address.Language
	case len(p.site.Languages) == 0: // site.yaml has a fault; the pages are looked through all the same
		return "en"
	}
	return p.site.Languages[0]
}

// A printed is the text of a page in HTML, with the sources that it cites.
type printed struct {
	body  []byte
	cited []render.Reference
	said  message.List
}

// buffers are where pages are put together. They are used again, since they grow to the size of the largest page.
var buffers = sync.Pool{New: func() any { return new(bytes.Buffer) }}

// printPage prints the text of a page as soon as all is known that stands in it, and lets its tree go: the trees of all
// pages at once would be most of the memory that a press takes.
func (p *press) printPage(d *draft, keep bool) {
	if d.printed != nil && !keep {
		d.printed = nil
	}
	if p.prints && d.printed == nil && d.set == nil && p.printable(d) {
		d.printed = p.print(d)
	}
	d.doc.Rest()
}

// printable says whether nothing is missing that the text of a page asks for.
func (p *press) printable(d *draft) bool {
	if message.HasFault(d.said.all()) || p.renderers[p.language(d)] == nil {
		return false
	}
	for _, b := range d.doc.Blocks {
		if d.work.Bound(b) == nil {
			return false
		}
	}
	for _, written := range d.doc.Passages {
		if d.work.Passage(written) == nil {
			return false
		}
	}
	for _, f := range d.doc.Figures {
		if f.Scheme == construct.Worked && d.work.Figure(f) == nil {
			return false
		}
	}
	return true
}

func (p *press) print(d *draft) *printed {
	r := p.renderers[p.language(d)]
	f := &fragments{press: p, draft: d, renderer: r, cited: p.newCitations(d.address)}
	w := buffers.Get().(*bytes.Buffer)
	defer buffers.Put(w)
	w.Reset()
	text := &printed{}
	if err := d.doc.HTML(w, f, markdownWords(r.Words())); err != nil {
		text.said = message.List{{ID: "page-unprintable", Source: d.source, Text: err.Error(),
			Note: "look at the listings of the page"}}
	}
	text.body, text.cited = bytes.Clone(w.Bytes()), f.cited.list
	return text
}

// setPage puts a page together.
func (p *press) setPage(d *draft) {
	r := p.renderers[p.language(d)]
	text := d.printed
	if text == nil {
		text = p.print(d)
	}
	d.set = &setPage{around: p.around(d), said: text.said}
	module, err := d.work.Module()
	if err != nil {
		d.set.said = append(d.set.said, message.Message{ID: "worksheet-unprintable", Source: d.source,
			Text: err.Error(), Note: "take out worksheets until the page can be made"})
	}
	w := buffers.Get().(*bytes.Buffer)
	defer buffers.Put(w)
	w.Reset()
	if d.address.Kind == kind.Home {
		r.Home(w, &render.Home{
			Page: p.pageView(d), Intro: template.HTML(text.body), Module: module, Seasons: p.seasons(d.address),
			More:  p.more(d.address, r.Words()),
			Cited: text.cited,
		})
	} else {
		g := p.guideView(d)
		g.Body, g.Module, g.Cited = template.HTML(text.body), module, text.cited
		r.Guide(w, g)
	}
	d.set.file = output.File{Path: d.address.File(), Bytes: bytes.Clone(w.Bytes())}
}

// makeCommonPages makes the pages that nobody writes: the bibliography, the calculations, the lists of the folders, the
// home pages that are lacking, and the page for an address that is not there.
func (p *press) makeCommonPages() ([]output.File, message.List) {
	var files []output.File
	var failed message.List
	add := func(path string, set func(w *bytes.Buffer)) {
		var w bytes.Buffer
		failed = append(failed, guard(&message.Source{Name: path}, func() { set(&w) })...)
		files = append(files, output.File{Path: path, Bytes: w.Bytes()})
	}
	for i, language := range p.site.Languages {
		code := language
		if i == 0 {
			code = ""
		}
		r := p.renderers[language]
		if p.sources.AnyListed() {
			address := sourcesAddress(code)
			add(address.File(), func(w *bytes.Buffer) { r.Sources(w, p.sourcesView(address, r.Words())) })
		}
		for _, list := range p.indexes(code) {
			add(list.address.File(), func(w *bytes.Buffer) { r.Index(w, p.indexView(list, r)) })
		}
		if home := homeOf(page.Address{Language: code}); p.byAddress[home] == nil {
			add(home.File(), p.madeHome(home, r))
		}
		pages, problems := p.calculationPages(code, r)
		files, failed = append(files, pages...), append(failed, problems...)
		if i == 0 {
			add(missing.File(), func(w *bytes.Buffer) { r.Missing(w, p.missingView(r.Words())) })
		}
	}
	return files, failed
}

// usedFiles lists the files of the content folder that pages show or link to. An editor's backup or a draft of an
// image is no part of the site.
func (p *press) usedFiles() []string {
	return slices.DeleteFunc(slices.Clone(p.listing.files), func(name string) bool { return !p.used[name] })
}

// copies are the used files as they are.
func (p *press) copies() []output.File {
	var files []output.File
	copied := map[string][]byte{}
	for _, name := range p.usedFiles() {
		content, err := p.copyOf(name)
		if err != nil {
			p.say(message.List{{ID: "file-unreadable", Text: fmt.Sprintf("%s cannot be read: %v", p.called(name), cause(err)),
				Note: "see that you may read it, or move it out of the content folder"}})
			continue
		}
		copied[name] = content
		files = append(files, output.File{Path: name, Bytes: content})
	}
	p.copied = copied
	return files
}

// copyOf reads a file, if it was not read before or may have changed.
func (p *press) copyOf(name string) ([]byte, error) {
	if content, kept := p.copied[name]; kept {
		return content, nil
	}
	return fs.ReadFile(p.options.Content, name)
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
