package sheet

import (
	"math"
	"strings"

	"acreleaf/calc/words"
)

// A Line is one line of the work: how a result is worked, in names and in numbers.
type Line struct {
	Result  *Result
	When    int      // the cell that says whether this way was taken (1) or another (0); -1 if there is no other
	Taken   bool     // whether it was taken for these numbers
	Symbols string   // MathML: nitrogen = nitrate × …
	Numbers []string // MathML: = 12 ppm NO3-N × … = 48 lb N/ac; for ranges the least and then the most
	Bare    bool     // only what comes after the last sign of equality is for showing: no ends of ranges give the result

	o    Outcome
	way  *way
	sums []*sum
}

// A Marker gives the attributes of the element that holds the value of a cell, each with a space before it, so that a
// page can put another value there. It may be nil.
type Marker func(cell int) string

// Lines prints the work, every way of it. The ways not taken have their names and the numbers that they would have.
func (o Outcome) Lines(mark Marker) []Line {
	var lines []Line
	for _, r := range o.Use.Sheet.Results {
		if r.Twin != "" {
			continue
		}
		for i, w := range r.ways() {
			cell := o.Use.ways[r.Name][i]
			taken := cell < 0 || o.holds(cell)
			line := Line{Result: r, When: cell, Taken: taken, Symbols: o.symbolsMath(r, w),
				o: o, way: w, sums: o.sums(r, w, taken)}
			sums := line.sums
			if line.Bare = sums == nil; line.Bare {
				sums = []*sum{{o: o, r: r, way: w}}
			}
			for _, s := range sums {
				line.Numbers = append(line.Numbers, s.math(mark, line.Bare))
			}
			lines = append(lines, line)
		}
	}
	return lines
}

// Work lists the ways taken as plain text, one line a result.
func (o Outcome) Work() []string {
	var work []string
	for _, line := range o.Lines(nil) {
		if line.Taken {
			work = append(work, line.Words())
		}
	}
	return work
}

// How tightly the parts of a formula hold together, from loose to tight.
const (
	callLevel = iota // "the larger of a and b": nothing shows where it ends
	sumLevel
	productLevel
	powerLevel
	atomLevel
)

// level is how tightly the outermost operation of a formula holds.
func (n *node) level() int {
	n = n.shown()
	switch {
	case n.kind == kindOperation && (n.op == Add || n.op == Subtract):
		return sumLevel
	case n.kind == kindOperation && (n.op == Multiply || n.op == Divide):
		return productLevel
	case n.kind == kindConvert:
		return productLevel
	case n.kind == kindPower:
		return powerLevel
	case n.kind == kindArccosine || n.kind == kindOperation && n.op != SquareRoot:
		return callLevel
	}
	return atomLevel
}

// shown is the node without the conversions that go without saying: by one, or by a power of ten, which a %, a ppm or
// a milligram says itself.
func (n *node) shown() *node {
	for n.kind == kindConvert && powerOfTen(n.factor.Apply(1)) {
		n = n.args[0]
	}
	return n
}

// plainly says whether a formula is one value as it stands, so that its number is the result's number.
func (n *node) plainly() bool {
	return len(n.args) == 0 || n.kind == kindNamed || n.kind == kindLookup || n.kind == kindRecast
}

func powerOfTen(v float64) bool {
	exponent := math.Round(math.Log10(v))
	return math.Abs(exponent) <= 12 && math.Abs(v/math.Pow(10, exponent)-1) < 1e-12
}

// misread says whether a node under a power or a root sign needs brackets: 18 ft to the power 2 is not 18 ft2.
func (n *node) misread(numbers bool) bool {
	n = n.shown()
	switch n.kind {
	case kindGiven, kindNamed:
		return numbers
	case kindNumber, kindConstant:
		return n.value < 0 || n.said != "" || n.unit.String() != ""
	}
	return true
}

// change is how a conversion reads after what it converts: "÷" 16 or "×" 0.226613.
func (n *node) change() (sign string, number float64) {
	if n.factor.Multiply == 1 {
		return "÷", n.factor.Divide
	}
	return "×", n.factor.Apply(1)
}

// reads parts how a constant reads in a formula into its number and what comes after it. False when it reads otherwise
// than as a number.
func (n *node) reads() (number float64, after string, is bool) {
	after = strings.TrimLeft(n.said, "0123456789.,")
	return n.value, after, n.said == "" || after != n.said
}

// infix is how an operation reads between its operands, and how tightly each of them must hold. False for one that is
// written otherwise. The work in words and in MathML takes it from here, so that the two cannot group differently.
// A quotient is on one line too: a small screen can wrap it, and it cannot wrap a fraction.
func (n *node) infix() (sign string, left, right int, ok bool) {
	if n.kind != kindOperation {
		return
	}
	switch n.op {
	case Add:
		return "+", sumLevel, sumLevel, true
	case Subtract:
		return "−", sumLevel, productLevel, true
	case Multiply:
		return "×", productLevel, productLevel, true
	case Divide:
		return "÷", productLevel, powerLevel, true
	}
	return
}

// callName is how an operation reads that is written before its operands: "the larger of a and b".
func (n *node) callName(say *words.General) (before, between string) {
	if n.kind == kindArccosine {
		return "arccos", ""
	}
	switch n.op {
	case Minimum:
		return say.Smaller, say.And
	case Maximum:
		return say.Larger, say.And
	case Floor:
		return say.RoundDown, ""
	case Ceiling:
		return say.RoundUp, ""
	case Absolute:
		return say.Size, ""
	}
	return "", ""
}
