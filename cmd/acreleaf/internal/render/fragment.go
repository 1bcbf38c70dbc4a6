package render

import "html/template"

// A Worksheet is a worked example: what is given, the work, the answers.
type Worksheet struct {
	Index     int    // place in the module's list of sheets
	Number    int    // place among the worksheets of its page, from 1
	Name      string // the author's name for it, "soil"; its section's id is Anchor(Name)
	Title     string
	Summary   string
	Givens    []Given
	Work      []Line
	Answers   []Answer
	Notes     []Note
	Constants []Constant
	CodeHref  string // way to the page of the calculation, at its code; empty for none
}

// The kinds of Given.
const (
	KindNumber = "number"
	KindChoice = "choice"
	KindLinked = "linked" // taken from another worksheet's answer
)

// A Given is one line under Given: a field, a choice, or a number taken from another worksheet.
type Given struct {
	ID       string // id of its field, unique in the page: "soil-nitrate"
	Label    string
	Hint     string
	Kind     string
	Cell     int    // of its field; of the value shown when Kind is KindLinked
	Presence int    // the cell that says whether an optional given is filled in; -1 for none
	Text     string // the example's number as the field shows it; empty when optional and left out
	Unit     string // its unit, when there is no choice of Units
	Units    []UnitOption
	Low      float64 // allowed range and the example's value, in the canonical unit
	High     float64
	Start    float64
	LowText  string // the range in the unit the field starts with
	HighText string
	Upper    *Bound // the high end of a range; nil for a single number
	Choices  []Choice
	From     *Link // the worksheet a linked number comes from
	Outside  int   // of a linked number: the cell that is not 0 while it is outside the range
	Optional bool
	Integer  bool
	Typical  string // "12 ppm NO3-N"; empty leaves the sentence out
}

// A Bound is the field for the high end of a range.
type Bound struct {
	ID    string
	Cell  int
	Text  string
	Start float64 // in the canonical unit
}

// A UnitOption is a unit that a number can be typed in.
type UnitOption struct {
	Text     string
	Factor   string // "multiply/divide" from this unit to the canonical one
	Selected bool
}

// A Choice is one of the values of a choice.
type Choice struct {
	Text     string
	Value    int
	Selected bool
}

// A Line is one step of the work, or one of the ways that it may be worked. It has no plain words: they would hold the
// example's numbers still while the reader's own ran beside them.
type Line struct {
	When    int           // the cell that is not 0 while this way is taken; -1 when there is no other
	Shown   bool          // whether it is taken for the example
	Symbols template.HTML // MathML
	Numbers template.HTML // MathML with data-show on its numbers
}

// An Answer is one result.
type Answer struct {
	Label       string
	Text, Unit  string
	Cell, Sheet int
	Upper       *Shown // the high end of a range; nil for a single number
	Also        []Conversion
}

// A Shown is a number tied to a cell.
type Shown struct {
	Text string
	Cell int
}

// A Conversion is an answer in another unit.
type Conversion struct {
	Text, Unit string
	By         string // factor "num/den" from the answer's unit
	Upper      string // the high end of a range, as text; empty for a single number
}

// A Note is a sentence beside the answer: a remark, a caution, or the reason why there is no answer.
type Note struct {
	Signal  string // "", NOTICE, CAUTION, WARNING or DANGER
	Pieces  []Piece
	When    int // the cell that is not 0 while the note holds; -1 for always
	Shown   bool
	Refusal bool // the sheet has no answer while it holds
}

// A Constant says where a number of the work comes from.
type Constant struct {
	Label, Text        string
	Source, SourceHref string
	Note               string // what it stands for, or where sources disagree; empty for none
	Sureness           string // a kind of source, as in Source.Kind
}

// A Table is a reckoner: one answer over a grid of two givens.
type Table struct {
	Index, Sheet int
	Caption      string
	RowLabel     string
	ColLabel     string
	Rows, Cols   []string
	Cells        [][]Cell
	MarkText     string // the marked range, "25 to 35 lb N/ac"; empty for none
	FollowText   string // title of the worksheet whose numbers the table follows; empty for none
}

// A Cell is one answer of a Table.
type Cell struct {
	Text         string
	Marked, Near bool
}

// A Worked figure is a number in the prose that follows a worksheet.
type Worked struct {
	Sheet  int
	Href   string // "#worksheet-soil"
	Pieces []Piece
}

// A Sourced figure is a number in the prose with the publication it was taken from, which stands in the margin.
type Sourced struct {
	Text   string
	Href   string // way to the entry of the bibliography
	Source string // "Pelham and Ortega 2019"
	Detail string // the author's remark: "per 1000 lb of kernels"; empty for none
	Kind   string // as in Source.Kind; empty leaves it out
}
