package book

import (
	"slices"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/proof"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// work does what can be done with each page alone, and with its translations: it checks them, has their files made, and
// lets go of all that takes room.
func (p *press) work() {
	if message.HasFault(p.messages) {
		p.out.stop()
	}
	each(len(p.walked), func(i int) {
		if d := p.walked[i]; d.original == nil {
			p.workTogether(d)
		}
	})
}

// workTogether works a page and its translations, since those are compared with it.
func (p *press) workTogether(d *draft) {
	all := append([]*draft{d}, d.translations...)
	for _, d := range all {
		d.guarded(func() {
			p.bindPage(d)
			p.proofPage(d)
			p.linkPage(d)
			p.outlinePage(d)
		})
	}
	for _, d := range all {
		d.guarded(func() { p.compareTwins(d) })
	}
	for _, d := range all {
		d.guarded(func() {
			if !d.address.Kind.Row().Lists && p.mayFinish(d) {
				p.finishPage(d)
			}
		})
		d.rest()
		p.drop(d)
		if message.HasFault(d.own()) {
			p.out.stop()
		}
	}
}

// open reads and binds a page again whose document and worksheets are not there.
func (p *press) open(d *draft) {
	p.parse(d)
	if d.work == nil {
		d.work, _ = worksheet.Bind(d.doc, p.catalogue, p.language(d)) // what is wrong was found the first time
	}
}

// A bound is what stays of the binding of a page when its worksheets are gone.
type bound struct {
	sheets  []*sheet.Sheet // of its blocks, in order
	whole   bool           // each block found its calculation
	sourced []string       // the sources that its figures cite, in order
	tables  []string       // the sources that its tables cite
	worked  int            // how many figures are tied to a worksheet
	said    message.List
}

// boundFrom is what the binding of a page depends on: the language that its numbers are read in, and what it can find.
type boundFrom struct {
	language string
	shelf    *shelf
}

// bindPage binds the blocks of a page.
func (p *press) bindPage(d *draft) {
	from := boundFrom{p.language(d), p.shelf}
	if d.bound.Key() != from && p.findsTheSame(d, from.language) {
		from = d.bound.Key()
	}
	d.bound.Get(from, func() bound {
		p.parse(d)
		b := bound{}
		d.work, b.said = worksheet.Bind(d.doc, p.catalogue, from.language)
		b.whole = len(b.said) == 0 && d.work.HasAll(d.doc.Blocks)
		for _, s := range d.work.Sheets {
			b.sheets = append(b.sheets, s.Sheet)
		}
		for _, e := range d.work.Exercises {
			for _, u := range e.Practice.Uses {
				b.sheets = append(b.sheets, u.Sheet)
			}
		}
		for _, block := range d.doc.Blocks {
			if r := d.work.Reference(block); r != nil {
				b.tables = append(b.tables, r.Table.Sources()...)
			}
		}
		for _, f := range d.doc.Figures {
			switch f.Scheme {
			case construct.Worked:
				b.worked++
			case construct.Sourced:
				b.sourced = append(b.sourced, f.Target)
			}
		}
		return b
	})
}

// findsTheSame says whether a page found all the calculations that it asks for, and they are still the same, whatever
// other pages can find.
func (p *press) findsTheSame(d *draft, language string) bool {
	b := d.bound.Kept()
	if b == nil || !b.whole || d.bound.Key().language != language {
		return false
	}
	for _, s := range b.sheets {
		if found := p.catalogue.Find(s.Name); found == nil || found.In(language) != s {
			return false
		}
	}
	return true
}

// A proofed is what stays of the proof of a page.
type proofed struct {
	quotes    []proof.Quote // for the pages that state the same
	exercises []CountedCards
	said      message.List
}

// proofedFrom is what the proof of a page depends on.
type proofedFrom struct {
	bound    *bound
	settings *Settings
}

// proofPage checks a page by itself.
func (p *press) proofPage(d *draft) {
	d.proofed.Get(proofedFrom{d.bound.Kept(), p.Settings}, func() proofed {
		p.open(d)
		own, site := p.proofOf(d), p.proofedSite()
		found := proofed{quotes: proof.Quotes(own, site, p.rules),
			said: slices.Concat(proof.Alone(own, site, p.rules), p.checkSources(d), checkGlance(d), checkTerms(d))}
		if p.rules.Advice {
			found.exercises = p.countCards(d)
		}
		return found
	})
}

// comparedFrom is what a comparison of two pages depends on.
type comparedFrom struct {
	own, original *bound
	settings      *Settings
}

// compareTwins compares a page with the one that it translates.
func (p *press) compareTwins(d *draft) {
	from := comparedFrom{own: d.bound.Kept(), settings: p.Settings}
	o := d.original
	if o != nil && !o.faulty {
		from.original = o.bound.Kept()
	}
	d.compared.Get(from, func() message.List {
		if !p.isTranslation(d) {
			return nil
		}
		var original *proof.Page
		if from.original != nil {
			p.open(o)
			original = p.proofOf(o)
		}
		p.open(d)
		return proof.Translation(p.proofOf(d), original, p.proofedSite(), p.rules)
	})
}

// proofOf is a page as the proof takes it, while it is open.
func (p *press) proofOf(d *draft) *proof.Page {
	return &proof.Page{Name: d.name, Source: d.source, Address: d.address, Language: p.language(d),
		Metadata: d.metadata, Document: d.doc, Work: d.work}
}

func (l *loaded) proofedSite() *proof.Site {
	return &proof.Site{Config: l.Site, ConfigFile: l.SiteFile, Sources: l.Sources, SourcesFile: l.SourcesFile}
}
