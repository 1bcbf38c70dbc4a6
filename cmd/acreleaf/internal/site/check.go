package site

import (
	"slices"

	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/proof"
)

// Checked is what Check found.
type Checked struct {
	Messages               message.List
	Pages, Worked, Sourced int // how many pages and figures were read
}

// Check does all that Make does before it makes anything. With rules for advice and a day it looks further than Make.
func Check(o Options, rules proof.Rules) Checked {
	p := newPress(o)
	p.rules = rules
	p.load()
	p.read()
	p.join()
	message.Sort(p.messages)
	checked := Checked{Messages: p.messages, Pages: len(p.pages)}
	for _, d := range p.pages {
		if d.faulty {
			continue
		}
		for _, f := range d.doc.Figures {
			switch f.Scheme {
			case construct.Worked:
				checked.Worked++
			case construct.Sourced:
				checked.Sourced++
			}
		}
	}
	return checked
}

// proofPage checks a page by itself, if that is not done or was done for other settings.
func (p *press) proofPage(d *draft, sameSettings bool) {
	if d.proofed != nil && sameSettings {
		return
	}
	d.proofed = &proof.Page{Name: d.name, Source: d.source, Address: d.address, Language: p.language(d),
		Metadata: d.metadata, Document: d.doc, Work: d.work}
	d.said.proofing = slices.Concat(p.checkSources(d), checkGlance(d), proof.Alone(d.proofed, p.proofedSite(), p.rules))
}

// proofTogether checks the pages against each other.
func (p *press) proofTogether() {
	pages := make([]*proof.Page, 0, len(p.pages))
	for _, d := range p.pages {
		if !d.faulty {
			pages = append(pages, d.proofed)
		}
	}
	site := p.proofedSite()
	if p.rules.Advice && !message.HasFault(p.messages) { // a page with a fault may hide what it cites
		p.citePages()
		site.Cited = make(map[string]bool, len(p.cited))
		for id := range p.cited {
			site.Cited[id] = true
		}
	}
	p.say(proof.Together(pages, site, p.rules))
}

func (p *press) proofedSite() *proof.Site {
	return &proof.Site{Config: p.site, ConfigFile: p.siteFile, Sources: p.sources, SourcesFile: p.sourcesFile}
}
