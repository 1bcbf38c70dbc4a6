package sheet

import (
	"errors"
	"math"
	"strings"

	"acreleaf/calc/unit"
	"acreleaf/calc/words"
)

// An Outcome is one use of a sheet with its values filled in and worked.
type Outcome struct {
	Use   *Use
	Cells []float64
	High  []float64 // the upper ends, when a number of the program is a range; nil: every number is a single one

	part int // the cell of a truth: the outcome is of the part of the ranges where it holds; 0: of all of them
}

// Where is the outcome for the part of the ranges in which the truth of a cell holds. A cell below 0 is of a truth that
// always does.
func (o Outcome) Where(cell int) Outcome {
	if o.part = 0; cell > 0 && o.Cells[cell] != o.high(cell) {
		o.part = cell
	}
	return o
}

// Said is a remark as it is spoken, with its values in it.
type Said struct {
	Signal Signal
	Text   string
	Hazard string // as Remark.Hazard
}

// A Refused error withholds the answers of a calculation, with the sentences that say why.
type Refused struct{ Sentences []string }

func (e *Refused) Error() string { return strings.Join(e.Sentences, " ") }

// Value is a given, step or answer in its own unit; of a range the lower end.
func (o Outcome) Value(name string) unit.Quantity {
	r := o.Range(name)
	return unit.Quantity{Value: r.Low, Unit: r.Unit}
}

// Range is a given, step or answer in its own unit, or in the unit of its second kind if it was written so. A single
// number has both ends the same.
func (o Outcome) Range(name string) unit.Range {
	u, _ := o.Use.Sheet.UnitOf(name)
	if g := o.Use.Sheet.FindGiven(name); g != nil {
		u = g.UnitFor(o.kind(name))
	}
	cell := o.Use.cells[name]
	ends := Interval{o.Cells[cell], o.high(cell)}
	if o.part > 0 && !ends.single() {
		ends = o.Use.program.Where(o.Cells, o.High, cell, o.part)
	}
	return unit.Range{Low: ends.Low, High: ends.High, Unit: u}
}

// Text is a given, step or answer as a reader sees it: "48 lb N/ac", "3 to 4 oz N/tree", "Apr 15, 2027".
func (o Outcome) Text(name string) string {
	if o.Use.Sheet.IsDate(name) {
		return o.Numbers(name)
	}
	return o.Range(name).Unit.Counted(o.Numbers(name))
}

// Numbers is Text without the unit. A given is written with the digits that it was typed with, and a figure that is
// taken from a table as it is there.
func (o Outcome) Numbers(name string) string { return o.RangeNumbers(name, o.Range(name)) }

// RangeNumbers is Numbers for a range that is known already.
func (o Outcome) RangeNumbers(name string, r unit.Range) string {
	write := r.Unit.Number
	switch {
	case o.Use.Sheet.IsDate(name):
		write = o.Use.DayText
	case o.Typed(name):
		write = func(v float64) string { return r.Unit.Operand(v, typedDigits, operandUsual, 0) }
	}
	return o.Use.RangeText(write(r.Low), write(r.High))
}

// say are the words that the use tells its numbers with.
func (o Outcome) say() *words.General { return o.Use.say }

// Typed says whether a name is that of a number that a person fills in, here or at the end of a link, or of a result
// that takes such a number or a figure of a table as it stands.
func (o Outcome) Typed(name string) bool { return o.Use.typed[name] }

// TypedElsewhere says whether a number is typed and has no field on this sheet: it is linked, or a result.
func (u *Use) TypedElsewhere(name string) bool {
	_, linked := u.Links[name]
	return u.typed[name] && (linked || u.Sheet.FindResult(name) != nil)
}

// kind says whether a given is of its second kind of quantity, and which form it is told in.
func (o Outcome) kind(given string) Entry {
	if linked, ok := o.Use.linked[given]; ok {
		if cell, follows := o.Use.kinds[given]; follows {
			linked.Other = o.high(cell) != 0
		}
		return linked
	}
	var e Entry
	if cell, ok := o.Use.others[given]; ok {
		e.Other = o.high(cell) != 0
	}
	if cell, ok := o.Use.forms[given]; ok {
		e.Form = int(o.high(cell))
	}
	return e
}

func (o Outcome) high(cell int) float64 {
	if o.High == nil {
		return o.Cells[cell]
	}
	return o.High[cell]
}

// holds says whether a truth is yes, for any of the numbers of a range.
func (o Outcome) holds(cell int) bool { return o.high(cell) != 0 }

// Stated says whether a given was filled in.
func (o Outcome) Stated(given string) bool {
	p, ok := o.Use.presence[given]
	return !ok || o.Cells[p] != 0
}

// Answers lists the answers that are there, in the order of the sheet.
func (o Outcome) Answers() []*Result {
	var there []*Result
	for _, r := range o.Use.Sheet.Answers() {
		if o.there(r) {
			there = append(there, r)
		}
	}
	return there
}

// There says whether a given, step or answer is there: false for a result that is left out.
func (o Outcome) There(name string) bool {
	r := o.Use.Sheet.FindResult(name)
	return r == nil || o.there(r)
}

func (o Outcome) there(r *Result) bool { return r.when == nil || o.holds(o.Use.there[r.Name]) }

// Err is a *Refused if a refusal of the sheet holds, and an error if an answer is not a finite number.
func (o Outcome) Err() error {
	if err := o.Refused(); err != nil {
		return err
	}
	for _, r := range o.Use.Sheet.Results {
		if err := o.Finite(r.Name); err != nil {
			return err
		}
	}
	return nil
}

// Refused is a *Refused if a refusal of the sheet holds for any of the numbers.
func (o Outcome) Refused() error {
	var sentences []string
	for i, r := range o.Use.Sheet.Remarks {
		if r.Signal == Refusal && o.said(i) {
			sentences = append(sentences, o.spoken(i, r))
		}
	}
	if sentences != nil {
		return &Refused{Sentences: sentences}
	}
	return nil
}

// Finite is an error if a given, step or answer is not a finite number.
func (o Outcome) Finite(name string) error {
	switch v := o.Range(name); {
	case math.IsInf(v.High-v.Low, 1):
		return errors.New(o.say().NoAnswer + " " + o.endless() + ".")
	case math.IsNaN(v.High - v.Low):
		return errors.New(words.Fill(o.say().NoValue, "name", o.Use.Sheet.named[name].called()))
	}
	return nil
}

// endless names the givens to narrow when a result has no end: those that were told as ranges.
func (o Outcome) endless() string {
	var names []string
	for _, g := range o.Use.Sheet.Givens {
		if r := o.Range(g.Name); o.Use.typed[g.Name] && r.Low != r.High {
			names = append(names, g.n.called())
		}
	}
	if len(names) == 0 {
		return o.say().Origin
	}
	if last := len(names) - 1; last > 0 {
		names = []string{strings.Join(names[:last], ", "), o.say().Or, names[last]}
	}
	return words.Fill(o.say().Endless, "names", strings.Join(names, " "))
}

// Said lists the remarks that hold, in the order of the sheet, without its refusals.
func (o Outcome) Said() []Said {
	var said []Said
	for i, r := range o.Use.Sheet.Remarks {
		if r.Signal != Refusal && o.said(i) {
			said = append(said, Said{r.Signal, o.spoken(i, r), r.Hazard})
		}
	}
	return said
}

// Tells says whether a remark that holds tells of a hazard, by its id.
func (o Outcome) Tells(hazard string) bool {
	for i, r := range o.Use.Sheet.Remarks {
		if r.Hazard == hazard && r.Signal != Refusal && o.said(i) {
			return true
		}
	}
	return false
}

// partly begins a remark that holds for some numbers of the ranges that were given, and not for others; or may hold.
func (o Outcome) partly(cell int, refusal bool) string {
	switch {
	case cell < 0 || o.Cells[cell] != 0:
		return ""
	case refusal:
		return o.say().NoAnswer + " "
	case o.high(cell) == Doubt:
		return o.say().Perhaps + " "
	}
	return o.say().Partly + " "
}

// spoken is the i-th remark as it is said: of the numbers for which it holds.
func (o Outcome) spoken(i int, r *Remark) string {
	cell := o.Use.remarks[i]
	return o.partly(cell, r.Signal == Refusal) + o.Where(cell).text(r)
}

func (o Outcome) said(remark int) bool {
	cell := o.Use.remarks[remark]
	return cell < 0 || o.holds(cell)
}

func (o Outcome) text(r *Remark) string {
	var b strings.Builder
	for _, p := range r.Pieces() {
		switch {
		case p.Name == "":
			b.WriteString(p.Text)
		case o.Use.Sheet.IsDate(p.Name):
			b.WriteString(o.Text(p.Name))
		case p.Bare:
			b.WriteString(o.Numbers(p.Name))
		case r.Words:
			b.WriteString(o.Range(p.Name).Unit.Spoken(o.Numbers(p.Name), o.Use.language))
		default:
			b.WriteString(o.Text(p.Name))
		}
	}
	return b.String()
}
