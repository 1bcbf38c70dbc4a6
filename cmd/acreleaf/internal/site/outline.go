package site

import (
	"slices"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/page"
)

// An outline is what the pages that list others may show of a page: the home page, the page for a wrong address, the
// sources and the calculations.
type outline struct {
	listed
	sheets  []*sheet.Sheet // of its worksheets
	sourced []string       // the sources that it names
	defined []*sheet.Sheet
}

// listed are those parts of an outline that can be compared as they are.
type listed struct {
	address        page.Address
	title, summary string
	season, answer string
	order          float64
}

func (a *outline) same(b *outline) bool {
	return a == b || a.listed == b.listed && slices.Equal(a.sheets, b.sheets) && slices.Equal(a.sourced, b.sourced) &&
		slices.Equal(a.defined, b.defined)
}

// outlinePages gathers the outlines of all pages. If they are all as before, they are those from before.
func (p *press) outlinePages() {
	each(len(p.pages), func(i int) {
		d := p.pages[i]
		if d.guarded(d.outlinePage); d.failed {
			d.outline = &outline{}
		}
	})
	list := make([]*outline, len(p.pages))
	for i, d := range p.pages {
		list[i] = d.outline
	}
	p.outlines = &list
	if p.before != nil && p.before.outlines != nil &&
		slices.EqualFunc(list, *p.before.outlines, (*outline).same) {
		p.outlines = p.before.outlines
	}
}

func (d *draft) outlinePage() {
	if d.outline != nil && len(d.defined) == 0 {
		return // what else it is made from was made anew with it
	}
	m := d.metadata
	o := &outline{listed: listed{
		address: d.address, title: m.Title, summary: m.Summary, season: m.Season,
		order: m.Order, answer: firstAnswer(d),
	}}
	for _, b := range d.work.Sheets {
		if b.Kind == construct.Worksheet && !slices.Contains(o.sheets, b.Sheet) {
			o.sheets = append(o.sheets, b.Sheet)
		}
	}
	for _, f := range d.doc.Figures {
		if f.Scheme == construct.Sourced {
			o.sourced = append(o.sourced, f.Target)
		}
	}
	for _, definition := range d.defined {
		o.defined = append(o.defined, definition.Sheet)
	}
	d.outline = o
}

// firstAnswer is the first figure of a page's line at a glance, with its unit.
func firstAnswer(d *draft) string {
	for _, g := range glance(d)[:min(1, len(d.metadata.Glance))] {
		return g.Shown.Before + g.Shown.Text + g.Shown.After
	}
	return ""
}

// A common is the pages that nobody writes, with all that they are made from.
type common struct {
	outlines              *[]*outline
	siteFile, sourcesFile *message.Source
	added                 []*sheet.Sheet
	files                 []output.File
}

// commonPages are the pages that nobody writes, made again only if something in them may have changed.
func (p *press) commonPages() []output.File {
	now := &common{p.outlines, p.siteFile, p.sourcesFile, p.added, nil}
	if p.before != nil && now.same(p.before.common) {
		p.common = p.before.common
	} else {
		p.citePages()
		var failed message.List
		if now.files, failed = p.makeCommonPages(); len(failed) > 0 {
			p.say(failed)
			return nil
		}
		p.common = now
	}
	return p.common.files
}

func (c *common) same(o *common) bool {
	return o != nil && c.outlines == o.outlines && c.siteFile == o.siteFile && c.sourcesFile == o.sourcesFile &&
		slices.Equal(c.added, o.added)
}
