package render

import "html/template"

// A Worksheet is a worked example: what is given, the work, the answers.
type Worksheet struct {
	Index       int    // place in the module's list of sheets
	Number      int    // place among the worksheets of its page, from 1
	Name        string // the author's name for it, "soil"; its section's id is construct.Anchor(Name)
	Title       string
	Summary     string
	TitleLang   string // of the title, where it is not that of the page; so is SummaryLang of the summary
	SummaryLang string
	Givens      []Given
	Work        []Line
	Answers     []Answer    // the headline first
	Compared    *Comparison // answers that are compared; nil for none
	Words       []Note      // what the headline answer comes to, by case; empty for none
	Notes       []Note
	Constants   []Constant
	CodeHref    string // way to the page of the calculation; empty for none
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
	Lang     string // of the label and the choices, where it is not that of the page; so is HintLang of the hint
	HintLang string
	Kind     string
	Cell     int    // of its field
	Presence int    // the cell that says whether an optional given is filled in; -1 for none
	For      []int  // the cells of the choices that it belongs to
	Others   int    // the cell that says which of its kinds of quantity, or of its forms, it is told in; -1 for one alone
	Text     string // the example's number as the field shows it; empty when optional and left out
	Unit     string // its unit, when there is no choice of Units
	Units    []UnitOption
	Low      float64 // allowed range and the example's value, in the canonical unit
	High     float64
	Start    float64
	StartTop float64 // the high end of the example's value; the same as Start for a single number
	LowText  string  // the allowed range in the unit the field starts with
	HighText string
	Day      *Days  // of a day of the calendar; nil for a number
	Lab      bool   // a laboratory measures it, and may print "<5"
	Below    string // the number of a laboratory's "<5", as the field shows it; empty for none
	Choices  []Choice
	Taken    *Shown // the value taken from another worksheet
	From     *Link  // the worksheet it comes from
	FromLang string // of its title, where it is not that of the page
	Outside  int    // of a linked number: the cell that is not 0 while it is outside the range; 0 if it never is
	Optional bool
	Typical  string // "12 ppm NO3-N"; empty leaves the sentence out
}

// Days are the first and the last day that a field takes, as 2027-04-15.
type Days struct{ First, Last string }

// A UnitOption is a unit that a number can be typed in.
type UnitOption struct {
	Text     string
	Factor   string // "multiply/divide" from this unit to the canonical one
	Selected bool
	Form     int     // the form that it tells; 0 for none
	Second   *Limits // of a unit of the second kind of quantity: what is allowed in it; nil for the first kind
}

// Limits are the least and the most that is allowed.
type Limits struct{ Low, High float64 }

// A Choice is one of the values of a choice. Its place in the list, from 0, is what goes into the cell.
type Choice struct {
	Text     string
	Selected bool
}

// A Line is one step of the work, or one of the ways that it may be worked. It has no plain words: they would hold the
// example's numbers still while the reader's own ran beside them.
type Line struct {
	When    int             // the cell that is not 0 while this way is taken; -1 when there is no other
	Shown   bool            // whether it is read as the example
	Symbols template.HTML   // MathML
	Numbers []template.HTML // MathML with data-show on its numbers; of ranges, the line of the least and that of the most
	Bare    bool            // of Numbers only the result is shown
	Lang    string          // of its names, where it is not that of the page
}

// An Answer is one result.
type Answer struct {
	Label string
	Lang  string // of the label, where it is not that of the page
	Shown Shown
	There int    // the cell that is 0 while the answer is left out; -1 when it is always there
	Out   bool   // it is left out for the example
	Fact  string // the fact of a block that it is, on the page about one block; "" elsewhere
}

// A Comparison is answers that say the same of each of several things that are chosen.
type Comparison struct {
	Columns []Compared
	Rows    []ComparedRow
}

// A Compared thing is one of those that are chosen: "First material", with the option that is chosen now.
type Compared struct {
	Label string
	Lang  string // of the label and the option, where it is not that of the page
	Shown Shown
}

// A ComparedRow is one result of each of them, in the order of the columns.
type ComparedRow struct {
	Label   string
	Lang    string // of the label, where it is not that of the page
	Answers []Answer
}

// A Shown is a value of a worksheet with its unit around it: "$", "12.4", "/ac". The number follows a cell.
type Shown struct {
	Cell   int
	Before string
	Text   string // the number, or a range: "3 to 4"; Absent for none
	After  string // " lb N/ac"
	By     string // factor "multiply/divide" from the cell's unit to this one; empty for none
	Day    bool   // a day of the calendar, without a unit
	Typed  bool   // a number that a person fills in on another worksheet
	Also   *Shown // the same in a second unit, which a reader may ask to see first; nil for none
	Kind   *Kind  // of a given that takes two kinds of quantity; nil for others

	List     string // of a choice: the id of the list that it is chosen from
	Presence int    // the cell that is 0 while an optional given is left empty; 0 for what is always there
}

// Absent is in the place of a number that is not there, as the page's script writes it.
const Absent = "–"

// A Kind is how a given of two kinds of quantity reads while it is of the other kind than in the example.
type Kind struct {
	Cell   int  // not 0 while the given is of its second kind
	Second bool // it is of its second kind in the example
	Other  *Shown
}

// A Note is a sentence beside the answer: a remark, a caution, or the reason why there is no answer.
type Note struct {
	Signal  string // "", NOTICE, CAUTION, WARNING or DANGER
	Pieces  []Piece
	When    int // the cell that is not 0 while the note holds; -1 for always
	Shown   bool
	Partly  bool   // it does not hold for all of the example's ranges
	Perhaps bool   // of what holds partly: it may hold for some of them, and it may not
	Refusal bool   // the sheet has no answer while it holds
	Lang    string // of the text, where it is not that of the page; "" for the others
}

// A Constant says where a number of the work comes from.
type Constant struct {
	Label, Text string
	Note        string   // what it stands for, or where sources disagree; empty for none
	Origins     []Origin // what it is from, the main one first
	Kind        string   // the least sure kind among them, as in Source.Kind; empty leaves it out
	Lang        string   // of the label, where it is not that of the page; so is NoteLang of the note
	NoteLang    string
	TextLang    string // where the text is the name of a table
}

// An Origin is a source that a number is from.
type Origin struct {
	Text string // in a few words
	Lang string // of the text, where it is not that of the page
	Cite Cite   // the zero value when the page does not list it: a definition needs no page
}

// A Table is a reckoner: one answer over a grid of two givens.
type Table struct {
	Index, Sheet int
	Caption      string
	CaptionLang  string // where it is not the language of the page; so are RowLang and ColLang of the labels
	RowLang      string
	ColLang      string
	Day          bool // the answer is a day of the calendar
	Cents        bool // the answer is money
	RowLabel     string
	ColLabel     string
	Rows, Cols   []string
	Cells        [][]Cell
	MarkText     string // the marked range, "25 to 35 lb N/ac"; empty for none
	FollowText   string // title of the worksheet whose numbers the table follows; empty for none
	FollowLang   string // of that title, where it is not that of the page
	Constants    []Constant
}

// A Cell is one answer of a Table.
type Cell struct {
	Text         string
	Marked, Near bool
}

// A Worked figure is a number in the prose that is tied to a worksheet. It stays as its author wrote it.
type Worked struct {
	Href string // "#worksheet-soil"
	Text string
}

// A Following figure is a worked figure in a passage, where the words are chosen for the reader's numbers and the
// figures follow them.
type Following struct {
	Sheet int
	Href  string
	Shown Shown
}

// A Passage is a text that speaks for the reader's numbers, by cases.
type Passage struct {
	Index int // place in the module's list of sheets, as one that waits for the worksheets it depends on
	Cases []Case
}

// A Case is one text of a passage.
type Case struct {
	When    int  // the cell that is not 0 while it holds; -1 for always
	Shown   bool // it holds for the example
	Partly  bool // it does not hold for all of the example's ranges
	Perhaps bool // of what holds partly: it may hold for some of them, and it may not
}

// An Own is what the margin gives beside a worked figure once the numbers are the reader's: the same value by its name.
type Own struct {
	Sheet int
	Label string
	Lang  string // of the label, where it is not that of the page
	Shown Shown
}

// A Recorded figure is a number of the author's own records: a weight, a reading, a price.
type Recorded struct {
	Text string
	What string // "the scale ticket of block 3"
	Day  string // "2026-09-14"
}

// A Sourced figure is a number in the prose with the publication it was taken from, which is in the margin.
type Sourced struct {
	Text   string
	Cite   Cite
	Source string // in a few words: "Pelham and Ortega 2019"
	For    string // what it is the figure of: "per 1000 lb of kernels"; empty for none
	Kind   string // as in Source.Kind; empty leaves it out
}
