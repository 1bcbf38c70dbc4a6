package markdown

import (
	"bytes"

	"github.com/yuin/goldmark/ast"

	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/message"
)

// Document is a page's Markdown, read once. But for Rest nothing changes it after Parse, so that several goroutines may
// print it.
type Document struct {
	Source       *message.Source
	Blocks       []*Block       // all blocks but calculations and passages, in the order of the source
	Calculations []*Block       // the calculations that the page defines, in the order of the source
	Passages     []*Passage     // in the order of the source
	Figures      []*Figure      // in the order of the source
	Links        []*Link        // every other link and image, in the order of the source
	Headings     []*Heading     // in the order of the source
	Leader       []message.Span // where leader's notes are, from fence to fence

	root    ast.Node // nil when the document is at rest
	body    int      // offset in Source.Text of the Markdown
	text    []byte   // Source.Text from there; goldmark's offsets count in it
	anchors []anchor // Figures and Links together, by the offset in text that their nodes have
}

// Block is a fenced block of ours. A passage has its opening line alone here, and the rest in a Passage.
type Block struct {
	Index     int // in its list of the document
	Construct construct.Kind
	Name      string // "" for one without a name
	NameSpan  message.Span
	Span      message.Span // the line that opens the block, from its fence
	Entries   []Entry      // of a block that is lines of keys and texts
	Body      message.Span // of a calculation: the text between its fences; zero when it cannot be read
	Unread    bool         // a line could not be read, so what is missing may be there
}

// Entry is one line "key: value" of a block; one in a table has the key of that before its own, with a point between
// ("report.ph"). KeySpan is what is written on its line. Value is the text as written ("12 ppm NO3-N", "70 %"), of a
// quoted value its content; ValueSpan is that text, without quotes.
type Entry struct {
	Key, Value         string
	KeySpan, ValueSpan message.Span
}

// Part is the place of a part of the value: all of it where a value over several lines, or one with escapes, is not
// written as it reads.
func (e Entry) Part(start, end int) message.Span {
	if e.ValueSpan.End-e.ValueSpan.Start != len(e.Value) {
		return e.ValueSpan
	}
	end = min(end, len(e.Value))
	return message.Span{Start: e.ValueSpan.Start + min(start, end), End: e.ValueSpan.Start + end}
}

// Figure is a link whose scheme is one of ours: [48 lb/ac](worked:soil.nitrogen "title").
type Figure struct {
	Index                      int
	Scheme                     construct.Scheme
	Target                     string   // what follows the colon: "soil.nitrogen", "cdfa-almond", "2026-09-14", ""
	Text, Title                string   // plain text
	Faulty                     bool     // it was reported already
	Passage                    *Passage // that it is in, where it follows the reader's numbers; nil for none
	Case                       int      // of that passage
	TextSpan, TargetSpan, Span message.Span
}

// Link is any other link, image or <address>.
type Link struct {
	Index                 int
	Image                 bool
	Destination, Text     string // plain text: escapes and references are resolved
	Span, DestinationSpan message.Span
}

// Heading is a heading of the text, with the id that other pages may link to.
type Heading struct {
	Level    int
	Text, ID string
	Span     message.Span

	node     *ast.Heading
	explicit message.Span // where the author wrote the id; empty when it was made from the text
}

// Fragments writes what only the packages above know: the HTML of blocks and figures, and the address of a link.
// Link gives the href or src to print, not escaped, and Size the dots of a picture, 0 where they are not known: a
// browser keeps room for a picture whose size it knows, and may load it later. Notes writes
// what belongs beside the text since it was last called, such as the sources of its figures; it is called at the end of
// each paragraph, so that no note breaks a sentence.
//
// Passage writes a passage; text writes what its i-th case says.
type Fragments interface {
	Block(w *bytes.Buffer, b *Block)
	Passage(w *bytes.Buffer, p *Passage, text func(i int))
	Figure(w *bytes.Buffer, f *Figure)
	Link(l *Link) string
	Size(l *Link) (width, height int)
	Notes(w *bytes.Buffer)
}

// Words are the words of the interface that stand inside a page's text, in the page's language.
type Words struct {
	Danger, Warning, Caution, Notice string // signal words, in capitals: "CAUTION"
	SelfLink                         string // name of a heading's link to itself: "Link to this part"
	Table                            string // names the scroll box of a table: "Table"
	Code                             string // names the scroll box of a listing: "Code"
	Example                          string // names an example, before its number: "Example"
	Written, Made                    string // name its two parts: "You write", "The page shows"
	Notes                            string // names the list of footnotes: "Notes"
	Note                             string // names one footnote, before its number: "Note"
	BackToText                       string // names the link from a footnote back: "Back to the text"
}
