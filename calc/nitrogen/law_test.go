package nitrogen_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
)

// A response says how an answer follows a given: up, down, or not at all.
type response struct {
	sheet  *sheet.Sheet
	answer string
	given  string
	way    int // 1 up, -1 down, 0 level
}

var responses = []response{
	{nitrogen.NitrateBasis, "nitrogen", "reported", 1}, {nitrogen.NitrateBasis, "nitrate", "reported", 1},
	{nitrogen.SoilNitrogen, "nitrogen", "nitrate", 1}, {nitrogen.SoilNitrogen, "nitrogen", "depth", 1},
	{nitrogen.SoilNitrogen, "nitrogen", "bulk-density", 1},
	{nitrogen.WaterNitrogen, "nitrogen", "nitrate", 1}, {nitrogen.WaterNitrogen, "nitrogen", "water", 1},
	{nitrogen.WaterNitrogen, "per-inch", "nitrate", 1}, {nitrogen.WaterNitrogen, "per-inch", "water", 0},
	{nitrogen.TreeRate, "nitrogen", "rate", 1}, {nitrogen.TreeRate, "nitrogen", "trees", 1},
	{nitrogen.AcreRate, "rate", "nitrogen", 1}, {nitrogen.AcreRate, "rate", "trees", -1},
}

// standIns are givens that count in place of others, which then change nothing.
var standIns = map[*sheet.Sheet]string{nitrogen.WaterApplied: "known"}

// drawWithout draws until no stand-in is stated.
func drawWithout(t testing.TB, r *rand.Rand, s *sheet.Sheet) map[string]float64 {
	t.Helper()
	for {
		values, _ := drawTaken(t, r, s)
		if _, stated := values[standIns[s]]; !stated {
			return values
		}
	}
}

func TestAnswersFollowTheirGivens(t *testing.T) {
	r := random(t)
	for _, c := range responses {
		g := c.sheet.FindGiven(c.given)
		var moved int
		for range draws {
			values := drawWithout(t, r, c.sheet)
			a, b := within(r, g), within(r, g)
			low := work(t, c.sheet, with(values, c.given, min(a, b))).Value(c.answer).Value
			high := work(t, c.sheet, with(values, c.given, max(a, b))).Value(c.answer).Value
			if low != high {
				moved++
			}
			if c.way > 0 && low > high || c.way < 0 && low < high || c.way == 0 && low != high {
				t.Fatalf("%s.%s is %v at %s = %v and %v at %v; the rest is %v", c.sheet.Name, c.answer,
					low, c.given, min(a, b), high, max(a, b), values)
			}
		}
		if c.way != 0 && moved < draws/50 {
			t.Errorf("%s.%s moved with %s in %d of %d draws only", c.sheet.Name, c.answer, c.given, moved, draws)
		}
	}
}

func TestTreesThinOutWithDistance(t *testing.T) {
	r := random(t)
	for range draws {
		pattern, tree := float64(r.IntN(5)), 1+199*r.Float64()
		row := 1 + 199*r.Float64()
		if pattern == 0 {
			row = tree
		}
		near := density(t, pattern, tree, row)
		far := density(t, pattern, min(200, 1.1*tree), min(200, 1.1*row))
		if far.Value("trees").Value >= near.Value("trees").Value || far.Value("area").Value <= near.Value("area").Value {
			t.Fatalf("pattern %v: %v by %v has %v, and wider %v", pattern, tree, row, near.Value("trees"), far.Value("trees"))
		}
	}
}

// A scaling says by what power of k an answer grows when the givens named grow k times.
type scaling struct {
	sheet  *sheet.Sheet
	answer string
	power  int
	givens []string
}

var scalings = []scaling{
	{nitrogen.NitrateBasis, "nitrogen", 1, []string{"reported"}},
	{nitrogen.SoilNitrogen, "nitrogen", 1, []string{"nitrate"}},
	{nitrogen.SoilNitrogen, "nitrogen", 1, []string{"depth"}},
	{nitrogen.WaterNitrogen, "nitrogen", 1, []string{"nitrate"}},
	{nitrogen.WaterNitrogen, "nitrogen", 1, []string{"water"}},
	{nitrogen.WaterNitrogen, "nitrogen", 2, []string{"nitrate", "water"}},
	{nitrogen.WaterNitrogen, "per-inch", 1, []string{"nitrate"}},
	{nitrogen.TreeDensity, "trees", -2, []string{"tree", "row"}},
	{nitrogen.TreeDensity, "area", 2, []string{"tree", "row"}},
	{nitrogen.TreeRate, "nitrogen", 1, []string{"rate"}},
	{nitrogen.TreeRate, "nitrogen", 1, []string{"trees"}},
	{nitrogen.AcreRate, "rate", 1, []string{"nitrogen"}},
	{nitrogen.AcreRate, "rate", -1, []string{"trees"}},
}

// Twice the givens give the answer times a power of two to the last bit, since doubling rounds nothing.
func TestAnswersScaleWithTheirGivens(t *testing.T) {
	r := random(t)
	for _, c := range scalings {
		for range draws {
			values := drawWithout(t, r, c.sheet)
			doubled := values
			for _, name := range c.givens {
				g := c.sheet.FindGiven(name)
				if _, stated := values[name]; !stated {
					continue
				}
				half := g.Low + r.Float64()*(g.High/2-g.Low)
				if name == "row" && values["pattern"] == 0 {
					half = values["tree"]
				}
				values = with(values, name, half)
				doubled = with(doubled, name, 2*half)
			}
			once, err := evaluate(c.sheet, values)
			if errors.As(err, new(*sheet.Refused)) {
				continue
			}
			twice := work(t, c.sheet, doubled)
			want := math.Ldexp(once.Value(c.answer).Value, c.power)
			if got := twice.Value(c.answer).Value; got != want {
				t.Fatalf("%s.%s of %v is %v, want %v", c.sheet.Name, c.answer, doubled, got, want)
			}
		}
	}
}

// density works a spacing that the pattern takes.
func density(t testing.TB, pattern, tree, row float64) sheet.Outcome {
	t.Helper()
	return work(t, nitrogen.TreeDensity, map[string]float64{"pattern": pattern, "tree": tree, "row": row})
}
