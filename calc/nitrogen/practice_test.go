package nitrogen_test

import (
	"math"
	"testing"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// The values of this file are common practice: what advisors carry in their heads. No publication stands behind them,
// so they check that the sheets agree with the trade, not that the trade is right.

func TestFieldRuleOfTwo(t *testing.T) {
	for _, c := range []struct{ ppm, top6, top12 float64 }{{5, 10, 20}, {10, 20, 40}, {15, 30, 60}, {20, 40, 80}} {
		nitrate := "nitrate=" + decimal(c.ppm) + " ppm NO3-N"
		if got := answer(t, nitrogen.SoilNitrogen, "nitrogen", "lb N/ac", nitrate, "depth=6 in"); got != c.top6 {
			t.Errorf("%v ppm over 6 in is %v lb N/ac, want %v", c.ppm, got, c.top6)
		}
		if got := answer(t, nitrogen.SoilNitrogen, "nitrogen", "lb N/ac", nitrate, "depth=1 ft"); got != c.top12 {
			t.Errorf("%v ppm over 1 ft is %v lb N/ac, want %v", c.ppm, got, c.top12)
		}
	}
}

func TestFieldFactorOfWater(t *testing.T) {
	exact := answer(t, nitrogen.WaterNitrogen, "nitrogen", "lb N/ac", "nitrate=1 ppm NO3-N", "water=1 in")
	if high := 0.23/exact - 1; high < 0.014 || high > 0.015 {
		t.Errorf("0.23 is %.2f %% above the exact %v; the sheet says 1.5 %%", 100*high, exact)
	}
	foot := answer(t, nitrogen.WaterNitrogen, "nitrogen", "lb N/ac", "nitrate=10 ppm NO3-N", "water=12 in")
	if math.Round(foot) != 27 {
		t.Errorf("10 ppm in 12 in of water is %v lb N/ac, want about 27", foot)
	}
}

// Residual nitrate of 15 to 20 ppm in the top 6 in is 30 to 40 lb N/ac, enough for a first-leaf year.
func TestResidualNitrateOfTheTop(t *testing.T) {
	o := enter(t, nitrogen.SoilNitrogen, "nitrate=15 to 20 ppm NO3-N", "depth=6 in")
	if got := o.Text("nitrogen"); got != "30 to 40 lb N/ac present" {
		t.Errorf("15 to 20 ppm in 6 in is %s", got)
	}
}

// 10 to 15 ppm in 6 to 12 in of water supplies 14 to 41 lb N/ac.
func TestWaterOfASeason(t *testing.T) {
	got := enter(t, nitrogen.WaterNitrogen, "nitrate=10 to 15 ppm NO3-N", "water=6 to 12 in").Range("nitrogen")
	if math.Round(got.Low) != 14 || math.Round(got.High) != 41 {
		t.Errorf("10 to 15 ppm in 6 to 12 in is %v", got)
	}
}

// A first-leaf need of 3 to 4 oz a tree is 25 to 35 lb N/ac on common spacings: at 14 by 22 ft it is 26.5 to 35.4.
func TestFirstLeafNeedOnCommonSpacings(t *testing.T) {
	trees := answer(t, nitrogen.TreeDensity, "trees", "trees/ac", "pattern=rectangle", "tree=14 ft", "row=22 ft")
	got := enter(t, nitrogen.TreeRate, "rate=3 to 4 oz N/tree", "trees="+decimal(trees)+" trees/ac").Range("nitrogen")
	if got.String() != "26.5 to 35.4 lb N/ac fed" {
		t.Errorf("3 to 4 oz at %v trees/ac is %s, want 26.5 to 35.4 lb N/ac", trees, got)
	}
}

func TestTreesOfCommonSpacings(t *testing.T) {
	for _, c := range []struct {
		tree, row string
		want      float64
	}{{"18 ft", "22 ft", 110}, {"14 ft", "22 ft", 141}} {
		got := answer(t, nitrogen.TreeDensity, "trees", "trees/ac", "pattern=rectangle", "tree="+c.tree, "row="+c.row)
		if math.Round(got) != c.want {
			t.Errorf("%s by %s is %v trees/ac, want %v", c.tree, c.row, got, c.want)
		}
	}
}

func TestOuncesOfFirstLeaf(t *testing.T) {
	for _, c := range []struct{ rate, trees, want string }{
		{"3 oz N/tree", "110 trees/ac", "20.6 lb N/ac fed"},
		{"4 oz N/tree", "110 trees/ac", "27.5 lb N/ac fed"},
		{"3 oz N/tree", "141.4 trees/ac", "26.5 lb N/ac fed"},
		{"4 oz N/tree", "141.4 trees/ac", "35.4 lb N/ac fed"}, // 35.35, and a reader sees one digit fewer
	} {
		o := work(t, nitrogen.TreeRate, write(t, nitrogen.TreeRate, "rate="+c.rate, "trees="+c.trees))
		if got := o.Value("nitrogen").String(); got != c.want {
			t.Errorf("%s at %s is %s, want %s", c.rate, c.trees, got, c.want)
		}
	}
}

// The field rule says that 6 in of soil on an acre weigh 2,000,000 lb; at the bulk density of such a soil the rule and
// the weighing must agree, which ties the two ways of the sheet to each other.
func TestRuleAndWeighingAgreeForTheSoilOfTheRule(t *testing.T) {
	weight := unit.MustParse("lb soil/ac per 6 in")
	factor, err := weight.To(unit.MustParse("g soil/cm3"))
	if err != nil {
		t.Fatal(err)
	}
	density := factor.Apply(2_000_000)
	if math.Abs(density-1.47) > 0.005 {
		t.Errorf("the rule's soil weighs %v g/cm3; the note says 1.47", density)
	}
	ruled := work(t, nitrogen.SoilNitrogen, map[string]float64{"nitrate": 12, "depth": 18})
	weighed := work(t, nitrogen.SoilNitrogen, map[string]float64{"nitrate": 12, "depth": 18, "bulk-density": density})
	alike(t, "the rule and the weighing", ruled.Value("nitrogen").Value, weighed.Value("nitrogen").Value)
}

// alike fails when two numbers that should be one differ by more than rounding.
func alike(t testing.TB, what string, a, b float64) {
	t.Helper()
	if math.IsNaN(a) || math.IsNaN(b) || math.Abs(a-b) > 1e-12*math.Max(math.Abs(a), math.Abs(b)) {
		t.Errorf("%s: %v and %v", what, a, b)
	}
}

func TestConstantsAreThoseOfTheUnits(t *testing.T) {
	share, err := unit.Share("N", "NO3")
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []*sheet.Sheet{nitrogen.NitrateBasis, nitrogen.SoilNitrogen, nitrogen.WaterNitrogen} {
		n, no3 := constant(t, s, "nitrogen-weight").Quantity, constant(t, s, "nitrate-weight").Quantity
		alike(t, s.Name+": nitrogen in nitrate", n.Value/no3.Value, share)
	}
	acre, err := unit.MustParse("ac").To(unit.MustParse("ft2"))
	if err != nil {
		t.Fatal(err)
	}
	if got := constant(t, nitrogen.TreeDensity, "acre").Quantity.Value; got != acre.Apply(1) {
		t.Errorf("the acre of tree-density has %v ft2, that of the units %v", got, acre.Apply(1))
	}
	pound, err := unit.MustParse("lb").To(unit.MustParse("oz"))
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []*sheet.Sheet{nitrogen.TreeRate, nitrogen.AcreRate} {
		if got := constant(t, s, "ounces-in-pound").Quantity.Value; got != pound.Apply(1) {
			t.Errorf("the pound of %s has %v oz, that of the units %v", s.Name, got, pound.Apply(1))
		}
	}
}
