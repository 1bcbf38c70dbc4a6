package site

import (
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
	p.work()
	p.join()
	message.Sort(p.messages)
	checked := Checked{Messages: p.messages, Pages: len(p.pages)}
	for _, d := range p.pages {
		if !d.faulty {
			checked.Worked += d.bound.worked
			checked.Sourced += len(d.bound.sourced)
		}
	}
	return checked
}

// proofTogether checks the pages against each other.
func (p *press) proofTogether() {
	site := p.proofedSite()
	if p.rules.Advice && !message.HasFault(p.messages) { // a page with a fault may hide what it cites
		p.outlinePages()
		site.Cited = map[string]bool{}
		for id := range citedBy(*p.outlines) {
			site.Cited[id] = true
		}
	}
	var quotes []proof.Quote
	for _, d := range p.pages {
		quotes = append(quotes, d.quotes...)
	}
	p.say(proof.Together(quotes, site, p.rules))
}

func (p *press) proofedSite() *proof.Site {
	return &proof.Site{Config: p.site, ConfigFile: p.siteFile, Sources: p.sources, SourcesFile: p.sourcesFile}
}
