package practice

import (
	"acreleaf/calc/sheet"
)

// Told says whether the unit of an answer is one that it may be given in.
type Told uint8

// What may be told with a number.
const (
	NoUnit    Told = iota // a number alone, where a unit is asked for
	FitUnit               // a unit that fits, or none where none is asked for
	OtherUnit             // a unit that is not that of the answer
)

// Verdict is what an answer is marked as.
type Verdict uint8

// The verdicts, in the order in which they are asked: the first that holds is the one.
const (
	Right       Verdict = iota
	UnitMissing         // the right number, without its unit
	UnitWrong           // the right number, with another unit
	Carried             // right for an earlier answer, which was not
	Slipped             // what one of the known wrong ways gives, or several
	Shifted             // the right digits, with the decimal point elsewhere
	Rounded             // right but for rounding
	Unknown             // none of these
)

// A slipAsked is a slip of a part, in the use that works the answer and then in its twin.
type slipAsked struct {
	slip *sheet.Slip
	uses []*sheet.Use
}

// ask says which values of the graph an answer to the part is compared with.
func (p *Part) ask() {
	for _, u := range p.use.all() {
		u.Marks = append(u.Marks, p.Result)
	}
	for _, slip := range p.use.Sheet.Slips {
		if slip.Answer == p.Result {
			p.slips = append(p.slips, slipAsked{slip, p.use.all()})
		}
	}
}
