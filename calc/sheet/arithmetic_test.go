package sheet_test

import (
	"math"
	"testing"

	"acreleaf/calc/sheet"
)

// worked evaluates one formula of plain numbers a and b.
func worked(t testing.TB, a, b float64, f func(s *sheet.Sheet, a, b *sheet.Given) sheet.Value) float64 {
	t.Helper()
	s := build(t, "formula", func(s *sheet.Sheet) {
		any := sheet.Field{Label: "Any", Low: -1e308, High: 1e308}
		s.Answer("answer", "", f(s, s.Given("a", "", any), s.Given("b", "", any)), sheet.Says{})
	})
	o, err := s.Evaluate(map[string]float64{"a": a, "b": b})
	if err != nil {
		t.Fatal(err)
	}
	return o.Value("answer").Value
}

func TestOperations(t *testing.T) {
	type given = *sheet.Given
	yes := func(s *sheet.Sheet, question sheet.Value) sheet.Value {
		return sheet.If(question, s.Number(1), s.Number(0))
	}
	for _, c := range []struct {
		name    string
		a, b    float64
		formula func(s *sheet.Sheet, a, b given) sheet.Value
		want    float64
	}{
		{"plus", 2, 3, func(_ *sheet.Sheet, a, b given) sheet.Value { return a.Plus(b) }, 5},
		{"minus", 2, 3, func(_ *sheet.Sheet, a, b given) sheet.Value { return a.Minus(b) }, -1},
		{"times", 2, 3, func(_ *sheet.Sheet, a, b given) sheet.Value { return a.Times(b) }, 6},
		{"over", 3, 2, func(_ *sheet.Sheet, a, b given) sheet.Value { return a.Over(b) }, 1.5},
		{"least", 2, 3, func(_ *sheet.Sheet, a, b given) sheet.Value { return a.Least(b) }, 2},
		{"most", 2, 3, func(_ *sheet.Sheet, a, b given) sheet.Value { return a.Most(b) }, 3},
		{"up", 2.000001, 0, func(_ *sheet.Sheet, a, _ given) sheet.Value { return a.RoundUp() }, 3},
		{"up, whole", 2, 0, func(_ *sheet.Sheet, a, _ given) sheet.Value { return a.RoundUp() }, 2},
		{"up, below nothing", -2.9, 0, func(_ *sheet.Sheet, a, _ given) sheet.Value { return a.RoundUp() }, -2},
		{"down", 2.999999, 0, func(_ *sheet.Sheet, a, _ given) sheet.Value { return a.RoundDown() }, 2},
		{"down, below nothing", -2.1, 0, func(_ *sheet.Sheet, a, _ given) sheet.Value { return a.RoundDown() }, -3},
		{"size", -2.5, 0, func(_ *sheet.Sheet, a, _ given) sheet.Value { return a.Size() }, 2.5},
		{"root", 2, 0, func(_ *sheet.Sheet, a, _ given) sheet.Value { return a.SquareRoot() }, math.Sqrt2},
		{"less, yes", 2, 3, func(s *sheet.Sheet, a, b given) sheet.Value { return yes(s, a.Less(b)) }, 1},
		{"less, same", 3, 3, func(s *sheet.Sheet, a, b given) sheet.Value { return yes(s, a.Less(b)) }, 0},
		{"at most, same", 3, 3, func(s *sheet.Sheet, a, b given) sheet.Value { return yes(s, a.AtMost(b)) }, 1},
		{"at most, no", 4, 3, func(s *sheet.Sheet, a, b given) sheet.Value { return yes(s, a.AtMost(b)) }, 0},
		{"more, yes", 4, 3, func(s *sheet.Sheet, a, b given) sheet.Value { return yes(s, a.More(b)) }, 1},
		{"more, same", 3, 3, func(s *sheet.Sheet, a, b given) sheet.Value { return yes(s, a.More(b)) }, 0},
		{"at least, same", 3, 3, func(s *sheet.Sheet, a, b given) sheet.Value { return yes(s, a.AtLeast(b)) }, 1},
		{"at least, no", 2, 3, func(s *sheet.Sheet, a, b given) sheet.Value { return yes(s, a.AtLeast(b)) }, 0},
		{"same, to the last bit", 3, math.Nextafter(3, 4),
			func(s *sheet.Sheet, a, b given) sheet.Value { return yes(s, a.Same(b)) }, 0},
		{"both", 2, 3, func(s *sheet.Sheet, a, b given) sheet.Value {
			return yes(s, a.Less(b).And(b.Less(a)))
		}, 0},
		{"either", 2, 3, func(s *sheet.Sheet, a, b given) sheet.Value {
			return yes(s, a.Less(b).Or(b.Less(a)))
		}, 1},
		{"not", 2, 3, func(s *sheet.Sheet, a, b given) sheet.Value { return yes(s, a.Less(b).Not()) }, 0},
	} {
		if got := worked(t, c.a, c.b, c.formula); got != c.want {
			t.Errorf("%s of %v and %v is %v, want %v", c.name, c.a, c.b, got, c.want)
		}
	}
}

// A power is that many products, in order: another way to work it would round otherwise.
func TestPowerIsRepeatedMultiplication(t *testing.T) {
	for n := 2; n <= 8; n++ {
		var differs bool
		for _, x := range []float64{1.1, 0.7, -3.3, 1e-9, 123.456, math.Pi} {
			want := x
			for range n - 1 {
				want = float64(want * x)
			}
			got := worked(t, x, 0, func(_ *sheet.Sheet, a, _ *sheet.Given) sheet.Value { return a.Power(n) })
			if got != want {
				t.Errorf("%v to the power %d is %v, want %v", x, n, got, want)
			}
			differs = differs || got != math.Pow(x, float64(n))
		}
		if n > 4 && !differs {
			t.Errorf("to the power %d, products and math.Pow agree on every number tried: the test sees nothing", n)
		}
	}
}

func TestPowerAndRootCarryTheUnit(t *testing.T) {
	s := build(t, "square", func(s *sheet.Sheet) {
		side := s.Given("side", "ft", number)
		s.Answer("ground", "m2", side.Power(2), sheet.Says{})
		s.Answer("back", "ft", s.Given("field", "ft2", number).SquareRoot(), sheet.Says{})
	})
	o, err := s.Evaluate(map[string]float64{"side": 10, "field": 144})
	if err != nil {
		t.Fatal(err)
	}
	if got := o.Value("ground").String(); got != "9.29 m2" {
		t.Errorf("10 ft squared is %s", got)
	}
	if got := o.Value("back").Value; got != 12 {
		t.Errorf("the root of 144 ft2 is %v ft", got)
	}
}

// Sums, comparisons and the ways of an If take a quantity of another unit as what it is.
func TestTermsOfOneDimensionAreConverted(t *testing.T) {
	s := build(t, "depths", func(s *sheet.Sheet) {
		a, b := s.Given("a", "ft", number), s.Given("b", "in", number)
		s.Answer("sum", "ft", a.Plus(b), sheet.Says{})
		s.Answer("gap", "in", a.Minus(b), sheet.Says{})
		s.Answer("deeper", "ft", a.Most(b), sheet.Says{})
		s.Answer("chosen", "yd", sheet.If(a.More(b), a, b), sheet.Says{})
		s.Answer("whole", "in", a.In("in").RoundUp(), sheet.Says{})
	})
	for _, c := range []struct{ a, b, sum, gap, deeper, chosen, whole float64 }{
		{3, 6, 3.5, 30, 3, 1, 36},
		{1, 18, 2.5, -6, 1.5, 0.5, 12},
		{1.02, 12, 2.02, 0.24, 1.02, 0.34, 13},
	} {
		o, err := s.Evaluate(map[string]float64{"a": c.a, "b": c.b})
		if err != nil {
			t.Fatal(err)
		}
		for name, want := range map[string]float64{
			"sum": c.sum, "gap": c.gap, "deeper": c.deeper, "chosen": c.chosen, "whole": c.whole,
		} {
			if got := o.Value(name).Value; math.Abs(got-want) > 1e-14*math.Abs(want)+1e-14 {
				t.Errorf("%s of %v ft and %v in is %v, want %v", name, c.a, c.b, got, want)
			}
		}
	}
}

func TestTableGivesTheFigureOfTheOption(t *testing.T) {
	s := build(t, "shares", func(s *sheet.Sheet) {
		way := s.Choice("way", []sheet.Option{{Name: "drip"}, {Name: "sprinkler"}, {Name: "flood"}},
			sheet.Field{Label: "How", Typical: 1})
		shares := map[string]float64{"flood": 50, "drip": 80, "sprinkler": 70}
		share := s.Table("share", "%", way, sheet.Cells(shares), tableFact)
		s.Answer("lost", "%", s.Number(1).Minus(share), sheet.Says{})
	})
	for i, want := range []float64{20, 30, 50} {
		o, err := s.Evaluate(map[string]float64{"way": float64(i)})
		if err != nil {
			t.Fatal(err)
		}
		if got := o.Value("lost").Value; math.Abs(got-want) > 1e-12 {
			t.Errorf("option %d loses %v %%, want %v", i, got, want)
		}
	}
}
