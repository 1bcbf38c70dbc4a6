package sheet

import (
	"slices"
	"testing"
)

// A search has work for 32,768 instructions and slopes. A box takes each instruction twice, for itself and for its
// middle, and its slope along each side: of four instructions and two sides it settles 2048 boxes, no more. The part
// of x + y behind its decimal point comes as near to 1 as one likes below each whole number, so that boxes are left.
func TestASearchStopsAtItsWork(t *testing.T) {
	p := &Program{Code: []Instruction{{Op: Input, A: 0}, {Op: Input, A: 1}, {Op: Add, A: 0, B: 1}, {Op: Floor, A: 2},
		{Op: Subtract, A: 2, B: 3}, {Op: Negate, A: 4}}, Outputs: []Output{{5, 2}}, Cells: 3}
	ranges := []Interval{{0, 1000}, {0, 1000}}
	begin := func() *search {
		s := newSpread(p, []float64{0, 0, 0}, []float64{1000, 1000, 0})
		return newSearch(s.part(query{of: 5, where: -1}, plan{[]int{0, 1}, []int{2, 3, 4, 5}}), ranges, false)
	}
	whole, counted := begin(), begin()
	end, _ := whole.run()
	counted.best, counted.beyond = -inf, -inf
	counted.queue = []box{{slices.Clone(ranges), inf}}
	for range 2048 {
		b := counted.queue[0]
		counted.queue = counted.queue[1:]
		counted.settle(b)
	}
	if len(whole.queue) == 0 || len(whole.queue) != len(counted.queue) || whole.best != counted.best {
		t.Errorf("it leaves %d boxes, and 2048 boxes leave %d; the best is %g, and %g", len(whole.queue),
			len(counted.queue), whole.best, counted.best)
	}
	if end > -1 {
		t.Errorf("with boxes left, the least is told as %g, and there is less", end)
	}
}

// Where a truth leaves a part in which a value only rises, its end is the end of that part: x (10 - x) for x up to 3 is
// 21 at most, and beyond 7 it only falls.
func TestAPartInWhichAValueOnlyRises(t *testing.T) {
	code := []Instruction{{Op: Input, A: 0}, {Op: Literal, Value: 10}, {Op: Subtract, A: 1, B: 0},
		{Op: Multiply, A: 0, B: 2}, {Op: Literal, Value: 3}, {Op: LessOrEqual, A: 0, B: 4}, {Op: Literal, Value: 7},
		{Op: LessOrEqual, A: 6, B: 0}}
	for _, where := range []int{5, 7} {
		p := &Program{Code: code, Outputs: []Output{{3, 1}, {where, 2}}, Cells: 3}
		low, high := []float64{0, 0, 0}, []float64{10, 0, 0}
		p.Spread(low, high)
		if got := p.Where(low, high, 1, 2); got != (Interval{0, 21}) {
			t.Errorf("where instruction %d holds it is %v, want 0 to 21", where, got)
		}
	}
}

// No box is cut in which the truth leaves only a rise: (x - 5) (x - 5) from 0 to 10 turns at 5, and from 7 on it rises
// to the 25 that the first box finds.
func TestABoxIsNotCutForNothing(t *testing.T) {
	p := &Program{Code: []Instruction{{Op: Input, A: 0}, {Op: Literal, Value: 5}, {Op: Subtract, A: 0, B: 1},
		{Op: Multiply, A: 2, B: 2}, {Op: Literal, Value: 7}, {Op: LessOrEqual, A: 4, B: 0}}, Cells: 1}
	ranges := []Interval{{0, 10}}
	own := newSpread(p, []float64{0}, []float64{10}).part(query{of: 3, where: 5}, plan{[]int{0}, []int{2, 3, 5}})
	s := newSearch(own, ranges, true)
	s.best, s.beyond = -inf, -inf
	s.settle(box{slices.Clone(ranges), inf})
	if s.best != 25 || len(s.queue) != 0 {
		t.Errorf("the first box finds %g and leaves %d, want 25 and none", s.best, len(s.queue))
	}
}

// What is so in the middle of a range alone is found there: (x - 5) (x - 5) < 1 between 4 and 6.
func TestATruthInTheMiddle(t *testing.T) {
	p := &Program{Code: []Instruction{{Op: Input, A: 0}, {Op: Literal, Value: 5}, {Op: Subtract, A: 0, B: 1},
		{Op: Multiply, A: 2, B: 2}, {Op: Literal, Value: 1}, {Op: Less, A: 3, B: 4}}, Outputs: []Output{{5, 1}}, Cells: 2}
	for _, c := range []struct {
		from, to float64
		want     Interval
	}{{0, 10, Interval{0, 1}}, {1, 32, Interval{0, 1}}, {0, 3, Only(0)}, {4.5, 5.25, Only(1)}} {
		low, high := []float64{c.from, 0}, []float64{c.to, 0}
		p.Spread(low, high)
		if got := (Interval{low[1], high[1]}); got != c.want {
			t.Errorf("from %g to %g it is %v, want %v", c.from, c.to, got, c.want)
		}
	}
}

// A quotient is of the power of what is divided, less that of what divides it: of x, y and a plain number.
func TestDegrees(t *testing.T) {
	const x, y, two, square, product = 0, 1, 2, 3, 4
	start := []Instruction{x: {Op: Input, A: 0}, y: {Op: Input, A: 1}, two: {Op: Literal, Value: 2},
		square: {Op: Multiply, A: x, B: x}, product: {Op: Multiply, A: x, B: y}}
	for _, c := range []struct {
		a, b     int
		ofX, ofY float64
	}{{x, y, 1, -1}, {y, x, -1, 1}, {product, x, 0, 1}, {square, x, 1, 0}, {x, square, -1, 0}, {two, square, -2, 0},
		{square, two, 2, 0}, {product, product, 0, 0}, {square, product, 1, -1}} {
		j := judged(&Program{Code: append(slices.Clone(start), Instruction{Op: Divide, A: c.a, B: c.b})},
			Interval{1, 3}, Interval{4, 9})
		if ofX, ofY := j.degree[2*len(start)], j.degree[2*len(start)+1]; ofX != c.ofX || ofY != c.ofY {
			t.Errorf("%d over %d is of the powers %g and %g, want %g and %g", c.a, c.b, ofX, ofY, c.ofX, c.ofY)
		}
	}
}
