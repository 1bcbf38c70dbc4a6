package book

import (
	"slices"
	"time"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/memo"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/record"
)

// An Outline is what the pages that list others may show of a page.
type Outline struct {
	Listed
	Sheets  []*sheet.Sheet // of its worksheets
	Rests   []*sheet.Sheet // those of its reckoners too
	Sourced []string       // the sources that it names
	Defined []*sheet.Sheet
	Can     []string // what a learner can do after a lesson
	Checks  []record.Exercise
	Changes []Change // what changed and when, the newest first

	Terms     []Term       // of its own; an index has those of its worksheets and materials beside them
	Named     []NamedSheet // its worksheets, for an index
	Materials bool         // it prints the table of all materials
}

// A Change is what somebody changed on a page, and on which day: 2026-09-14.
type Change struct{ Day, Text string }

// Listed are those parts of an outline that can be compared as they are.
type Listed struct {
	Name           string // of its file
	Address        page.Address
	Title, Summary string
	Season         string
	Order          float64
	Changed        string // the day of the last change or review, as 2026-09-14; "" when it says neither
	Minutes        int    // that a lesson takes; 0 when it does not say
	Example        Example
}

func (a *Outline) same(b *Outline) bool {
	return a == b || a.Listed == b.Listed && slices.Equal(a.Sheets, b.Sheets) &&
		slices.Equal(a.Rests, b.Rests) && slices.Equal(a.Sourced, b.Sourced) &&
		slices.Equal(a.Defined, b.Defined) && slices.Equal(a.Can, b.Can) &&
		slices.Equal(a.Checks, b.Checks) && slices.Equal(a.Terms, b.Terms) &&
		slices.Equal(a.Changes, b.Changes) && slices.Equal(a.Named, b.Named) && a.Materials == b.Materials
}

// gather puts together what is known of all pages. If nothing of that changed, it is the book of the last whole
// edition.
func (p *press) gather() *Book {
	b := &Book{Settings: p.Settings, Files: *p.used, Catalogue: p.catalogue, Own: p.own, options: p.options,
		shelf: p.shelf}
	for _, d := range p.pages {
		if o := d.outline.Kept(); o != nil && !d.faulty {
			b.Outlines = append(b.Outlines, o)
		}
	}
	return memo.Same(p.whole.book, b, (*Book).same)
}

func (b *Book) same(o *Book) bool {
	return b.Settings == o.Settings && b.shelf == o.shelf && slices.Equal(b.Files, o.Files) &&
		slices.EqualFunc(b.Outlines, o.Outlines, (*Outline).same)
}

// outlineFrom is what the outline of a page depends on.
type outlineFrom struct {
	bound *bound
	shelf *shelf // nil for a page that defines no calculation
}

func (p *press) outlinePage(d *draft) {
	from := outlineFrom{bound: d.bound.Kept()}
	if len(d.defined.list) > 0 {
		from.shelf = p.shelf
	}
	d.outline.Get(from, func() Outline {
		p.open(d)
		m := d.metadata
		o := Outline{Rests: from.bound.sheets, Sourced: slices.Concat(from.bound.sourced, from.bound.tables),
			Listed: Listed{Name: d.name,
				Address: d.address, Title: m.Title, Summary: m.Summary, Season: m.Season, Order: m.Order, Minutes: m.Lesson.Minutes,
				Changed: day(m.Changed()), Example: ExampleOf(m, d.work)}}
		for _, b := range d.work.Sheets {
			if b.Kind == construct.Worksheet && !slices.Contains(o.Sheets, b.Sheet) {
				o.Sheets = append(o.Sheets, b.Sheet)
			}
		}
		for _, c := range m.Changes {
			o.Changes = append(o.Changes, Change{day(c.Day), c.Text})
		}
		for _, can := range m.Lesson.Outcomes {
			o.Can = append(o.Can, can.Text)
		}
		if d.address.Kind == kind.Lesson {
			o.Checks = checksOf(d.work)
		}
		o.Terms, o.Named, o.Materials = p.termsOf(d), d.namedSheets(), d.hasMaterials()
		for _, definition := range d.defined.list {
			o.Defined = append(o.Defined, definition.Sheet)
		}
		return o
	})
}

// day is a day as ISO 8601 has it, "" for none.
func day(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format(time.DateOnly)
}

// Cited gives the pages that rest on each source, in the order of the season.
func (b *Book) Cited() map[string][]*Outline {
	cited := map[string][]*Outline{}
	for _, o := range b.Outlines {
		cite := func(ids []string) {
			for _, id := range ids {
				if known := cited[id]; len(known) == 0 || known[len(known)-1] != o {
					cited[id] = append(known, o)
				}
			}
		}
		cite(o.Sourced)
		for _, s := range o.Rests {
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
