package site

import (
	"slices"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
)

// A setPage is what is known of a finished page: what it was made from, and a hash of its bytes.
type setPage struct {
	edition *edition
	text    *text
	around  surroundings
	file    File
	said    message.List
}

// surroundings are all that the bytes of a page depend on but its own text.
type surroundings struct {
	fixed
	twins       []twin // that it can be read in, itself among them; fewer than two are none
	hrefs       []string
	references  []*config.Reference // that the page rests on
	sourcesFile *message.Source     // in which they are
}

// fixed are those of the surroundings that can be compared as they are.
type fixed struct {
	bound          *bound
	renderer       *render.Renderer // it has the site's settings, the words and the theme in it
	bibliography   bool
	previous, next turn
	outlines       *[]*outline // of the home page, which lists the guides
}

// A turn is what a page shows of the page before or after it.
type turn struct {
	address page.Address
	title   string
}

// A twin is a page in one of its languages.
type twin struct {
	language string
	address  page.Address
}

// stands says whether a page that was set before is right as it is.
func (p *press) stands(d *draft) bool {
	if p.put != nil {
		return d.set != nil // there is but one making, and no page is made before all is known that it shows
	}
	if d.set == nil || d.set.around.fixed != p.fixed(d) || !slices.Equal(d.set.around.hrefs, d.hrefs) ||
		!slices.Equal(d.set.around.twins, p.twins(d)) {
		return false
	}
	if d.set.around.sourcesFile == p.sourcesFile {
		return true
	}
	if !slices.Equal(d.set.around.references, p.referencesOf(d)) {
		return false
	}
	d.set.around.sourcesFile = p.sourcesFile
	return true
}

// mayFinish says whether a page has to be made, and can be as far as is known. What its links lead to is seen later.
func (p *press) mayFinish(d *draft) bool {
	own := d.said
	own.anchoring = nil
	return p.prints && !p.stopped.Load() && p.edition.renderers[p.language(d)] != nil &&
		!message.HasFault(own.all()) && !p.stands(d)
}

// finishPage makes a page and gives it away.
func (p *press) finishPage(d *draft) {
	p.open(d)
	if !d.printable() {
		return
	}
	set := &setPage{edition: p.edition, text: p.textOf(d), around: p.around(d)}
	var file []byte
	file, set.said = p.edition.page(&view{text: set.text, around: &set.around, doc: d.doc, work: d.work})
	set.file = p.give(d.address.File(), file, func() []byte {
		again, _ := set.edition.page(openText(set.text, &set.around))
		return again
	})
	d.set = set
}

func (p *press) textOf(d *draft) *text {
	return &text{source: d.source, start: d.start, address: d.address, metadata: d.metadata, language: p.language(d),
		catalogue: p.catalogue}
}

func (p *press) around(d *draft) surroundings {
	return surroundings{fixed: p.fixed(d), twins: p.twins(d), hrefs: d.hrefs, references: p.referencesOf(d),
		sourcesFile: p.sourcesFile}
}

func (p *press) fixed(d *draft) fixed {
	f := fixed{
		bound: d.bound, renderer: p.edition.renderers[p.language(d)], bibliography: p.sources.AnyListed(),
		previous: turnOf(d.previous), next: turnOf(d.next),
	}
	if d.address.Kind.Row().Lists {
		f.outlines = p.outlines
	}
	return f
}

func turnOf(d *draft) turn {
	if d == nil {
		return turn{}
	}
	return turn{d.address, d.metadata.Title}
}

// twins are the places of a page in all of its languages.
func (p *press) twins(d *draft) []twin {
	var twins []twin
	for _, other := range p.inLanguages(d) {
		if code := p.language(other); p.edition.renderers[code] != nil { // or there is a fault
			twins = append(twins, twin{code, other.address})
		}
	}
	return twins
}

// referencesOf are the sources that a page rests on, as keepReferences has them.
func (p *press) referencesOf(d *draft) []*config.Reference {
	var list []*config.Reference
	for _, id := range d.bound.sourced {
		list = append(list, p.references[id])
	}
	for _, s := range d.bound.sheets {
		list = append(list, p.referencesOfSheet(s)...)
	}
	return list
}

func (p *press) referencesOfSheet(s *sheet.Sheet) []*config.Reference {
	var list []*config.Reference
	for _, k := range s.Constants {
		for _, id := range k.Sources {
			list = append(list, p.references[id])
		}
	}
	for _, id := range s.NoteSources() {
		list = append(list, p.references[id])
	}
	return list
}
