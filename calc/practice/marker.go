package practice

import (
	"math"
	"slices"
	"strconv"

	"acreleaf/calc/sheet"
)

// The marker compares an answer with one value. It is a program of its own, which is run again for each value that an
// answer may be: what is right, what is right for an earlier answer, and what each slip gives. A page has it once, for
// all of its exercises.

// The cells of the marker's program that are filled in before a run.
const (
	markAnswer = iota // in the unit that is asked for, or as it stands where no unit fits
	markBare          // as it is written, without its unit
	markTold          // one of the Told
	markValue         // what it is compared with
	markShare         // half a unit in the last digit, of a number that begins at 1; 0: it must be the same
	markInputs
)

// The results of the marker, in the cell after its inputs. The first that holds counts.
const (
	saysRight       = iota // the value, in a unit that fits
	saysUnitMissing        // the value, without a unit
	saysUnitWrong          // the value, with another unit
	saysShifted            // the digits of the value, with the decimal point elsewhere
	saysRounded            // the value but for rounding
	saysNothing
)

// nearly is how far from the right answer one may be that was rounded on the way: rounding each of two factors to two
// digits loses up to 2 percent when they begin with 2 or more.
const nearly = 0.02

// mostShift is how many places the decimal point of an answer may be away from where it belongs.
const mostShift = 3

// The powers of ten that an answer may begin at. A smaller or a larger one is taken as if it began there.
const lowestPower, highestPower = -3, 9

// Marker is the program that compares an answer with a value. Its input cells come first, then the one for what it
// says.
func Marker() *sheet.Program { return marker }

var marker = buildMarker()

func buildMarker() *sheet.Program {
	any := sheet.Field{Label: "number", Typical: 1, Low: -mostAnswer, High: mostAnswer}
	names := [markInputs]string{"answer", "bare", "told", "value", "share"}
	s, err := sheet.Build("marker", func(s *sheet.Sheet) {
		s.Head("Marker", "An answer beside a value.")
		answer := s.Given(names[markAnswer], "", any)
		for _, name := range names[markBare:] {
			s.Given(name, "", any)
		}
		s.Answer("given", "", answer, sheet.Says{Label: "number"})
	})
	if err != nil {
		panic(err)
	}
	g := &sheet.Graph{}
	use := g.Add("marker", s, nil)
	use.Quiet = true
	m := marking{sheet.NewPassage()}
	var in [markInputs]sheet.Term
	for i, name := range names {
		in[i], _ = m.Value(use, name)
	}
	m.Keep(m.says(in))
	g.Passages = []*sheet.Passage{m.Passage}
	if err := g.Close(); err != nil {
		panic(err)
	}
	return g.Program
}

// A marking makes the terms of the marker.
type marking struct{ *sheet.Passage }

// says is the first of what is asked of an answer and a value that holds.
func (m marking) says(in [markInputs]sheet.Term) sheet.Term {
	x, bare, told, v, share := in[markAnswer], in[markBare], in[markTold], in[markValue], in[markShare]
	is := func(t Told) sheet.Term { return told.Same(m.number(float64(t))) }
	powers := m.powers()
	half := beginning(v, powers).Times(share)
	near := func(x sheet.Term) sheet.Term { return x.Minus(v).Size().AtMost(half) }
	number := m.number(0).Less(share)
	rounded := number.And(x.Minus(v).Size().AtMost(v.Size().Times(m.number(nearly))))
	var shifted sheet.Term
	for power := 1; power <= mostShift; power++ {
		one := near(x.Times(powers[power])).Or(near(x.Over(powers[power])))
		if power > 1 {
			one = shifted.Or(one)
		}
		shifted = one
	}
	said := m.number(saysNothing)
	for what, holds := range slices.Backward([]sheet.Term{
		saysRight:       is(FitUnit).And(near(x)),
		saysUnitMissing: is(NoUnit).And(near(x)),
		saysUnitWrong:   is(NoUnit).Not().And(near(bare)).Or(is(OtherUnit).And(rounded)),
		saysShifted:     number.And(shifted).And(v.Same(m.number(0)).Not()),
		saysRounded:     rounded,
	}) {
		said = sheet.If(holds, m.number(float64(what)), said)
	}
	return said
}

func (m marking) number(v float64) sheet.Term { return m.Sheet.Number(v) }

// powers are the powers of ten, each made from the one before: that is exact, and shorter than so many numbers.
func (m marking) powers() map[int]sheet.Term {
	list := map[int]sheet.Term{lowestPower: m.number(tenTo(lowestPower))}
	for power := lowestPower + 1; power <= highestPower; power++ {
		list[power] = list[power-1].Times(m.number(10))
	}
	return list
}

// beginning is the power of ten that a number begins at.
func beginning(v sheet.Term, powers map[int]sheet.Term) sheet.Term {
	ten := powers[lowestPower]
	for power := lowestPower + 1; power <= highestPower; power++ {
		ten = sheet.If(v.Size().AtLeast(powers[power]), powers[power], ten)
	}
	return ten
}

// tenTo is a power of ten as exactly as there is one; math.Pow10 has a table of the same.
func tenTo(power int) float64 { return math.Pow10(power) }

// shareOf is half a unit in the last of so many digits of a number that begins at 1, and a hair more, since neither is
// a decimal number in the machine.
func shareOf(digits int) float64 {
	if digits == 0 {
		return 0
	}
	share, _ := strconv.ParseFloat("5.00000001e-"+strconv.Itoa(digits), 64)
	return share
}

// within says whether an answer agrees with a value to so many digits. The marker decides it.
func within(x, v float64, digits int) bool {
	return compare(Heard{Answer: x, Told: FitUnit}, v, shareOf(digits)) == saysRight
}

// compare runs the marker on an answer and a value.
func compare(h Heard, value, share float64) int {
	cells := make([]float64, marker.Cells)
	copy(cells, []float64{markAnswer: h.Answer, markBare: h.Bare, markTold: float64(h.Told),
		markValue: value, markShare: share})
	marker.Run(cells)
	return int(cells[markInputs])
}
