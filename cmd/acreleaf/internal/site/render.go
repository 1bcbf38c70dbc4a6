package site

import (
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"time"

	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/theme"
)

// prepare gets ready what the pages are made with.
func (p *press) prepare() {
	if !p.prints {
		return
	}
	built, messages := bundle()
	p.say(messages)
	if b := p.before; b != nil && p.siteFile == b.siteFile && p.sourcesFile == b.sourcesFile {
		p.edition = b.edition
		return
	}
	e := &edition{site: p.site, sources: p.sources, bundle: built, renderers: map[string]*render.Renderer{}}
	p.edition = e
	if b := p.before; b != nil && p.siteFile == b.siteFile {
		e.renderers = b.edition.renderers
		return
	}
	known := languagesOfTheme()
	for _, language := range p.site.Languages {
		if !slices.Contains(known, language) {
			continue // join says so, and no page is made
		}
		r, err := render.New(theme.Files, e.siteView(language))
		if err != nil {
			panic(err) // the theme is part of the program
		}
		e.renderers[language] = r
	}
}

// finish makes the pages that show something of others, and what else is left of the site.
func (p *press) finish() {
	p.outlinePages()
	each(len(p.pages), func(i int) {
		d := p.pages[i]
		d.guarded(func() {
			if !p.stands(d) {
				p.finishPage(d)
			}
		})
		d.rest()
	})
	for _, d := range p.pages {
		if d.failed {
			p.say(d.said.failing)
			continue
		}
		p.say(d.set.said)
		p.files = append(p.files, d.set.file)
	}
	shared := []output.File{p.edition.bundle.Ranges, p.edition.bundle.Style, p.edition.bundle.Icon}
	for _, language := range slices.Sorted(maps.Keys(p.edition.renderers)) {
		shared = append(shared, scripts()[language].page, scripts()[language].after)
	}
	for _, f := range shared {
		p.files = append(p.files, p.giveKept(f))
	}
	p.files = append(p.files, p.commonPages()...)
	p.files = append(p.files, p.copies()...)
}

// language is the language that a page is written in.
func (p *press) language(d *draft) string { return languageOf(p.site, d.address) }

// usedFiles lists the files of the content folder that pages show or link to. An editor's backup or a draft of an
// image is no part of the site.
func (p *press) usedFiles() []string {
	return slices.DeleteFunc(slices.Clone(p.listing.files), func(name string) bool { return !p.used[name] })
}

// copies are the used files as they are.
func (p *press) copies() []File {
	var files []File
	copied := map[string][]byte{}
	for _, name := range p.usedFiles() {
		content, err := p.copyOf(name)
		if err != nil {
			p.say(message.List{{ID: "file-unreadable", Text: fmt.Sprintf("%s cannot be read: %v", p.called(name), cause(err)),
				Note: "see that you may read it, or move it out of the content folder"}})
			continue
		}
		files = append(files, p.giveKept(output.File{Path: name, Bytes: content}))
		if p.put == nil {
			copied[name] = content
		}
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
