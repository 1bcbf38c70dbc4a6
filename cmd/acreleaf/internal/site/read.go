package site

import (
	"bytes"
	"slices"

	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/proof"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// A draft is a page on its way through the press. A press takes over the drafts of the one before it whose text is the
// same, and does again of their work what no longer holds.
type draft struct {
	name     string // slash path in the content folder
	source   *message.Source
	address  page.Address
	metadata page.Metadata
	start    int // where the Markdown starts in the source
	doc      *markdown.Document
	work     *worksheet.Page
	boundIn  string // the language that its numbers were read in
	proofed  *proof.Page
	hrefs    []string   // by markdown.Link.Index
	anchored []anchored // the links that lead to a part of a page
	uses     []string   // the files of the content folder that it shows or links to
	anchors  []string   // what a link can point at in it
	led      bool       // whether the anchored links lead somewhere has been looked at
	defined  []*worksheet.Definition
	said     said
	printed  *printed // its text, from when it was read until the page is set
	set      *setPage // the finished page
	outline  *outline

	faulty         bool // its text could not be read or worked, so nothing can be said of what is in it
	failed         bool // the program failed on it
	rank           int  // its place in the order of the season
	previous, next *draft
	original       *draft   // that it translates; nil for a page of its own
	translations   []*draft // of it
}

// said is what there is to say of a page, by what found it.
type said struct{ failing, reading, defining, binding, proofing, linking, anchoring message.List }

func (s *said) all() message.List {
	return slices.Concat(s.failing, s.reading, s.defining, s.binding, s.proofing, s.linking, s.anchoring)
}

func (s *said) nothing() bool {
	return len(s.failing)+len(s.reading)+len(s.defining)+len(s.binding)+len(s.proofing)+len(s.linking)+
		len(s.anchoring) == 0
}

// read reads every page. A worksheet may use a calculation of any page, so that all those are read before any is bound;
// and a page can be linked to from any other, so that all names are known before.
func (p *press) read() {
	kept := p.keptDrafts()
	each(len(p.pages), func(i int) { p.pages[i] = p.readPage(p.listing.pages[i], kept[i]) })
	p.indexPages(kept)
	p.define()
	p.prepare()
	settings, catalogue := p.sameSettings(), p.sameCatalogue()
	each(len(p.pages), func(i int) {
		d := p.pages[i]
		if d.faulty {
			return
		}
		d.guarded(func() {
			p.parsePage(d)
			p.bindPage(d, catalogue)
			p.proofPage(d, settings)
			p.linkPage(d)
			p.printPage(d, p.sameTree && settings)
		})
	})
	p.sameAnchors = p.sameTree && !slices.ContainsFunc(p.fresh, func(i int) bool {
		return !slices.Equal(kept[i].anchors, p.pages[i].anchors)
	})
	p.walked, p.kept = slices.Clone(p.pages), kept
}

// readPage reads the text of a page, or takes over the draft that the press before had of it.
func (p *press) readPage(name string, before *draft) *draft {
	if before != nil && before.failed {
		before = nil // what it failed on need not be in the page
	}
	if before != nil && !p.stale(name) {
		return before
	}
	d := &draft{name: name, source: &message.Source{Name: p.called(name)}}
	d.source, d.said.reading = page.Load(p.options.Content, d.name)
	d.source.Name = p.called(d.name)
	if message.HasFault(d.said.reading) {
		d.faulty = true
		return d
	}
	if before != nil && !before.faulty && bytes.Equal(before.source.Text, d.source.Text) {
		return before
	}
	d.guarded(func() {
		p.readHead(d)
		if opensCalculation(d.source.Text) {
			p.parsePage(d)
		}
	})
	return d
}

// readHead reads what is above the text of a page.
func (p *press) readHead(d *draft) {
	metadata, start, messages := page.Split(d.source)
	d.metadata, d.start = metadata, start
	main := ""
	if len(p.languages) > 0 {
		main = p.languages[0]
	}
	address, err := page.AddressOf(d.name, metadata, main)
	if err != nil {
		d.said.reading = append(d.said.reading, badAddress(d, err))
	}
	d.address = address
	d.said.reading = append(d.said.reading, messages...)
	if p.languages != nil {
		d.said.reading = append(d.said.reading, page.CheckLanguage(d.source, metadata, p.languages)...)
	}
}

// parsePage parses the text of a page, if that has not been done.
func (p *press) parsePage(d *draft) {
	if d.doc != nil {
		return
	}
	doc, messages := markdown.Parse(d.source, d.start)
	d.doc, d.anchors = doc, anchors(doc)
	d.said.reading = append(d.said.reading, messages...)
}

// bindPage binds the blocks of a page, if that is not done or was done with other calculations.
func (p *press) bindPage(d *draft, sameCatalogue bool) {
	language := p.language(d)
	if d.work != nil && d.boundIn == language && (sameCatalogue || p.stillBound(d)) {
		return
	}
	d.boundIn = language
	d.work, d.said.binding = worksheet.Bind(d.doc, p.catalogue, language)
	d.proofed, d.printed, d.outline = nil, nil, nil
}

// stillBound says whether a page found all the calculations that it asks for, and they are still the same.
func (p *press) stillBound(d *draft) bool {
	if len(d.said.binding) > 0 || len(d.work.Sheets) != len(d.doc.Blocks) {
		return false
	}
	for _, b := range d.work.Sheets {
		if p.catalogue.Find(b.Sheet.Name) != b.Sheet {
			return false
		}
	}
	return true
}

func badAddress(d *draft, err error) message.Message {
	m := message.Message{ID: "page-name", Source: d.source, Text: err.Error()}
	if named, ok := err.(*page.AddressError); ok {
		m.Text, m.Note = named.Text, named.Note
	}
	return m
}
