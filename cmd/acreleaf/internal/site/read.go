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
// same, and does again of their work what no longer holds. What is found of a page stays; what it was found in does not
// stay longer than the page is worked.
type draft struct {
	name     string // slash path in the content folder
	source   *message.Source
	address  page.Address
	metadata page.Metadata
	start    int  // where the Markdown starts in the source
	faulty   bool // its text could not be read or worked, so nothing can be said of what is in it
	failed   bool // the program failed on it

	doc  *markdown.Document // nil while the page rests, as are
	work *worksheet.Page    // its worksheets

	parsed       bool              // what is wrong with the text was found
	calculations []*markdown.Block // that it defines
	defined      []*worksheet.Definition
	anchors      []string         // what a link can point at in it
	links        []*markdown.Link // its links, while they may lead elsewhere another time
	hrefs        []string         // by markdown.Link.Index
	anchored     []anchored       // the links that lead to a part of a page
	uses         []string         // the files of the content folder that it shows or links to
	led          bool             // whether the anchored links lead somewhere has been looked at
	bound        *bound
	proofed      bool
	quotes       []proof.Quote
	compared     *comparison // with the page that it translates
	outline      *outline
	set          *setPage // the finished page
	said         said

	rank           int // its place in the order of the season
	previous, next *draft
	original       *draft   // that it translates; nil for a page of its own
	translations   []*draft // of it
}

// said is what there is to say of a page, by what found it.
type said struct{ failing, reading, defining, binding, proofing, comparing, linking, anchoring message.List }

func (s *said) all() message.List {
	return slices.Concat(s.failing, s.reading, s.defining, s.binding, s.proofing, s.comparing, s.linking, s.anchoring)
}

// read reads every page. A worksheet may use a calculation of any page, so that all those are read before any is bound;
// and a page can be linked to from any other, so that all names are known before.
func (p *press) read() {
	p.kept = p.keptDrafts()
	p.walked = make([]*draft, len(p.listing.pages))
	each(len(p.walked), func(i int) { p.walked[i] = p.readPage(p.listing.pages[i], p.kept[i]) })
	p.indexPages()
	p.orderSeason()
	p.joinTranslations()
	p.define()
	p.prepare()
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

// reload reads the text of a page again that was let go, so that a message can show the line.
func (p *press) reload(d *draft) {
	if d.source.Text == nil {
		again, _ := page.Load(p.options.Content, d.name) // it could be read before
		d.source.Text = again.Text
	}
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

// parsePage parses the text of a page, if it is not there parsed.
func (p *press) parsePage(d *draft) {
	if d.doc != nil {
		return
	}
	doc, messages := markdown.Parse(d.source, d.start)
	d.doc = doc
	if d.parsed {
		return
	}
	d.parsed, d.anchors, d.links, d.calculations = true, anchors(doc), doc.Links, doc.Calculations
	d.said.reading = append(d.said.reading, messages...)
}

func badAddress(d *draft, err error) message.Message {
	m := message.Message{ID: "page-name", Source: d.source, Text: err.Error()}
	if named, ok := err.(*page.AddressError); ok {
		m.Text, m.Note = named.Text, named.Note
	}
	return m
}
