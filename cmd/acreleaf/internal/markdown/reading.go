package markdown

import (
	"cmp"
	"slices"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"acreleaf/cmd/acreleaf/internal/message"
)

// reading is what is gathered while one page is read. The parsers find it in goldmark's context, so that no second
// walk over the tree is needed.
type reading struct {
	source   *message.Source
	body     int   // offset in source.Text of the Markdown
	dropped  []int // where carriage returns were dropped from the text that goldmark reads; see unixEnds
	doc      *Document
	messages message.List

	fences     []*fence
	quotes     []*quote
	footnotes  []footnote
	containers []*containerNode
	fenceCut   bool     // a fence in an example was as long as the example's own
	unclosed   ast.Node // the last paragraph with a comment that has no end

	counts counts
	limits map[string]bool // those that were passed and named
}

var readingKey = parser.NewContextKey()

// readingOf gives the reading of a context. There is always one: without it a parser of ours would be useless.
func readingOf(pc parser.Context) *reading {
	return pc.Get(readingKey).(*reading)
}

func newReading(src *message.Source, body int) *reading {
	text, dropped := unixEnds(src.Text[body:])
	return &reading{source: src, body: body, dropped: dropped, doc: &Document{Source: src, body: body, text: text}}
}

func (r *reading) parse(p parser.Parser) {
	context := parser.NewContext(parser.WithIDs(noIDs{}))
	context.Set(readingKey, r)
	r.doc.root = p.Parse(text.NewReader(r.doc.text), parser.WithContext(context))
	r.finish()
}

// offset turns one of goldmark's offsets into one of the source.
func (r *reading) offset(at int) int { return r.body + beforeDropping(at, r.dropped) }

// span turns goldmark's offsets into offsets of the source.
func (r *reading) span(start, end int) message.Span {
	return message.Span{Start: r.offset(start), End: r.offset(end)}
}

// cut gives the text of a span.
func (r *reading) cut(at message.Span) string { return string(r.source.Text[at.Start:at.End]) }

func (r *reading) fault(id string, at message.Span, text, note string) {
	r.messages = append(r.messages, message.Message{ID: id, Source: r.source, Span: at, Text: text, Note: note})
}

func (r *reading) advise(id string, at message.Span, text, note string) {
	r.messages = append(r.messages,
		message.Message{Level: message.Advice, ID: id, Source: r.source, Span: at, Text: text, Note: note})
}

// finish does what needs the whole page: it puts the finds in the order of the source and names headings.
func (r *reading) finish() {
	r.finishFences()
	r.finishQuotes()
	r.finishContainers()
	r.finishAnchors()
	r.finishFootnotes()
	r.finishHeadings()
}

func byPosition[T any](list []T, position func(T) int) {
	slices.SortStableFunc(list, func(a, b T) int { return cmp.Compare(position(a), position(b)) })
}

// offsetIn gives the place of part in whole when part is a slice of it. goldmark hands out many texts as slices of
// the page, so their place is known without a search.
func offsetIn(whole, part []byte) (int, bool) {
	offset := cap(whole) - cap(part)
	if len(part) == 0 || offset < 0 || offset >= len(whole) || &whole[offset] != &part[0] {
		return 0, false
	}
	return offset, true
}

// noIDs is where goldmark would make ids of headings; finishHeadings does that.
type noIDs struct{}

func (noIDs) Generate([]byte, ast.NodeKind) []byte { return nil }
func (noIDs) Put([]byte)                           {}
