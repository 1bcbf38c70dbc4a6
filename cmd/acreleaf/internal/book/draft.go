package book

import (
	"slices"

	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/memo"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// A draft is a page on its way through the press. A press takes over the drafts of the one before it whose text is the
// same. What is found of a page stays with what it was found from; the document and the worksheets do not stay longer
// than the page is worked.
type draft struct {
	name   string // slash path in the content folder
	source *message.Source
	faulty bool         // its text could not be read or worked, so nothing can be said of what is in it
	failed message.List // the program failed on it
	head
	place

	resting uint64 // the hash of its text, while that is let go; see textRoom

	doc  *markdown.Document // nil while the page rests, as are
	work *worksheet.Page    // its worksheets

	read    message.List // what is wrong above the text, and in it
	parsed  *parsed      // what was found in the text; nil before it is parsed
	defined defined
	results
	set *setPage // what the edition made of it
}

// A results is what was worked of a page, each with what it was worked from.
type results struct {
	bound    memo.Result[boundFrom, bound]
	proofed  memo.Result[proofedFrom, proofed]
	compared memo.Result[comparedFrom, message.List] // with the page that it translates
	linked   memo.Result[*tree, linked]
	anchored memo.Result[anchoredFrom, message.List]
	outline  memo.Result[outlineFrom, Outline]
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
	number, of     int      // of a lesson in its course, and how many there are
	course         *draft   // of a lesson; nil where nobody wrote its page
	original       *draft   // that it translates; nil for a page of its own
	translations   []*draft // of it
}

// A parsed is what stays of the text of a page.
type parsed struct {
	calculations []*markdown.Block // that it defines
	anchors      []string          // what a link can point at in it
	links        []*markdown.Link
}

// A defined is the calculations that a page defines.
type defined struct {
	list []*worksheet.Definition
	said message.List
}

// own is what there is to say of a page, but for the parts of other pages that its links lead to.
func (d *draft) own() message.List {
	if d.failed != nil {
		return d.failed
	}
	all := slices.Concat(d.read, d.defined.said)
	if b := d.bound.Kept(); b != nil {
		all = append(all, b.said...)
	}
	if p := d.proofed.Kept(); p != nil {
		all = append(all, p.said...)
	}
	if c := d.compared.Kept(); c != nil {
		all = append(all, *c...)
	}
	if l := d.linked.Kept(); l != nil {
		all = append(all, l.said...)
	}
	return all
}

// said is all that there is to say of a page.
func (d *draft) said() message.List {
	all := d.own()
	if a := d.anchored.Kept(); a != nil && d.failed == nil {
		all = append(all, *a...)
	}
	return all
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
	d.read = append(d.read, messages...)
}

// rest lets go of the document and the worksheets of a page. Those of all pages at once would be most of the memory
// that a press takes.
func (d *draft) rest() { d.doc, d.work = nil, nil }
