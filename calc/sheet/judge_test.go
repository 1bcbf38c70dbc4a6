package sheet

import (
	"maps"
	"math"
	"slices"
	"testing"

	"acreleaf/calc/unit"
)

// judged works a program for a box, its inputs being the sides. As in a search, the intervals are there before the
// slopes are asked for.
func judged(p *Program, box ...Interval) *judge {
	var sides, order []int
	for i, in := range p.Code {
		if in.Op == Input {
			sides = append(sides, i)
		} else {
			order = append(order, i)
		}
	}
	value, whole := make([]Interval, len(p.Code)), p.wholeNumbers()
	newJudge(p, value, whole, sides, order).pass(box, false, nil)
	j := newJudge(p, value, whole, sides, order)
	j.pass(box, true, nil)
	return j
}

var inf = math.Inf(1)

// What follows from a truth, by hand: of x from 0 to 10 and y from 3 to 7. Where both sides of a comparison are whole
// numbers, less is less by 1 at least.
func TestWhatATruthTells(t *testing.T) {
	const x, y, wholeX, wholeY, two, half = 0, 1, 2, 3, 4, 5
	const few, less, yes, no, asked = 6, 7, 8, 9, 10
	start := []Instruction{
		x: {Op: Input, A: 0}, y: {Op: Input, A: 1}, wholeX: {Op: Floor, A: x}, wholeY: {Op: Floor, A: y},
		two: {Op: Literal, Value: 2}, half: {Op: Literal, Value: 2.5},
		few: {Op: Less, A: x, B: half}, less: {Op: Less, A: x, B: y}, yes: {Op: Less, A: two, B: y},
		no: {Op: Less, A: y, B: two},
	}
	type limits map[int]Interval
	so, not := Only(1), Only(0)
	below := func(v float64) Interval { return Interval{-inf, v} }
	above := func(v float64) Interval { return Interval{v, inf} }
	for _, c := range []struct {
		of      Instruction
		so      bool
		follows limits
	}{
		{Instruction{Op: Less, A: x, B: y}, true, limits{x: below(7), y: above(0)}},
		{Instruction{Op: Less, A: x, B: y}, false, limits{x: above(3), y: below(10)}},
		{Instruction{Op: LessOrEqual, A: x, B: y}, true, limits{x: below(7), y: above(0)}},
		{Instruction{Op: Less, A: wholeX, B: wholeY}, true, limits{wholeX: below(6), wholeY: above(1)}},
		{Instruction{Op: Less, A: wholeX, B: wholeY}, false, limits{wholeX: above(3), wholeY: below(10)}},
		{Instruction{Op: LessOrEqual, A: wholeX, B: wholeY}, true, limits{wholeX: below(7), wholeY: above(0)}},
		{Instruction{Op: LessOrEqual, A: wholeX, B: wholeY}, false, limits{wholeX: above(4), wholeY: below(9)}},
		{Instruction{Op: Less, A: wholeX, B: y}, true, limits{wholeX: below(7), y: above(0)}},
		{Instruction{Op: Less, A: x, B: wholeY}, true, limits{x: below(7), wholeY: above(0)}},
		{Instruction{Op: Less, A: wholeX, B: two}, true, limits{wholeX: below(1), two: above(1)}},
		{Instruction{Op: Less, A: wholeX, B: half}, true, limits{wholeX: below(2.5), half: above(0)}},
		{Instruction{Op: Not, A: less}, true, limits{less: not, x: above(3), y: below(10)}},
		{Instruction{Op: Not, A: less}, false, limits{less: so, x: below(7), y: above(0)}},
		{Instruction{Op: And, A: few, B: less}, true,
			limits{few: so, less: so, x: below(2.5), half: above(0), y: above(0)}},
		{Instruction{Op: And, A: few, B: less}, false, nil},
		{Instruction{Op: And, A: yes, B: less}, false, limits{less: not, x: above(3), y: below(10)}},
		{Instruction{Op: And, A: less, B: yes}, false, limits{less: not, x: above(3), y: below(10)}},
		{Instruction{Op: And, A: no, B: less}, false, nil},
		{Instruction{Op: And, A: less, B: no}, false, nil},
		{Instruction{Op: Or, A: few, B: less}, false,
			limits{few: not, less: not, x: above(3), half: below(10), y: below(10)}},
		{Instruction{Op: Or, A: few, B: less}, true, nil},
		{Instruction{Op: Or, A: no, B: less}, true, limits{less: so, x: below(7), y: above(0)}},
		{Instruction{Op: Or, A: less, B: no}, true, limits{less: so, x: below(7), y: above(0)}},
		{Instruction{Op: Or, A: yes, B: less}, true, nil},
		{Instruction{Op: Or, A: less, B: yes}, true, nil},
	} {
		p := &Program{Code: append(slices.Clone(start), c.of)}
		limit := slices.Repeat([]Interval{Anything}, len(p.Code))
		judged(p, Interval{0, 10}, Interval{3, 7}).assume(asked, c.so, limit)
		want := limits{asked: Only(truth(c.so))}
		maps.Copy(want, c.follows)
		for i, got := range limit {
			if expected, is := want[i]; is && got != expected || !is && got != Anything {
				t.Errorf("%+v is %v: %d is %v, want %v", c.of, c.so, i, got, want[i])
			}
		}
	}
}

func TestWholeNumbers(t *testing.T) {
	p := &Program{Code: []Instruction{
		{Op: Input}, {Op: Floor, A: 0}, {Op: Ceiling, A: 0}, {Op: Literal, Value: 2}, {Op: Literal, Value: 2.5},
		{Op: Less, A: 0, B: 3}, {Op: Select, A: 5, B: 1, C: 2}, {Op: Select, A: 5, B: 0, C: 2},
		{Op: Select, A: 5, B: 1, C: 0}, {Op: Select, A: 5, B: 0, C: 0}, {Op: Not, A: 5}, {Op: SquareRoot, A: 3},
	}}
	want := []bool{false, true, true, true, false, true, true, false, false, false, true, false}
	if got := p.wholeNumbers(); !slices.Equal(got, want) {
		t.Errorf("they are %v, want %v", got, want)
	}
}

// What is surely so, surely not, and open: of a from 1 to 2 and b from 3 to 4, a to its own end, and single numbers.
func TestWhatIsSure(t *testing.T) {
	sure, never, open := Only(1), Only(0), Interval{0, 1}
	for _, c := range []struct {
		op   Op
		a, b Interval
		want Interval
	}{
		{Less, Interval{1, 2}, Interval{3, 4}, sure}, {Less, Interval{3, 4}, Interval{1, 2}, never},
		{Less, Interval{1, 2}, Interval{2, 3}, open}, {Less, Interval{2, 3}, Interval{1, 2}, never},
		{LessOrEqual, Interval{1, 2}, Interval{2, 3}, sure}, {LessOrEqual, Interval{2, 3}, Interval{1, 2}, open},
		{LessOrEqual, Interval{3, 4}, Interval{1, 2}, never},
		{Equal, Interval{1, 2}, Interval{3, 4}, never}, {Equal, Interval{3, 4}, Interval{1, 2}, never},
		{Equal, Interval{1, 2}, Interval{2, 3}, open}, {Equal, Interval{2, 3}, Interval{1, 2}, open},
		{Equal, Interval{1, 3}, Interval{2, 2}, open}, {Equal, Interval{2, 2}, Interval{1, 3}, open},
		{Equal, Only(2), Only(2), sure}, {Equal, Only(2), Only(3), never}, {Equal, Interval{2, 3}, Only(2), open},
		{Equal, Only(2), Interval{2, 3}, open},
		{And, sure, sure, sure}, {And, sure, open, open}, {And, open, sure, open}, {And, never, open, never},
		{And, open, never, never}, {And, open, open, open},
		{Or, never, never, never}, {Or, never, open, open}, {Or, open, never, open}, {Or, sure, open, sure},
		{Or, open, sure, sure}, {Or, open, open, open},
	} {
		p := &Program{Code: []Instruction{{Op: Input, A: 0}, {Op: Input, A: 1}, {Op: c.op, A: 0, B: 1}}}
		if got := judged(p, c.a, c.b).value[2]; got != c.want {
			t.Errorf("operation %d of %v and %v is %v, want %v", c.op, c.a, c.b, got, c.want)
		}
	}
}

// Slopes by the rules of derivatives, over x from 1 to 3 and y from 4 to 9; of what jumps, the way that it goes.
func TestSlopes(t *testing.T) {
	const x, y, two, three, one = 0, 1, 2, 3, 4
	const past, few, yes, less, minus, near = 5, 6, 7, 8, 9, 10
	start := []Instruction{
		x: {Op: Input, A: 0}, y: {Op: Input, A: 1}, two: {Op: Literal, Value: 2}, three: {Op: Literal, Value: 3},
		one: {Op: Literal, Value: 1}, past: {Op: Less, A: two, B: x}, few: {Op: Less, A: x, B: two},
		yes: {Op: Less, A: x, B: y}, less: {Op: Subtract, A: x, B: y}, minus: {Op: Negate, A: x},
		near: {Op: Subtract, A: x, B: two},
	}
	for _, c := range []struct {
		of             Instruction
		alongX, alongY Interval
	}{
		{Instruction{Op: Add, A: x, B: y}, Only(1), Only(1)},
		{Instruction{Op: Subtract, A: x, B: y}, Only(1), Only(-1)},
		{Instruction{Op: Multiply, A: x, B: y}, Interval{4, 9}, Interval{1, 3}},
		{Instruction{Op: Divide, A: x, B: y}, Interval{1. / 9, 1. / 4}, Interval{-3. / 16, -1. / 81}},
		{Instruction{Op: Negate, A: x}, Only(-1), flat},
		{Instruction{Op: SquareRoot, A: y}, flat, Interval{1. / 6, 1. / 4}},
		{Instruction{Op: Absolute, A: x}, Only(1), flat},
		{Instruction{Op: Absolute, A: less}, Only(-1), Only(1)},
		{Instruction{Op: Absolute, A: near}, Interval{-1, 1}, flat},
		{Instruction{Op: Floor, A: x}, rising, flat},
		{Instruction{Op: Ceiling, A: minus}, falling, flat},
		{Instruction{Op: Minimum, A: x, B: y}, Only(1), flat},
		{Instruction{Op: Minimum, A: y, B: x}, Only(1), flat},
		{Instruction{Op: Minimum, A: x, B: three}, Only(1), flat},
		{Instruction{Op: Minimum, A: three, B: x}, Only(1), flat},
		{Instruction{Op: Minimum, A: x, B: one}, flat, flat},
		{Instruction{Op: Minimum, A: x, B: two}, Interval{0, 1}, flat},
		{Instruction{Op: Maximum, A: x, B: y}, flat, Only(1)},
		{Instruction{Op: Maximum, A: y, B: x}, flat, Only(1)},
		{Instruction{Op: Maximum, A: x, B: one}, Only(1), flat},
		{Instruction{Op: Maximum, A: one, B: x}, Only(1), flat},
		{Instruction{Op: Maximum, A: x, B: three}, flat, flat},
		{Instruction{Op: Maximum, A: two, B: x}, Interval{0, 1}, flat},
		{Instruction{Op: Less, A: x, B: two}, falling, flat},
		{Instruction{Op: LessOrEqual, A: two, B: x}, rising, flat},
		{Instruction{Op: Equal, A: x, B: two}, Anything, flat},
		{Instruction{Op: Equal, A: x, B: near}, flat, flat},
		{Instruction{Op: Not, A: few}, rising, flat},
		{Instruction{Op: And, A: past, B: yes}, rising, flat},
		{Instruction{Op: And, A: few, B: yes}, falling, flat},
		{Instruction{Op: And, A: yes, B: few}, falling, flat},
		{Instruction{Op: And, A: few, B: past}, Anything, flat},
		{Instruction{Op: Or, A: past, B: few}, Anything, flat},
		{Instruction{Op: Or, A: past, B: past}, rising, flat},
		{Instruction{Op: Select, A: yes, B: x, C: y}, Only(1), flat},
		{Instruction{Op: Select, A: few, B: y, C: x}, Interval{-inf, 1}, Interval{0, 1}},
		{Instruction{Op: Index, A: x, B: 5}, rising, flat},
	} {
		p := &Program{Code: append(slices.Clone(start), c.of)}
		j := judged(p, Interval{1, 3}, Interval{4, 9})
		last := len(start)
		if gotX, gotY := j.steep(last, x), j.steep(last, y); gotX != c.alongX || gotY != c.alongY {
			t.Errorf("%+v: %v and %v, want %v and %v", c.of, gotX, gotY, c.alongX, c.alongY)
		}
	}
}

// A truth that is set from outside, as whether a number is filled in, is the slope of what leaves it as it is.
func TestSlopesOfTruths(t *testing.T) {
	const given, other, no, yes = 0, 1, 2, 3
	start := []Instruction{{Op: Input, A: 0}, {Op: Input, A: 1}, {Op: Literal, Value: 0}, {Op: Literal, Value: 1}}
	for _, c := range []struct {
		of            Instruction
		along, along2 Interval
	}{
		{Instruction{Op: And, A: given, B: yes}, Only(1), flat},
		{Instruction{Op: And, A: yes, B: given}, Only(1), flat},
		{Instruction{Op: And, A: given, B: other}, Interval{0, 1}, Interval{0, 1}},
		{Instruction{Op: And, A: given, B: no}, flat, flat},
		{Instruction{Op: Or, A: given, B: no}, Only(1), flat},
		{Instruction{Op: Or, A: no, B: given}, Only(1), flat},
		{Instruction{Op: Or, A: given, B: other}, Interval{0, 1}, Interval{0, 1}},
		{Instruction{Op: Or, A: given, B: yes}, flat, flat},
	} {
		j := judged(&Program{Code: append(slices.Clone(start), c.of)}, Interval{0, 1}, Interval{0, 1})
		if got, got2 := j.steep(4, given), j.steep(4, other); got != c.along || got2 != c.along2 {
			t.Errorf("%+v: %v and %v, want %v and %v", c.of, got, got2, c.along, c.along2)
		}
	}
}

// A trend says which way a value goes, where the code does not show it. What is told to go up and down with one side
// may go either way.
func TestTrendsAreSlopes(t *testing.T) {
	code := []Instruction{{Op: Input, A: 0}, {Op: Input, A: 1}, {Op: Negate, A: 1}, {Op: Equal, A: 0, B: 1}}
	for _, c := range []struct {
		trends         []Trend
		alongX, alongY Interval
	}{
		{[]Trend{{3, 0, true}, {3, 1, true}}, rising, rising},
		{[]Trend{{3, 0, true}, {3, 1, false}}, rising, falling},
		{[]Trend{{3, 0, false}, {3, 2, false}}, falling, rising},
		{[]Trend{{3, 1, true}, {3, 2, true}}, flat, Anything},
		{[]Trend{{2, 1, true}}, Anything, Anything},
	} {
		j := judged(&Program{Code: code, Trends: c.trends}, Interval{1, 3}, Interval{2, 9})
		if gotX, gotY := j.steep(3, 0), j.steep(3, 1); gotX != c.alongX || gotY != c.alongY {
			t.Errorf("%v: %v and %v, want %v and %v", c.trends, gotX, gotY, c.alongX, c.alongY)
		}
	}
}

// A conversion in the code gives what the factor gives, and takes no step that changes nothing.
func TestConversionsStepByStep(t *testing.T) {
	for _, c := range []struct {
		multiply, divide float64
		steps            int
	}{{1, 1, 0}, {2, 1, 1}, {1, 2, 1}, {3, 1, 1}, {1, 3, 1}, {2, 3, 2}, {3, 2, 2}} {
		a := newAssembler()
		a.output(a.convert(a.input(0), c.multiply, c.divide), 1)
		cells := []float64{7, 0}
		a.program.Run(cells)
		steps := 0
		for _, in := range a.program.Code {
			if in.Op == Multiply || in.Op == Divide {
				steps++
			}
		}
		if want := (unit.Factor{Multiply: c.multiply, Divide: c.divide}).Apply(7); cells[1] != want || steps != c.steps {
			t.Errorf("times %g over %g: %g in %d steps, want %g in %d", c.multiply, c.divide, cells[1], steps, want, c.steps)
		}
	}
}

func TestChain(t *testing.T) {
	for _, c := range []struct{ line, part, want string }{
		{"a", "b", "a = b"}, {"a", "a", "a"}, {"a = b", "b", "a = b"}, {"a = b", "a", "a = b = a"},
		{"a = b", "c", "a = b = c"},
		{"rate", "te", "rate = te"}, {"a = b = c", "b = c", "a = b = c = b = c"},
	} {
		if got := chain(c.line, c.part); got != c.want {
			t.Errorf("%q and %q: %q, want %q", c.line, c.part, got, c.want)
		}
	}
}

// What is found where a truth holds is not taken for what there is everywhere: x times a truth, x from 1 to 2.
func TestWhatIsFoundWhereATruthHoldsIsKeptApart(t *testing.T) {
	p := &Program{
		Code:    []Instruction{{Op: Input, A: 0}, {Op: Input, A: 1}, {Op: Multiply, A: 1, B: 0}},
		Outputs: []Output{{0, 2}, {2, 3}, {2, 4}}, Cells: 5, Guards: map[int]int{3: 2},
	}
	low, high := []float64{0, 1, 0, 0, 0}, []float64{1, 2, 0, 0, 0}
	p.Spread(low, high)
	if low[3] != 1 || high[3] != 2 || low[4] != 0 || high[4] != 2 {
		t.Errorf("where it holds %g to %g, want 1 to 2; everywhere %g to %g, want 0 to 2", low[3], high[3], low[4], high[4])
	}
}

// The slack is no more than a slip in the last bits: what passes a whole number by more is rounded up.
func TestRoundUpPast(t *testing.T) {
	s := New("past", func(s *Sheet) {
		n := s.Given("n", "", Field{Label: "N", Typical: 1, Low: 0, High: 9})
		s.Answer("up", "", n.RoundUpPast(0.125), Says{})
	})
	for n, want := range map[float64]float64{2: 2, 2.125: 2, 2.25: 3, 1.875: 2, 2.0625: 2} {
		o, err := s.Evaluate(map[string]float64{"n": n})
		if err != nil {
			t.Fatal(err)
		}
		if got := o.Value("up").Value; got != want {
			t.Errorf("%g is rounded to %g, want %g", n, got, want)
		}
	}
}

// What several ranges come to is worked as one range, where nothing else takes a part of it, and that is never too
// wide: x - x × y is 0 to 1 for x and y from 0 to 1, so that it is never below -0.5; and (x + y) - x is y.
func TestRangesThatBecomeOne(t *testing.T) {
	product := []Instruction{{Op: Input, A: 0}, {Op: Input, A: 1}, {Op: Multiply, A: 0, B: 1}, {Op: Subtract, A: 0, B: 2},
		{Op: Literal, Value: -0.5}, {Op: Less, A: 3, B: 4}, {Op: Less, A: 4, B: 3}}
	sum := []Instruction{{Op: Input, A: 0}, {Op: Input, A: 1}, {Op: Add, A: 0, B: 1}, {Op: Subtract, A: 2, B: 0}}
	for _, c := range []struct {
		code []Instruction
		of   int
		want Interval
	}{{product, 3, Interval{0, 1}}, {product, 5, Only(0)}, {product, 6, Only(1)}, {sum, 2, Interval{0, 2}},
		{sum, 3, Interval{0, 1}}} {
		p := &Program{Code: c.code, Outputs: []Output{{c.of, 2}}, Cells: 3}
		low, high := []float64{0, 0, 0}, []float64{1, 1, 0}
		p.Spread(low, high)
		if got := (Interval{low[2], high[2]}); got != c.want {
			t.Errorf("%d of %v is %v, want %v", c.of, c.code, got, c.want)
		}
	}
}

// An end that is no more than the dust of rounding beside what was found is told as 0: no number that halving comes to
// is a third.
func TestEndsOfDust(t *testing.T) {
	third := 1. / 3
	p := &Program{Code: []Instruction{{Op: Input, A: 0}, {Op: Literal, Value: third}, {Op: Subtract, A: 0, B: 1},
		{Op: Absolute, A: 2}}, Outputs: []Output{{3, 1}}, Cells: 2}
	low, high := []float64{0, 0}, []float64{1, 0}
	p.Spread(low, high)
	if low[1] != 0 || high[1] != float64(1-third) {
		t.Errorf("it is %g to %g, want 0 to 2/3", low[1], high[1])
	}
}
