package sheet_test

import (
	"math"
	"math/big"
	"testing"

	"acreleaf/calc/sheet"
)

// angles makes a function of the arccosine that a sheet works.
func angles(t testing.TB) func(x float64) float64 {
	t.Helper()
	s := build(t, "angle", func(s *sheet.Sheet) {
		x := s.Given("x", "", sheet.Field{Label: "Cosine", Low: -2, High: 2})
		s.Answer("angle", "", x.Arccosine(), sheet.Says{})
	})
	graph := &sheet.Graph{}
	use := graph.Add("angle", s, nil)
	if err := graph.Close(); err != nil {
		t.Fatal(err)
	}
	cells := make([]float64, graph.Program.Cells)
	angle, _ := use.Cell("angle")
	return func(x float64) float64 {
		use.Set(cells, "x", x)
		graph.Program.Run(cells)
		return cells[angle]
	}
}

func TestArccosineAtItsEnds(t *testing.T) {
	arccos := angles(t)
	for _, c := range []struct{ x, want float64 }{
		{1, 0}, {-1, math.Pi}, {0, math.Pi / 2}, {math.Copysign(0, -1), math.Pi / 2},
	} {
		if got := arccos(c.x); got != c.want {
			t.Errorf("arccos %v is %v, want %v", c.x, got, c.want)
		}
	}
	for _, x := range []float64{math.Nextafter(1, 2), math.Nextafter(-1, -2), 2, -2, math.NaN()} {
		if got := arccos(x); !math.IsNaN(got) {
			t.Errorf("arccos %v is %v, want no number", x, got)
		}
	}
}

// ulpsOff says how far an angle lies from the arccosine of x, in units of its last place: with 200 bits, the distance
// is that of the cosines over the sine.
func ulpsOff(x, angle float64) float64 {
	const precision = 200
	wide := func(v float64) *big.Float { return new(big.Float).SetPrec(precision).SetFloat64(v) }
	square := new(big.Float).Mul(wide(angle), wide(angle))
	cosine, sine, term := wide(0), wide(0), wide(1)
	for n := 1; n < 60; n++ { // the power series of both, a term of one and then of the other
		if n%2 == 1 {
			cosine.Add(cosine, term)
			term.Quo(term, wide(float64(n)))
			sine.Add(sine, term)
			continue
		}
		term.Quo(term, wide(-float64(n)))
		term.Mul(term, square)
	}
	sine.Mul(sine, wide(angle))
	off, _ := new(big.Float).Quo(cosine.Sub(cosine, wide(x)), sine).Float64()
	return math.Abs(off) / (math.Nextafter(angle, 4) - angle)
}

// The series is good to a half of the last place and the few steps after it add their own, so that an angle is within
// 2 of the last place of what it is called for.
func TestArccosineIsWithinTwoOfTheLastPlace(t *testing.T) {
	const bound = 2
	arccos := angles(t)
	worst, at := 0.0, 0.0
	try := func(x float64) {
		if off := ulpsOff(x, arccos(x)); off > worst {
			worst, at = off, x
		}
	}
	const steps = 4_001
	for i := 1; i < steps; i++ {
		try(2*float64(i)/steps - 1)
	}
	for k := 1; k < 50; k++ { // ever nearer to the ends, the middle, and the seams at one half
		small := math.Ldexp(1, -k)
		for _, x := range []float64{1 - small, small - 1, small, -small, 0.5 + small/2, 0.5 - small/4, -0.5 - small/2} {
			if x > -1 && x < 1 {
				try(x)
			}
		}
	}
	t.Logf("worst: %.2f of the last place, at %v", worst, at)
	if worst > bound {
		t.Errorf("arccos %v is off by %.2f of its last place, more than %d", at, worst, bound)
	}
}

// The library's own Acos loses digits near 1 and -1, where it subtracts nearly equal numbers; by the half angle its
// Atan2 does not, and shares no step with the series.
func TestArccosineAgreesWithTheHalfAngle(t *testing.T) {
	const bound = 4
	arccos := angles(t)
	last := math.Inf(1)
	for i := range 100_001 {
		x := float64(i)/50_000 - 1
		got, want := arccos(x), 2*math.Atan2(math.Sqrt(1-x), math.Sqrt(1+x))
		if off := math.Abs(got - want); off > bound*(math.Nextafter(want, 4)-want) {
			t.Errorf("arccos %v is %v, by the half angle %v", x, got, want)
		}
		if off := math.Abs(got - math.Acos(x)); off > 2e-14 {
			t.Errorf("arccos %v is %v, the library's %v", x, got, math.Acos(x))
		}
		if got > last {
			t.Errorf("arccos rises to %v at %v", got, x)
		}
		last = got
	}
}
