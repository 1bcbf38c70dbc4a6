package formula

import (
	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
)

// A Span is a range of byte offsets in the author's text, End not included.
type Span struct{ Start, End int }

// A Text is a piece of what the author wrote, with its place. If it is there letter for letter, faults in it are
// placed to the letter; if not (a text in quotes, over several lines), at the whole of it.
type Text struct {
	Text string
	Span Span
}

// part is the place of a piece of the text.
func (t Text) part(start, end int) Span {
	if t.Span.End-t.Span.Start != len(t.Text) {
		return t.Span
	}
	return Span{t.Span.Start + start, t.Span.Start + min(max(end, start), len(t.Text))}
}

// A Definition is a calculation as its author wrote it.
type Definition struct {
	Name           Text
	Title, Summary string
	Language       string // of its texts: "es"; "" for English
	Givens         []Given
	Constants      []Constant
	Steps, Answers []Result // labels and units of the names that the work gives
	Work           []Text   // "potash = rate / analysis"
	Sentence       Text     // what the first answer comes to; "" for none
	Cases          []Check  // said in place of it when a question is answered yes: the first that is
	Notes          []Text   // said always
	Checks         []Check  // said when a question is answered yes
}

// A Given is a quantity that the reader fills in.
type Given struct {
	Name        Text
	Label, Hint string
	Example     Text   // "200 lb K2O/ac"; its unit is that of the given
	Range       Text   // "0 to 600", with or without a unit
	Units       []Text // other units to offer
}

// A Constant is a figure that the calculation takes as known.
type Constant struct {
	Name                Text
	Value               Text   // "8.34 lb water/gal"
	Label, Source, Note string // the source by its id
}

// A Result says how a step or an answer is shown. An empty unit of a step is the one that the work gives.
type Result struct {
	Name       Text
	Label      string
	Unit, Also Text
}

// PlainNumber is how the unit of a plain number is written, since an empty unit reads as a forgotten one.
const PlainNumber = "number"

// A Check is a remark with a question.
type Check struct {
	When   Text
	Signal sheet.Signal
	Say    Text
	Hazard *fact.Hazard // that it tells of, with the hazard's signal word; nil for none
}

// A Fault is one thing that is wrong with a definition.
type Fault struct {
	ID   string // short and fixed, words joined by hyphens
	Span Span
	Text string // what is wrong, without a full stop
	Note string // what to write
}
