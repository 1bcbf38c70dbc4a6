package practice

import (
	"math"
	"strconv"

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

// nearly is how far from the right answer one may be that was rounded on the way: rounding each of two factors to two
// digits loses up to 2 percent when they begin with 2 or more.
const nearly = 0.02

// shifts are the factors between a number and one whose decimal point is elsewhere.
var shifts = []float64{10, 100, 1000}

// ask puts the questions of a part to the graph: what its answer is marked as, and for each slip whether it is said.
func (p *Part) ask(g *sheet.Graph) {
	p.slips = nil
	for _, slip := range p.use.Sheet.Slips {
		if slip.Answer == p.Result {
			p.slips = append(p.slips, slipAsked{slip: slip, asked: p.askSlip(slip)})
		}
	}
	m := p.marker(sheet.NewPassage())
	for _, question := range m.questions() {
		m.Case(question)
	}
	p.asked = m.Passage
	g.Passages = append(g.Passages, m.Passage)
	for _, s := range p.slips {
		g.Passages = append(g.Passages, s.asked)
	}
}

// askSlip asks whether a slip is said: an answer that is marked as something else may be what it gives, too, and one
// that it gives twice over is told once.
func (p *Part) askSlip(slip *sheet.Slip) *sheet.Passage {
	m := p.marker(sheet.NewPassage())
	questions := m.questions()
	before := m.never()
	for _, question := range questions[:Slipped] {
		before = before.Or(question)
	}
	m.Case(before)
	for _, u := range p.use.all() {
		m.Case(m.gives(u, slip))
	}
	return m.Passage
}

// questions are what is asked of an answer, by the verdict that a yes gives.
func (m marker) questions() []sheet.Term {
	p := m.part
	x, bare, told := m.heard(heardAnswer), m.heard(heardBare), m.heard(heardTold)
	v := m.value(p.use.at)
	is := func(t Told) sheet.Term { return told.Same(m.number(float64(t))) }
	half := m.half(v)
	good, bareGood := m.near(x, v, half), m.near(bare, v, half)
	carried := m.never()
	if p.use.twin != nil {
		again := m.value(p.use.twin)
		carried = m.near(x, again, m.half(again))
	}
	slipped := m.never()
	for _, s := range p.slips {
		for _, u := range p.use.all() {
			slipped = slipped.Or(m.gives(u, s.slip))
		}
	}
	shifted := m.never()
	for _, by := range shifts {
		shifted = shifted.Or(m.near(x.Times(m.number(by)), v, half)).Or(m.near(x.Over(m.number(by)), v, half))
	}
	nearby := x.Minus(v).Size().AtMost(v.Size().Times(m.number(nearly)))
	return []sheet.Term{
		Right:       is(FitUnit).And(good),
		UnitMissing: is(NoUnit).And(good),
		UnitWrong:   is(NoUnit).Not().And(bareGood).Or(is(OtherUnit).And(nearby)),
		Carried:     carried,
		Slipped:     slipped,
		Shifted:     shifted.And(v.Same(m.number(0)).Not()),
		Rounded:     nearby,
	}
}

// A marker makes the terms that compare the answer to a part.
type marker struct {
	*sheet.Passage
	part *Part
}

func (p *Part) marker(asked *sheet.Passage) marker { return marker{asked, p} }

// never is the question that is answered no.
func (m marker) never() sheet.Term { return m.number(0).Same(m.number(1)) }

func (m marker) number(v float64) sheet.Term { return m.Sheet.Number(v) }

// plain is a term without its unit, so that it can be compared with any other number.
func (m marker) plain(t sheet.Term) sheet.Term { return t.Over(m.Quantity(1, t)) }

// heard is what was put in for the part.
func (m marker) heard(name string) sheet.Term {
	t, _ := m.Value(m.part.heard, name)
	return m.plain(t)
}

// value is what a use works out for the part.
func (m marker) value(u *sheet.Use) sheet.Term {
	t, _ := m.Value(u, m.part.Result)
	return m.plain(t)
}

// near asks whether an answer is a value, give or take half a unit in its last digit.
func (m marker) near(x, v, half sheet.Term) sheet.Term { return x.Minus(v).Size().AtMost(half) }

// gives asks whether a slip that can be made gives the answer. The half is that of the answer, one for all slips, since
// each takes room in the page.
func (m marker) gives(u *sheet.Use, slip *sheet.Slip) sheet.Term {
	x := m.heard(heardAnswer)
	value, open := m.Slip(u, slip)
	is := m.near(x, m.plain(value), m.half(x))
	if open != nil {
		is = open.And(is)
	}
	return is
}

// The powers of ten that an answer may begin at. A smaller or a larger one is taken as if it began there.
const lowestPower, highestPower = -3, 9

// half is half a unit in the last digit that is asked for, and a hair more, since neither is a decimal number in the
// machine.
func (m marker) half(v sheet.Term) sheet.Term {
	size := v.Size()
	half := m.number(halfAt(lowestPower, m.part.Digits))
	for power := lowestPower + 1; power <= highestPower; power++ {
		half = sheet.If(size.AtLeast(m.number(tenTo(power))), m.number(halfAt(power, m.part.Digits)), half)
	}
	return half
}

// halfAt is half a unit in the last of so many digits of a number that begins at a power of ten.
func halfAt(power, digits int) float64 {
	half, _ := strconv.ParseFloat("5.00000001e"+strconv.Itoa(power-digits), 64)
	return half
}

// tenTo is a power of ten as exactly as there is one; math.Pow10 has a table of the same.
func tenTo(power int) float64 { return math.Pow10(power) }
