package site

import (
	"fmt"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
)

// join checks what one page says of another, and puts the pages in order.
func (p *press) join() {
	index := p.indexPages()
	for _, d := range p.pages {
		if d.faulty {
			continue
		}
		p.resolveLinks(d, index)
		p.checkSources(d)
		p.checkGlance(d)
	}
	p.orderSeason()
}

// indexPages finds the pages by name, and reports two that would stand at one address.
func (p *press) indexPages() map[string]*draft {
	byName := map[string]*draft{}
	byAddress := map[page.Address]*draft{}
	for _, d := range p.pages {
		byName[d.name] = d
		if d.faulty {
			continue
		}
		if other := byAddress[d.address]; other != nil && d.address != (page.Address{}) {
			p.fault(d, message.Span{}, "address-twice",
				fmt.Sprintf("this page and %s would stand at the same address", other.source.Name),
				"rename one of the two")
		}
		byAddress[d.address] = d
	}
	return byName
}

func (p *press) fault(d *draft, span message.Span, id, text, note string) {
	p.say(message.List{{Level: message.Fault, ID: id, Source: d.source, Span: span, Text: text, Note: note}})
}

// checkSources sees that every sourced figure has an entry in the bibliography, and notes which pages use it.
func (p *press) checkSources(d *draft) {
	for _, f := range d.doc.Figures {
		if f.Scheme != "source" {
			continue
		}
		if _, ok := p.sources[f.Target]; !ok {
			p.fault(d, f.TargetSpan, "source-unknown",
				fmt.Sprintf("there is no source %q in %s", f.Target, p.called(sourcesFileName)),
				nearestSource(f, p.sources))
			continue
		}
		if !slices.Contains(p.cited[f.Target], d) {
			p.cited[f.Target] = append(p.cited[f.Target], d)
		}
	}
}

func nearestSource(f *markdown.Figure, sources config.Sources) string {
	if near, ok := message.Nearest(f.Target, sources.IDs()); ok {
		return "write source:" + near
	}
	return "add it to the bibliography, or write one of: " + strings.Join(sources.IDs(), ", ")
}

// checkGlance sees that the line at a glance asks for what the page's worksheets have.
func (p *press) checkGlance(d *draft) {
	for _, item := range d.metadata.Glance {
		use, name, _ := strings.Cut(item.Text, ".")
		bound := d.work.Find(use)
		if bound == nil {
			if !hasBlock(d, use) {
				p.fault(d, item.Span, "figure-unknown",
					fmt.Sprintf("there is no worksheet %q in this page", use),
					"write the name of a worksheet and of its answer, such as: glance: [soil.nitrogen]")
			}
			continue
		}
		if _, ok := bound.Sheet.UnitOf(name); !ok {
			note := "write one of: " + strings.Join(bound.Sheet.Names(), ", ")
			if near, ok := message.Nearest(name, bound.Sheet.Names()); ok {
				note = "write " + use + "." + near
			}
			p.fault(d, item.Span, "figure-unknown", fmt.Sprintf("worksheet %q has no figure %q", use, name), note)
		}
	}
}

// hasBlock says whether the page has a worksheet of that name, even one with a fault.
func hasBlock(d *draft, name string) bool {
	return slices.ContainsFunc(d.doc.Blocks, func(b *markdown.Block) bool { return b.Name == name })
}

// orderSeason ties each guide to the ones before and after it in the season's work.
func (p *press) orderSeason() {
	slices.SortStableFunc(p.pages, func(a, b *draft) int {
		return page.Compare(a.address, a.metadata, b.address, b.metadata)
	})
	last := map[string]*draft{}
	for _, d := range p.pages {
		if d.address.Kind != page.Guide {
			continue
		}
		if before := last[d.address.Language]; before != nil {
			before.next, d.previous = d, before
		}
		last[d.address.Language] = d
	}
}
