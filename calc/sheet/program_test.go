package sheet_test

import (
	"math"
	"testing"

	"acreleaf/calc/sheet"
)

// run works one program over the inputs, which are in cells 0, 1 and so on; the answer is in the cell after them.
func run(p *sheet.Program, inputs ...float64) float64 {
	cells := append(append([]float64{}, inputs...), 0)
	p.Run(cells)
	return cells[len(inputs)]
}

// three reads three inputs, then does what is asked, and writes the last value.
func three(code ...sheet.Instruction) *sheet.Program {
	all := []sheet.Instruction{{Op: sheet.Input, A: 0}, {Op: sheet.Input, A: 1}, {Op: sheet.Input, A: 2}}
	all = append(all, code...)
	return &sheet.Program{Code: all, Cells: 4, Outputs: []sheet.Output{{From: len(all) - 1, Cell: 3}}}
}

// A processor that fuses x × y + z rounds once where a page rounds twice. The numbers are such that it shows: the
// product is rounded to z exactly, and what the rounding took away is all that a fused sum would leave.
func TestProductsAreRoundedBeforeTheyAreAdded(t *testing.T) {
	multiply := sheet.Instruction{Op: sheet.Multiply, A: 0, B: 1}
	for _, c := range []struct {
		name    string
		last    sheet.Instruction
		sign    float64 // of the product in the sum
		x, y, z float64
	}{
		{"x × y + z", sheet.Instruction{Op: sheet.Add, A: 3, B: 2}, 1, 1 + 0x1p-30, 1 - 0x1p-30, -1},
		{"z + x × y", sheet.Instruction{Op: sheet.Add, A: 2, B: 3}, 1, 0.1, 10, -1},
		{"x × y − z", sheet.Instruction{Op: sheet.Subtract, A: 3, B: 2}, 1, 1 + 0x1p-30, 1 - 0x1p-30, 1},
		{"z − x × y", sheet.Instruction{Op: sheet.Subtract, A: 2, B: 3}, -1, 0.1, 10, 1},
	} {
		z := c.z
		if c.last.Op == sheet.Subtract && c.sign > 0 {
			z = -z
		}
		if fused := math.FMA(c.sign*c.x, c.y, z); fused == 0 {
			t.Fatalf("%s: a fused sum is 0 too, so these numbers show nothing", c.name)
		}
		if got := run(three(multiply, c.last), c.x, c.y, c.z); got != 0 {
			t.Errorf("%s is %v, want 0: the product was not rounded", c.name, got)
		}
	}
}

// The same through a sheet, where the product is a conversion of units: 0.1 × 10.
func TestConversionsAreRoundedBeforeTheyAreAdded(t *testing.T) {
	s := build(t, "fused", func(s *sheet.Sheet) {
		long, short := s.Given("long", "cm", number), s.Given("short", "mm", number)
		s.Answer("gap", "mm", short.Minus(long), sheet.Says{})
	})
	if math.FMA(0.1, 10, -1) == 0 {
		t.Fatal("a fused difference is 0 too, so these numbers show nothing")
	}
	o, err := s.Evaluate(map[string]float64{"long": 0.1, "short": 1})
	if err != nil {
		t.Fatal(err)
	}
	if got := o.Value("gap").Value; got != 0 {
		t.Errorf("1 mm less 0.1 cm is %v mm, want 0", got)
	}
}

// The smaller and the larger of two are those of WebAssembly: -0 is below 0, and NaN wins over everything.
func TestSmallerAndLargerAtTheEdges(t *testing.T) {
	inf, nan, below := math.Inf(1), math.NaN(), math.Copysign(0, -1)
	for _, c := range []struct{ a, b, smaller, larger float64 }{
		{1, 2, 1, 2}, {2, 1, 1, 2}, {0, below, below, 0}, {below, 0, below, 0},
		{inf, 1, 1, inf}, {-inf, 1, -inf, 1}, {nan, 1, nan, nan}, {1, nan, nan, nan},
		{nan, inf, nan, nan}, {inf, nan, nan, nan}, {nan, -inf, nan, nan}, {-inf, nan, nan, nan},
	} {
		smaller := run(three(sheet.Instruction{Op: sheet.Minimum, A: 0, B: 1}), c.a, c.b, 0)
		larger := run(three(sheet.Instruction{Op: sheet.Maximum, A: 0, B: 1}), c.a, c.b, 0)
		if !sameBits(smaller, c.smaller) || !sameBits(larger, c.larger) {
			t.Errorf("%v and %v: smaller %v, larger %v; want %v and %v", c.a, c.b, smaller, larger, c.smaller, c.larger)
		}
	}
}

func sameBits(a, b float64) bool {
	return math.Float64bits(a) == math.Float64bits(b) || math.IsNaN(a) && math.IsNaN(b)
}

func TestEveryOperationHasItsMeaning(t *testing.T) {
	const a, b, c = 2.5, -3, 7
	want := map[sheet.Op]float64{
		sheet.Add: -0.5, sheet.Subtract: 5.5, sheet.Multiply: -7.5, sheet.Divide: -2.5 / 3,
		sheet.Minimum: -3, sheet.Maximum: 2.5, sheet.Floor: 2, sheet.Ceiling: 3, sheet.SquareRoot: math.Sqrt(2.5),
		sheet.Negate: -2.5, sheet.Absolute: 2.5, sheet.Less: 0, sheet.LessOrEqual: 0, sheet.Equal: 0,
		sheet.And: 1, sheet.Or: 1, sheet.Not: 0, sheet.Select: -3,
	}
	for op := sheet.Add; op <= sheet.Select; op++ {
		if got := run(three(sheet.Instruction{Op: op, A: 0, B: 1, C: 2}), a, b, c); got != want[op] {
			t.Errorf("operation %d of %v, %v and %v is %v, want %v", op, a, b, c, got, want[op])
		}
	}
	zero := map[sheet.Op]float64{
		sheet.And: 0, sheet.Or: 1, sheet.Not: 1, sheet.Select: 7, sheet.Less: 0, sheet.LessOrEqual: 0, sheet.Equal: 0,
	}
	for op, want := range zero {
		if got := run(three(sheet.Instruction{Op: op, A: 0, B: 1, C: 2}), 0, -3, 7); got != want {
			t.Errorf("operation %d of 0, -3 and 7 is %v, want %v", op, got, want)
		}
	}
}

func TestRunTouchesOnlyItsOutputs(t *testing.T) {
	p := &sheet.Program{
		Code:    []sheet.Instruction{{Op: sheet.Input, A: 1}, {Op: sheet.Negate, A: 0}},
		Outputs: []sheet.Output{{From: 1, Cell: 3}}, Cells: 5,
	}
	cells := []float64{1, 2, 3, 4, 5, 6}
	p.Run(cells)
	for i, want := range []float64{1, 2, 3, -2, 5, 6} {
		if cells[i] != want {
			t.Errorf("cell %d is %v, want %v", i, cells[i], want)
		}
	}
}

func TestUnknownOperationPanics(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("an operation that does not exist was run")
		}
	}()
	run(three(sheet.Instruction{Op: sheet.Lookup + 1}), 1, 2, 3)
}

// program is the program of one sheet.
func program(t testing.TB, f func(*sheet.Sheet)) *sheet.Program {
	t.Helper()
	g := &sheet.Graph{}
	g.Add("one", build(t, "one", f), nil)
	return closed(t, g).Program
}

func count(p *sheet.Program, op sheet.Op) int {
	n := 0
	for _, in := range p.Code {
		if in.Op == op {
			n++
		}
	}
	return n
}

func TestTheSameIsWorkedOnce(t *testing.T) {
	p := program(t, func(s *sheet.Sheet) {
		a, b := s.Given("a", "in", number), s.Given("b", "ft", number)
		s.Answer("x", "in2", a.Plus(b).Times(a.Plus(b)), sheet.Says{})
		s.Answer("y", "in", a.Plus(b), sheet.Says{})
		s.Say(sheet.Note, a.Plus(b).More(s.Number(12).Times(s.Constant("inch", "1 in", known))), "Deep.")
		s.Say(sheet.Note, a.More(b).And(a.More(b)), "Deeper.")
	})
	// b × 12 once; a + b once; their square, and 12 × 1 in of the remark.
	if count(p, sheet.Add) != 1 || count(p, sheet.Multiply) != 3 || count(p, sheet.Input) != 2 {
		t.Errorf("%d sums, %d products and %d inputs, want 1, 3 and 2", count(p, sheet.Add), count(p, sheet.Multiply),
			count(p, sheet.Input))
	}
	for i, in := range p.Code {
		for k, other := range p.Code[:i] {
			if in == other {
				t.Errorf("term %d is term %d again: %+v", i, k, in)
			}
		}
	}
}

func TestOrderOfOperandsIsKept(t *testing.T) {
	p := program(t, func(s *sheet.Sheet) {
		a, b := s.Given("a", "", number), s.Given("b", "", number)
		s.Answer("x", "", a.Minus(b), sheet.Says{})
		s.Answer("y", "", b.Minus(a), sheet.Says{})
		s.Answer("z", "", a.Times(s.Number(0)).Plus(a.Times(s.Number(math.Copysign(0, -1)))), sheet.Says{})
	})
	if count(p, sheet.Subtract) != 2 || count(p, sheet.Literal) != 2 {
		t.Errorf("%d differences and %d figures, want 2 and 2", count(p, sheet.Subtract), count(p, sheet.Literal))
	}
}

// Uses of one sheet with the same numbers still have cells of their own, and no cell is both read and written.
func TestCellsOfAGraphAreApart(t *testing.T) {
	g := &sheet.Graph{Slips: true}
	g.Add("a", field, nil)
	g.Add("b", field, nil)
	g.Add("c", rate, links{"trees": {Use: "a", Name: "trees"}})
	closed(t, g)
	use := map[int]string{}
	claim := func(cell int, as string) {
		if was, taken := use[cell]; taken || cell < 0 || cell >= g.Program.Cells {
			t.Errorf("cell %d is %s and %s, of %d cells", cell, was, as, g.Program.Cells)
		}
		use[cell] = as
	}
	for _, u := range g.Uses {
		for _, name := range u.Sheet.Names() {
			cell, ok := u.Cell(name)
			if !ok {
				t.Errorf("%s.%s has no cell", u.Name, name)
			}
			claim(cell, u.Name+"."+name)
			if p, ok := u.Presence(name); ok {
				claim(p, "whether "+u.Name+"."+name)
			}
		}
	}
	if _, ok := g.Uses[0].Cell("acre"); ok {
		t.Error("a constant has a cell")
	}
	written := map[int]bool{}
	for _, out := range g.Program.Outputs {
		if written[out.Cell] {
			t.Errorf("cell %d is written twice", out.Cell)
		}
		written[out.Cell] = true
	}
	for _, in := range g.Program.Code {
		if in.Op == sheet.Input && written[in.A] {
			t.Errorf("cell %d is read and written", in.A)
		}
	}
}
