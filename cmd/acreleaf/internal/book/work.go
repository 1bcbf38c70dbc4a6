package book

import (
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/proof"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// work does what can be done with each page alone, and with its translations: it checks them, has their files made, and
// lets go of all that takes room.
func (p *press) work() {
	settings, catalogue := p.sameSettings(), p.sameCatalogue()
	if message.HasFault(p.messages) {
		p.out.stop()
	}
	each(len(p.walked), func(i int) {
		if d := p.walked[i]; d.original == nil {
			p.workTogether(d, settings, catalogue)
		}
	})
}

// workTogether works a page and its translations, since those are compared with it.
func (p *press) workTogether(d *draft, sameSettings, sameCatalogue bool) {
	all := append([]*draft{d}, d.translations...)
	for _, d := range all {
		d.guarded(func() {
			p.bindPage(d, sameCatalogue)
			p.proofPage(d, sameSettings)
			p.linkPage(d)
			p.outlinePage(d)
		})
	}
	for _, d := range all {
		d.guarded(func() { p.compareTwins(d, sameSettings) })
	}
	for _, d := range all {
		d.guarded(func() {
			if p.mayFinish(d) && !d.address.Kind.Row().Lists {
				p.finishPage(d)
			}
		})
		d.rest()
		p.drop(d)
		if message.HasFault(d.said.all()) {
			p.out.stop()
		}
	}
}

// open reads and binds a page again whose document and worksheets are not there.
func (p *press) open(d *draft) {
	d.parse()
	if d.work == nil {
		d.work, _ = worksheet.Bind(d.doc, p.catalogue, p.language(d)) // what is wrong was found the first time
	}
}

// bindPage binds the blocks of a page, if that is not done or was done with other calculations.
func (p *press) bindPage(d *draft, sameCatalogue bool) {
	language := p.language(d)
	if d.bound != nil && d.bound.language == language && (sameCatalogue || p.stillBound(d)) {
		return
	}
	d.parse()
	d.work, d.said.binding = worksheet.Bind(d.doc, p.catalogue, language)
	b := &bound{language: language, whole: len(d.said.binding) == 0 && d.work.HasAll(d.doc.Blocks)}
	for _, s := range d.work.Sheets {
		b.sheets = append(b.sheets, s.Sheet)
	}
	for _, f := range d.doc.Figures {
		switch f.Scheme {
		case construct.Worked:
			b.worked++
		case construct.Sourced:
			b.sourced = append(b.sourced, f.Target)
		}
	}
	d.bound, d.proofed, d.compared, d.outline = b, nil, nil, nil
}

// stillBound says whether a page found all the calculations that it asks for, and they are still the same.
func (p *press) stillBound(d *draft) bool {
	if !d.bound.whole {
		return false
	}
	for _, s := range d.bound.sheets {
		if found := p.catalogue.Find(s.Name); found == nil || found.In(d.bound.language) != s {
			return false
		}
	}
	return true
}

// proofPage checks a page by itself, if that is not done or was done for other settings.
func (p *press) proofPage(d *draft, sameSettings bool) {
	if d.proofed != nil && sameSettings {
		return
	}
	p.open(d)
	own, site := p.proofOf(d), p.proofedSite()
	d.said.proofing = proof.Alone(own, site, p.rules)
	d.said.proofing = append(d.said.proofing, p.checkSources(d)...)
	d.said.proofing = append(d.said.proofing, checkGlance(d)...)
	d.proofed, d.compared = &proofed{proof.Quotes(own, site, p.rules)}, nil
}

// compareTwins compares a page with the one that it translates, if one of the two was worked again.
func (p *press) compareTwins(d *draft, sameSettings bool) {
	o := d.original
	now := &comparison{own: d.bound}
	if o != nil && !o.faulty {
		now.original = o.bound
	}
	if sameSettings && d.compared != nil && *d.compared == *now {
		return
	}
	d.compared, d.said.comparing = now, nil
	if !p.isTranslation(d) {
		return
	}
	var original *proof.Page
	if now.original != nil {
		p.open(o)
		original = p.proofOf(o)
	}
	p.open(d)
	d.said.comparing = proof.Translation(p.proofOf(d), original, p.proofedSite(), p.rules)
}

// proofOf is a page as the proof takes it, while it is open.
func (p *press) proofOf(d *draft) *proof.Page {
	return &proof.Page{Name: d.name, Source: d.source, Address: d.address, Language: p.language(d),
		Metadata: d.metadata, Document: d.doc, Work: d.work}
}

func (l *loaded) proofedSite() *proof.Site {
	return &proof.Site{Config: l.Site, ConfigFile: l.SiteFile, Sources: l.Sources, SourcesFile: l.SourcesFile}
}
