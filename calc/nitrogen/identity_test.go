package nitrogen_test

import (
	"math"
	"strconv"
	"testing"

	"acreleaf/calc/nitrogen"
)

// Ounces a tree to pounds an acre and back is where it started.
func TestTreeRateAndAcreRateAreInverse(t *testing.T) {
	r := random(t)
	for range draws {
		trees := 1 + 2999*r.Float64()
		nitrogenGiven := r.Float64() * min(500, 80*trees/16)
		rate := work(t, nitrogen.AcreRate, map[string]float64{"nitrogen": nitrogenGiven, "trees": trees}).Value("rate").Value
		back := work(t, nitrogen.TreeRate, map[string]float64{"rate": rate, "trees": trees}).Value("nitrogen").Value
		alike(t, "pounds, ounces, pounds", nitrogenGiven, back)
	}
}

// A number on a report as NO3, written on as NO3-N and read again, is the number on the report.
func TestNitrateBasisThereAndBack(t *testing.T) {
	r := random(t)
	for range draws {
		reported := 1000 * r.Float64()
		as := work(t, nitrogen.NitrateBasis, map[string]float64{"reported": reported, "of": 1}).Value("nitrogen")
		text := "reported=" + strconv.FormatFloat(as.Value, 'f', -1, 64) + " ppm NO3-N"
		back := work(t, nitrogen.NitrateBasis, write(t, nitrogen.NitrateBasis, text, "of=water"))
		alike(t, "NO3 there and back", reported, back.Value("nitrate").Value)
		alike(t, "NO3-N there and back", as.Value, back.Value("nitrogen").Value)
	}
}

func TestNothingComesOfNothing(t *testing.T) {
	zero := func(name string, got float64) {
		t.Helper()
		if math.Float64bits(got) != 0 {
			t.Errorf("%s is %v, want 0", name, got)
		}
	}
	r := random(t)
	for range draws / 5 {
		for _, s := range nitrogen.Shelf() {
			values, _ := drawTaken(t, r, s)
			switch s {
			case nitrogen.NitrateBasis:
				zero(s.Name, work(t, s, with(values, "reported", 0)).Value("nitrogen").Value)
			case nitrogen.SoilNitrogen, nitrogen.WaterNitrogen:
				zero(s.Name, work(t, s, with(values, "nitrate", 0)).Value("nitrogen").Value)
			case nitrogen.TreeRate:
				zero(s.Name, work(t, s, with(values, "rate", 0)).Value("nitrogen").Value)
			case nitrogen.AcreRate:
				zero(s.Name, work(t, s, with(values, "nitrogen", 0)).Value("rate").Value)
			case nitrogen.SeasonBudget:
				zero(s.Name, work(t, s, with(with(values, "need", 0), "efficiency", 70)).Value("apply").Value)
			}
		}
		o := work(t, nitrogen.WaterNitrogen, map[string]float64{"nitrate": 200 * r.Float64(), "water": 0})
		zero("no water", o.Value("nitrogen").Value)
	}
}

// Two layers sampled one below the other hold what the two hold.
func TestLayersAdd(t *testing.T) {
	r := random(t)
	for range draws {
		values, _ := drawTaken(t, r, nitrogen.SoilNitrogen)
		top, below := 1+35*r.Float64(), 1+35*r.Float64()
		layer := func(depth float64) float64 {
			return work(t, nitrogen.SoilNitrogen, with(values, "depth", depth)).Value("nitrogen").Value
		}
		alike(t, "two layers", layer(top)+layer(below), layer(top+below))
	}
}

const square, rectangle, hexagon, quincunx, doubleRow = 0, 1, 2, 3, 4

func TestPatternsCompare(t *testing.T) {
	for i, name := range []string{"square", "rectangle", "hexagon", "quincunx", "double-row"} {
		if got := nitrogen.TreeDensity.FindGiven("pattern").Choices[i].Name; got != name {
			t.Fatalf("pattern %d is %s, want %s", i, got, name)
		}
	}
	r := random(t)
	for range draws {
		tree, row := 1+199*r.Float64(), 1+199*r.Float64()
		trees := func(pattern, row float64) float64 { return density(t, pattern, tree, row).Value("trees").Value }
		alike(t, "a hexagon holds 2/√3 of a square", trees(hexagon, tree)/trees(square, tree), 2/math.Sqrt(3))
		alike(t, "a rectangle of equal sides is a square", trees(rectangle, tree), trees(square, tree))
		alike(t, "a quincunx doubles the rectangle", trees(quincunx, row), 2*trees(rectangle, row))
		alike(t, "a double row doubles the rectangle", trees(doubleRow, row), 2*trees(rectangle, row))
		alike(t, "a hexagon has its own rows", trees(hexagon, row), trees(hexagon, tree))
		turned := density(t, rectangle, row, tree).Value("trees").Value
		alike(t, "a rectangle may be turned", trees(rectangle, row), turned)

		without := map[string]float64{"pattern": quincunx, "tree": tree}
		alike(t, "a quincunx without a row is of a square",
			work(t, nitrogen.TreeDensity, without).Value("trees").Value, trees(quincunx, tree))
	}
}

func TestGroundAndTreesMakeAnAcre(t *testing.T) {
	r := random(t)
	for range draws {
		_, o := drawTaken(t, r, nitrogen.TreeDensity)
		alike(t, "ground × trees", o.Value("area").Value*o.Value("trees").Value, 43_560)
	}
}
