package sheet

import (
	"math"
	"strings"

	"acreleaf/calc/unit"
)

// How many significant digits a number of the work may have and still be printed whole: a given, that a person typed; a
// step or answer, that came out even; a constant. The usual digits of a constant are more than those of an answer.
const (
	typedDigits    = 9
	evenDigits     = 5
	constantUsual  = 6
	operandUsual   = 3
	mostDigitsMore = 14 // of the operands, beyond the usual
	mostResultMore = 3  // of the result, likewise
)

// A sum is a formula worked in numbers, at one end of each range. Its digits are chosen so that whoever keys in the
// numbers that are printed gets the result that is printed.
type sum struct {
	o Outcome
	r *Result
	*way
	upper map[string]bool // the ranges that are at their upper end
	end   float64         // the result
	more  int             // digits of the operands beyond the usual
	finer int             // digits of the result beyond the usual
	whole bool            // while it is worked with all digits, printed or not

	probe map[string]float64 // in place of the values: see hidden
	plain bool               // while no conversion is worked that goes without saying
}

// sums gives the workings of a formula to print: one, or for ranges the one that gives the least and the one that gives
// the most. There is none where a range of the result is not worked from ends of ranges: then the names say how it is
// worked, and no number is printed that does not lead to it.
func (o Outcome) sums(r *Result, w *way, taken bool) []*sum {
	result := o.Range(r.Name)
	first := &sum{o: o, r: r, way: w, end: result.Low}
	ranged := o.ranged(w.body)
	switch {
	case !taken || w.body.plainly():
		return []*sum{first}
	case len(ranged) == 0:
		first.settle()
		return []*sum{first}
	case len(ranged) > mostRanged || first.resultText(result.Low) == first.resultText(result.High):
		return nil
	}
	least, most := first.at(ranged, result.Low), first.at(ranged, result.High)
	if least == nil || most == nil {
		return nil
	}
	return []*sum{least, most}
}

// mostRanged is how many ranges of one formula are tried at all of their ends.
const mostRanged = 4

// ranged lists the givens and results in a formula that are ranges, each once, in its order.
func (o Outcome) ranged(n *node) (names []string) {
	seen := map[string]bool{}
	var look func(*node)
	look = func(n *node) {
		if name, is := n.leaf(); is {
			if r := o.Range(name); r.Low != r.High && !seen[name] {
				seen[name] = true
				names = append(names, name)
			}
			return
		}
		for _, arg := range n.args {
			look(arg)
		}
	}
	look(n)
	return names
}

// leaf is the name of a node that is in a formula by its name.
func (n *node) leaf() (string, bool) {
	switch n.kind {
	case kindGiven, kindNamed:
		return n.name, true
	case kindRecast:
		return n.args[0].name, true
	}
	return "", false
}

// at is the same formula with each range at the end that gives a result, its digits chosen; nil when no ends give it.
func (s *sum) at(ranged []string, result float64) *sum {
	var best *sum
	gap := math.Inf(1)
	for ends := range 1 << len(ranged) {
		try := &sum{o: s.o, r: s.r, way: s.way, end: result, upper: map[string]bool{}}
		for i, name := range ranged {
			try.upper[name] = ends>>i&1 == 1
		}
		if off := math.Abs(try.worked(true) - result); off < gap {
			best, gap = try, off
		}
	}
	if best == nil || s.resultText(best.worked(true)) != s.resultText(result) {
		return nil
	}
	best.settle()
	return best
}

// settle takes the fewest digits with which the sum comes out. The result has its usual ones, unless the sum comes to
// the middle between two results: people round that one way, and the last bit of a number another.
func (s *sum) settle() {
	const tie = 1e-12 // how near to the middle a sum may not come
	for s.finer = 0; s.finer <= mostResultMore; s.finer++ {
		want := s.resultText(s.end)
		for s.more = 0; s.more <= mostDigitsMore; s.more++ {
			got := s.worked(false)
			if s.resultText(got*(1+tie)) == want && s.resultText(got*(1-tie)) == want {
				return
			}
		}
	}
	s.more, s.finer = 0, 0
}

// resultText is a value of the result as it is printed.
func (s *sum) resultText(v float64) string {
	switch {
	case s.r.Date && !math.IsNaN(v):
		return s.o.Use.DayText(math.Round(v))
	case s.body.plainly():
		name, _ := s.body.leaf()
		return s.r.Unit.Operand(v, s.mostDigits(name), operandUsual, 0)
	}
	return s.r.Unit.Operand(v, 0, operandUsual, s.finer)
}

// ranged says whether the result is there as a range: one that is a given or another result as it stands.
func (s *sum) ranged() bool {
	r := s.o.Range(s.r.Name)
	return s.body.plainly() && r.Low != r.High
}

// rangeText is the result with its unit, or both of its ends.
func (s *sum) rangeText() string {
	return s.label(s.o.numbersOf(s.r, s.resultText))
}

// label puts the unit to the text of the result; a day has none.
func (s *sum) label(text string) string {
	if s.r.Date {
		return text
	}
	return s.r.Unit.Label(text)
}

// numbersOf writes the ends of a result, once where a reader sees them alike.
func (o Outcome) numbersOf(r *Result, write func(float64) string) string {
	ends := o.Range(r.Name)
	return o.Use.RangeText(write(ends.Low), write(ends.High))
}

// value is a given, step or answer at the end of its range.
func (s *sum) value(name string) float64 {
	if s.probe != nil {
		if s.probe[name] == 0 {
			s.probe[name] = 1 + float64(len(s.probe))/8
		}
		return s.probe[name]
	}
	cell := s.o.Use.cells[name]
	if s.upper[name] {
		return s.o.high(cell)
	}
	return s.o.Cells[cell]
}

// leafText is a given, step or answer as it is printed in the sum, without its unit.
func (s *sum) leafText(name string, u unit.Unit) string {
	v := s.value(name)
	if s.o.Use.Sheet.IsDate(name) {
		return s.o.Use.DayText(v)
	}
	return u.Operand(v, s.mostDigits(name), operandUsual, s.more)
}

// mostDigits is how many digits a given, step or answer may have and still be printed whole.
func (s *sum) mostDigits(name string) int {
	if s.o.Typed(name) {
		return typedDigits
	}
	return evenDigits
}

// constantText is a figure as it is printed in the sum, without its unit.
func (s *sum) constantText(v float64) string {
	more := 0
	if s != nil {
		more = s.more
	}
	return plain.Operand(v, typedDigits, constantUsual, more)
}

// worked is what the sum comes to, with all digits or with those that are printed.
func (s *sum) worked(whole bool) float64 {
	s.whole = whole
	return s.work(s.body)
}

func (s *sum) work(n *node) float64 {
	if name, is := n.leaf(); is {
		if s.whole || s.o.Use.Sheet.IsDate(name) {
			return s.value(name) * s.percent(n.unit)
		}
		return keyed(s.leafText(name, n.unit))
	}
	switch n.kind {
	case kindNumber:
		return n.value
	case kindConstant:
		if number, _, is := n.reads(); is && !s.whole {
			return keyed(s.constantText(number))
		}
		return n.value * s.percent(n.unit)
	case kindConvert:
		return s.convert(n)
	case kindPower:
		base := s.work(n.args[0])
		power := base
		for range int(n.value) - 1 {
			power *= base
		}
		return power
	case kindArccosine:
		return math.Acos(s.work(n.args[0]))
	case kindOperation:
		return s.operate(n)
	}
	return math.NaN() // a lookup in a formula, and a choice between ways, have no number to key in
}

// convert works a conversion as it is printed; one that goes without saying is exact.
func (s *sum) convert(n *node) float64 {
	v := s.work(n.args[0])
	silent := powerOfTen(n.factor.Apply(1))
	if silent && s.plain {
		return v
	}
	if s.whole || silent {
		return n.factor.Apply(v)
	}
	sign, by := n.change()
	if sign == "÷" {
		return v / keyed(s.constantText(by))
	}
	return v * keyed(s.constantText(by))
}

func (s *sum) operate(n *node) float64 {
	v := make([]float64, len(n.args))
	for i, arg := range n.args {
		v[i] = s.work(arg)
	}
	switch n.op {
	case Add:
		return v[0] + v[1]
	case Subtract:
		return v[0] - v[1]
	case Multiply:
		return v[0] * v[1]
	case Divide:
		return v[0] / v[1]
	case Minimum:
		return min(v[0], v[1])
	case Maximum:
		return max(v[0], v[1])
	case Floor:
		return math.Floor(v[0])
	case Ceiling:
		return math.Ceil(v[0] - n.slack)
	case Absolute:
		return math.Abs(v[0])
	case SquareRoot:
		return math.Sqrt(v[0])
	}
	return math.NaN()
}

// hidden is the power of ten by which the result is more than what is printed comes to, once a % is a hundredth:
// 1000000 where pounds over pounds are given as ppm. A page cannot tell it from the numbers.
func hidden(r *Result, w *way) float64 {
	try := &sum{r: r, way: w, probe: map[string]float64{}}
	full := try.worked(true)
	try.plain = true
	hidden := full / try.worked(true) * try.percent(r.Unit)
	if exponent := math.Round(math.Log10(hidden)); powerOfTen(hidden) && exponent != 0 {
		return math.Pow(10, exponent)
	}
	return 1
}

// percent is what a unit makes of its number where conversions are not worked.
func (s *sum) percent(u unit.Unit) float64 {
	if s.plain && strings.HasPrefix(u.String(), "%") {
		return 0.01
	}
	return 1
}

// keyed is a printed number as a person keys it in.
func keyed(text string) float64 {
	v, err := unit.ParseNumber(text)
	if err != nil {
		return math.NaN()
	}
	return v
}
