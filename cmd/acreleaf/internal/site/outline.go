package site

import (
	"slices"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
)

// An outline is what the pages that list others may show of a page: the home page, the page for a wrong address, the
// sources and the calculations.
type outline struct {
	listed
	sheets  []*sheet.Sheet // of its worksheets
	rests   []*sheet.Sheet // those of its reckoners too
	sourced []string       // the sources that it names
	defined []*sheet.Sheet
}

// listed are those parts of an outline that can be compared as they are.
type listed struct {
	address        page.Address
	title, summary string
	name, season   string // the name of its file
	example        render.Example
	order          float64
}

func (a *outline) same(b *outline) bool {
	return a == b || a.listed == b.listed && slices.Equal(a.sheets, b.sheets) &&
		slices.Equal(a.rests, b.rests) && slices.Equal(a.sourced, b.sourced) &&
		slices.Equal(a.defined, b.defined)
}

// outlinePages gathers the outlines of all pages. If they are all as before, they are those from before.
func (p *press) outlinePages() {
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

func (p *press) outlinePage(d *draft) {
	if d.outline != nil && len(d.defined) == 0 {
		return // what else it is made from was made anew with it
	}
	p.open(d)
	m := d.metadata
	o := &outline{rests: d.bound.sheets, sourced: d.bound.sourced, listed: listed{name: d.name,
		address: d.address, title: m.Title, summary: m.Summary, season: m.Season,
		order: m.Order, example: example(m, d.work),
	}}
	for _, b := range d.work.Sheets {
		if b.Kind == construct.Worksheet && !slices.Contains(o.sheets, b.Sheet) {
			o.sheets = append(o.sheets, b.Sheet)
		}
	}
	for _, definition := range d.defined {
		o.defined = append(o.defined, definition.Sheet)
	}
	d.outline = o
}

// citedBy gives the pages that rest on each source, in the order of the season.
func citedBy(outlines []*outline) map[string][]*outline {
	cited := map[string][]*outline{}
	for _, o := range outlines {
		cite := func(ids []string) {
			for _, id := range ids {
				if known := cited[id]; len(known) == 0 || known[len(known)-1] != o {
					cited[id] = append(known, o)
				}
			}
		}
		cite(o.sourced)
		for _, s := range o.rests {
			for _, k := range s.Constants {
				if !k.OnlySlips {
					cite(k.Sources)
				}
			}
			cite(s.NoteSources())
		}
	}
	return cited
}
