package unit

import (
	"math/rand/v2"
	"testing"
)

// someDimension makes a dimension of small powers.
func someDimension(r *rand.Rand) Dimension {
	var d Dimension
	for range r.IntN(5) {
		d.powers[r.IntN(int(bases))] = int16(r.IntN(7) - 3)
	}
	return d
}

func TestDimensionAlgebra(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	var plain Dimension
	for range 2000 {
		a, b, c := someDimension(r), someDimension(r), someDimension(r)
		laws := map[string]bool{
			"a·b = b·a":         a.Times(b) == b.Times(a),
			"(a·b)·c = a·(b·c)": a.Times(b).Times(c) == a.Times(b.Times(c)),
			"a·1 = a":           a.Times(plain) == a,
			"a/a = 1":           a.Over(a).Plain(),
			"(a·b)/b = a":       a.Times(b).Over(b) == a,
			"a³ = a·a·a":        a.Power(3) == a.Times(a).Times(a),
			"a^-2 = 1/(a·a)":    a.Power(-2) == plain.Over(a).Over(a),
			"a^0 = 1":           a.Power(0).Plain(),
			"a fits a":          a.Fits(a) && a.LeavesOut(a),
			"fits means leaves": !a.Fits(b) || a.LeavesOut(b),
			"said in words":     a.String() != "",
		}
		root, even := a.Power(2).Root()
		laws["√(a²) = a"] = even && root == a
		for law, holds := range laws {
			if !holds {
				t.Fatalf("%s does not hold for a = %v, b = %v, c = %v", law, a, b, c)
			}
		}
	}
}

func TestRootOfOddPower(t *testing.T) {
	for _, text := range []string{"ft", "ft3", "lb N/ac", "ft2/tree"} {
		if root, even := MustParse(text).Dimension().Root(); even {
			t.Errorf("the root of %s is said to be %v", text, root)
		}
	}
}

func TestFitsAndLeavesOut(t *testing.T) {
	cases := []struct {
		given, wanted   string
		fits, leavesOut bool
	}{
		{"lb N/ac", "lb N/ac", true, true},
		{"kg N/ha", "lb N/ac", true, true}, // the scale is no part of the dimension
		{"ppm NO3-N", "ppm NO3-N of soil", true, true},
		{"mg/L NH4-N", "mg NH4-N/L", true, true},
		{"lb/ac per 6 in", "lb soil/ac per 6 in", true, true},
		{"lb/ac", "lb product/ac", true, true},
		{"lb N/1000 lb", "lb N/1000 lb crop", true, true},
		{"lb/lb N", "lb lime/lb N", true, true},
		{"trees/ac", "trees/ac", true, true},
		{"gal/ac", "in", true, true}, // a volume on an area is a depth

		{"lb/ac", "lb N/ac", false, true}, // a nutrient is never left out of a given
		{"ppm", "ppm NO3-N", false, true},
		{"lb/1000 lb", "lb N/1000 lb crop", false, true},
		{"lb product/lb", "lb product/lb N", false, true},

		{"lb N/ac", "lb/ac", false, false}, // never the other way round
		{"ppm NO3-N of soil", "ppm NO3-N", false, false},
		{"lb product/ac", "lb/ac", false, false},
		{"lb product/ac", "lb N/ac", false, false},
		{"lb product/ac", "lb soil/ac", false, false},
		{"ppm NO3-N of soil", "ppm NO3-N of water", false, false},
		{"ppm NO3", "ppm NO3-N", false, false},
		{"ppm NH4-N", "ppm NO3-N", false, false},
		{"ppm NO2-N", "ppm NO3-N", false, false},
		{"ppm N", "ppm NO3-N", false, false}, // all nitrogen is more than that of nitrate
		{"lb NO3-N/ac", "lb N/ac", false, false},
		{"lb kernels/ac", "lb in-shell/ac", false, false},
		{"lb kernels/ac", "lb crop/ac", false, false},
		{"lb/ac", "lb kernels/ac", true, true},
		{"lb P/ac", "lb P2O5/ac", false, false},
		{"lb N/tree", "lb N/ac", false, false},
		{"oz/tree", "oz", false, false},
		{"lb", "lb/ac", false, false},
		{"in", "ft2", false, false},
		{"", "ppm NO3-N of soil", false, true},
		{"", "trees", false, false},

		{"lb N/ac fed", "lb N/ac fed", true, true}, // an account may be left unsaid, and no other may be said
		{"lb N/ac", "lb N/ac fed", true, true},
		{"lb/ac", "lb N/ac fed", false, true},
		{"%", "% taken up/fed", true, true},
		{"lb N/ac taken up", "lb N/ac fed", false, false},
		{"lb N/ac present", "lb N/ac fed", false, false},
		{"lb N/ac fed", "lb N/ac taken up", false, false},
		{"lb N/ac fed", "lb N/ac", false, false},
		{"% taken up/fed", "%", false, false},
		{"% fed", "% taken up/fed", false, false},
	}
	for _, c := range cases {
		given, wanted := MustParse(c.given).Dimension(), MustParse(c.wanted).Dimension()
		if got := given.Fits(wanted); got != c.fits {
			t.Errorf("%q fits %q: got %v", c.given, c.wanted, got)
		}
		if got := given.LeavesOut(wanted); got != c.leavesOut {
			t.Errorf("%q leaves out of %q: got %v", c.given, c.wanted, got)
		}
	}
}

// Two units tell the same accounts, whatever else they tell.
func TestSameAccounts(t *testing.T) {
	for _, c := range []struct {
		a, b string
		same bool
	}{
		{"lb N/ac fed", "lb N/ac fed", true}, {"lb N/ac fed", "kg NO3/tree fed", true}, {"lb N/ac", "ppm", true},
		{"lb N/ac fed", "lb N/ac", false}, {"lb N/ac", "lb N/ac taken up", false}, {"lb N/ac", "lb N/ac present", false},
		{"lb N/ac fed", "lb N/ac present", false}, {"% taken up/fed", "% taken up/fed", true}, {"% taken up/fed", "%", false},
	} {
		if got := MustParse(c.a).Dimension().SameAccounts(MustParse(c.b).Dimension()); got != c.same {
			t.Errorf("%s and %s: %v", c.a, c.b, got)
		}
	}
}

// A count may be left out where nothing but a number is left.
func TestCountsMayBeLeftOut(t *testing.T) {
	for _, count := range []string{"trees", "emitters", "feeds", "nuts", "head", "hives", "bales"} {
		if !MustParse("1/ac").Shorter(MustParse(count + "/ac")) {
			t.Errorf("1/ac is not short for %s/ac", count)
		}
	}
	for _, other := range []string{"1/ac", "lb/ac", "trees/ha", "gal/ac"} {
		if MustParse("1/ac").Shorter(MustParse(other)) {
			t.Errorf("1/ac is short for %s", other)
		}
	}
}

func TestEverySubstanceIsCarrierOrNutrient(t *testing.T) {
	for b := firstSubstance; b < firstAccount; b++ {
		plain := Dimension{}
		if got, want := plain.Fits(b.of(1)), b < firstNutrient; got != want {
			t.Errorf("%s may be left unsaid: got %v, want %v", substanceOf(b).symbol, got, want)
		}
	}
}

func TestDimensionInWords(t *testing.T) {
	cases := map[string]string{
		"":                     "a plain number",
		"%":                    "a plain number",
		"lb/lb":                "a plain number",
		"ft":                   "a length",
		"ac":                   "an area",
		"gal":                  "a volume",
		"lb":                   "a mass",
		"h":                    "a time",
		"$":                    "money",
		"trees":                "trees",
		"feed":                 "feeds",
		"lb N":                 "mass of N",
		"lb N/ac":              "mass of N on an area",
		"kg P2O5/ha":           "mass of P2O5 on an area",
		"lb/ac":                "mass on an area",
		"trees/ac":             "trees on an area",
		"ft2/tree":             "area for each tree",
		"oz N/tree":            "mass of N for each tree",
		"oz N/tree/feed":       "mass of N for each tree for each feed",
		"gal/h/emitter":        "volume in a time for each emitter",
		"in/h":                 "length in a time",
		"lb N/ac/year":         "mass of N on an area in a time",
		"ppm N":                "share of N",
		"ppm NO3-N of soil":    "share of NO3-N in soil",
		"ppm of water":         "share in water",
		"lb N/1000 lb crop":    "share of N in crop",
		"g/cm3":                "mass in a volume",
		"lb soil/(ac·in)":      "mass of soil in a volume",
		"lb N/gal product":     "mass of N in a volume of product",
		"$/lb":                 "money for each mass",
		"$/lb N":               "money for each mass of N",
		"gal product/lb N":     "volume of product for each mass of N",
		"lb CaCO3/lb N":        "mass of lime for each mass of N",
		"lb/lb N":              "mass for each mass of N",
		"1/ac":                 "number on an area",
		"1/lb N":               "number for each mass of N",
		"1/feed":               "number for each feed",
		"1/ft":                 "number for each length",
		"lb2":                  "mass squared",
		"lb·ft":                "mass times length",
		"in4":                  "length to the power 4",
		"1/h3":                 "number in a time cubed",
		"lb N·lb P/ac":         "mass squared of N and P on an area",
		"year·tree":            "time times trees",
		"ppm NO3-N·lb soil/ac": "mass of NO3-N and soil on an area",
		"psi":                  "a pressure",
		"kWh":                  "an energy",
		"hp":                   "a power",
		"dS/m":                 "conductance for each length",
		"hives/ac":             "hives on an area",
		"head":                 "head",
		"lb N/ac fed":          "mass of N on an area fed",
		"oz N/tree taken up":   "mass of N for each tree taken up",
		"lb N/ac present":      "mass of N on an area present",
		"% taken up/fed":       "share taken up of what is fed",
	}
	for text, want := range cases {
		if got := MustParse(text).Dimension().String(); got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
}
