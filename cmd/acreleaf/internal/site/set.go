package site

import (
	"slices"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// A setPage is a finished page, with what it was made from beside the page's own text.
type setPage struct {
	around surroundings
	file   output.File
	said   message.List
}

// surroundings are all that the bytes of a page depend on but its own text.
type surroundings struct {
	fixed
	hrefs       []string
	references  []*config.Reference // that the page rests on
	sourcesFile *message.Source     // in which they stand
}

// fixed are those of the surroundings that can be compared as they are.
type fixed struct {
	work           *worksheet.Page
	renderer       *render.Renderer // it has the site's settings, the words and the theme in it
	bibliography   bool
	twins          string
	previous, next turn
	outlines       *[]*outline // of the home page, which lists the guides
}

// A turn is what a page shows of the page before or after it.
type turn struct {
	address page.Address
	title   string
}

// stands says whether a page that was set before is right as it is.
func (p *press) stands(d *draft) bool {
	if d.set == nil || d.set.around.fixed != p.fixed(d) || !slices.Equal(d.set.around.hrefs, d.hrefs) {
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

func (p *press) around(d *draft) surroundings {
	return surroundings{fixed: p.fixed(d), hrefs: d.hrefs, references: p.referencesOf(d), sourcesFile: p.sourcesFile}
}

func (p *press) fixed(d *draft) fixed {
	f := fixed{
		work: d.work, renderer: p.renderers[p.language(d)], bibliography: p.sources.AnyListed(), twins: p.twinAddresses(d),
		previous: turnOf(d.previous), next: turnOf(d.next),
	}
	if d.address.Kind == kind.Home {
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

// twinAddresses are the places of a page in all of its languages, in one text.
func (p *press) twinAddresses(d *draft) string {
	var b strings.Builder
	for _, twin := range p.inLanguages(d) {
		b.WriteString(twin.address.String() + " ")
	}
	return b.String()
}

// referencesOf are the sources that a page rests on, as keepReferences has them.
func (p *press) referencesOf(d *draft) []*config.Reference {
	var list []*config.Reference
	for _, f := range d.doc.Figures {
		if f.Scheme == construct.Sourced {
			list = append(list, p.references[f.Target])
		}
	}
	for _, b := range d.work.Sheets {
		list = append(list, p.referencesOfSheet(b.Sheet)...)
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
