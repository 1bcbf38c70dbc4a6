package book

import (
	"slices"

	"acreleaf/calc/sheet"
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
	name   string // slash path in the content folder
	source *message.Source
	faulty bool // its text could not be read or worked, so nothing can be said of what is in it
	failed bool // the program failed on it
	head
	place

	doc  *markdown.Document // nil while the page rests, as are
	work *worksheet.Page    // its worksheets

	parsed   *parsed // what was found in the text; nil before it is parsed
	defined  []*worksheet.Definition
	bound    *bound
	proofed  *proofed
	compared *comparison // with the page that it translates
	linked   *linked
	outline  *Outline
	set      *setPage // what the edition made of it
	said     said
}

// A head is what is above the text of a page.
type head struct {
	address  page.Address
	metadata page.Metadata
	start    int // where the Markdown starts in the source
}

// A place is where a page is among the others.
type place struct {
	rank           int // in the order of the season
	previous, next *draft
	original       *draft   // that it translates; nil for a page of its own
	translations   []*draft // of it
}

// A parsed is what stays of the text of a page.
type parsed struct {
	calculations []*markdown.Block // that it defines
	anchors      []string          // what a link can point at in it
	links        []*markdown.Link
}

// A bound is what stays of the binding of a page when its worksheets are gone.
type bound struct {
	language string         // that its numbers were read in
	sheets   []*sheet.Sheet // of its blocks, in order
	whole    bool           // each block found its calculation
	sourced  []string       // the sources that its figures cite, in order
	worked   int            // how many figures are tied to a worksheet
}

// A proofed is what stays of the proof of a page, for those that state the same.
type proofed struct{ quotes []proof.Quote }

// A comparison is of which two pages it was.
type comparison struct{ own, original *bound }

// said is what there is to say of a page, by what found it.
type said struct{ failing, reading, defining, binding, proofing, comparing, linking, anchoring message.List }

func (s *said) all() message.List {
	return slices.Concat(s.failing, s.reading, s.defining, s.binding, s.proofing, s.comparing, s.linking, s.anchoring)
}

// fault is something that is wrong in a page.
func (d *draft) fault(span message.Span, id, text, note string) message.Message {
	return message.Message{Level: message.Fault, ID: id, Source: d.source, Span: span, Text: text, Note: note}
}

// parse parses the text of a page, if it is not there parsed.
func (d *draft) parse() {
	if d.doc != nil {
		return
	}
	doc, messages := markdown.Parse(d.source, d.start)
	d.doc = doc
	if d.parsed != nil {
		return
	}
	d.parsed = &parsed{anchors: anchorsOf(doc), links: doc.Links, calculations: doc.Calculations}
	d.said.reading = append(d.said.reading, messages...)
}

// rest lets go of the document and the worksheets of a page. Those of all pages at once would be most of the memory
// that a press takes.
func (d *draft) rest() { d.doc, d.work = nil, nil }
