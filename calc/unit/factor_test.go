package unit

import (
	"errors"
	"math"
	"math/big"
	"math/rand/v2"
	"testing"
)

// TestExactDefinitions holds every symbol to its legal definition, as the whole numbers that a conversion multiplies
// and divides by. Source: NIST Handbook 44, Appendix C; the international yard and pound agreement of 1959.
func TestExactDefinitions(t *testing.T) {
	cases := []struct{ from, to, factor string }{
		{"in", "cm", "127/50"},
		{"ft", "m", "381/1250"},
		{"ft", "in", "12/1"},
		{"yd", "ft", "3/1"},
		{"mi", "ft", "5280/1"},
		{"mm", "m", "1/1000"},
		{"km", "m", "1000/1"},
		{"ac", "ft2", "43560/1"},
		{"ac", "m2", "316160658/78125"},
		{"ha", "m2", "10000/1"},
		{"lb", "kg", "45359237/100000000"},
		{"lb", "oz", "16/1"},
		{"lb", "g", "45359237/100000"},
		{"ton", "lb", "2000/1"},
		{"t", "kg", "1000/1"},
		{"g", "mg", "1000/1"},
		{"gal", "in3", "231/1"},
		{"gal", "L", "473176473/125000000"},
		{"gal", "qt", "4/1"},
		{"gal", "pt", "8/1"},
		{"gal", "floz", "128/1"},
		{"gal", "cup", "16/1"}, // NIST Handbook 44, Appendix C: 16 tablespoons in a cup, 3 teaspoons in a tablespoon
		{"cup", "tbsp", "16/1"},
		{"tbsp", "tsp", "3/1"},
		{"L", "mL", "1000/1"},
		{"mL", "cm3", "1/1"},
		{"ac-in", "ft3", "3630/1"},
		{"ac-in", "gal", "190080/7"},
		{"ac-ft", "ac-in", "12/1"},
		{"ac-ft", "ac·ft", "1/1"},
		{"h", "min", "60/1"},
		{"day", "h", "24/1"},
		{"week", "day", "7/1"},
		{"year", "day", "146097/400"},
		{"year", "month", "12/1"},
		{"gpm", "gal/h", "60/1"},
		{"gph", "gal/h", "1/1"},
		{"cfs", "gpm", "34560/77"},
		{"%", "ppm", "10000/1"},
		{"ppm", "ppb", "1000/1"},
		{"mg/L", "ppm", "1/1"},
		{"mg/kg", "ppm", "1/1"},
		{"g/kg", "%", "1/10"},
		{"trees", "tree", "1/1"},
		{"$/lb", "$/ton", "2000/1"},
		{"lb N/ac", "kg N/ha", "515445875/459870048"},
		{"lb/gal", "kg/L", "2945405/24580596"},
		{"mph", "ft/min", "88/1"},
		{"$/ton", "cents/lb", "1/20"},
		{"dS/m", "mmho/cm", "1/1"},
		{"uS/cm", "dS/m", "1/1000"},
		{"bar", "kPa", "100/1"},
		{"kWh", "kW h", "1/1"},
		{"bu", "in3", "107521/50"},
	}
	for _, c := range cases {
		f, err := MustParse(c.from).To(MustParse(c.to))
		if err != nil {
			t.Errorf("%s to %s: %v", c.from, c.to, err)
			continue
		}
		if f.Text() != c.factor {
			t.Errorf("%s to %s is %s, want %s", c.from, c.to, f.Text(), c.factor)
		}
	}
}

// TestRuleOfTwoIsExact: 2,000,000 lb of soil an acre for six inches makes 12 ppm over 12 in exactly 48 lb.
func TestRuleOfTwoIsExact(t *testing.T) {
	soil := MustParse("ppm NO3-N").Carried("soil")
	whole := soil.Nitrogen().Times(MustParse("in")).Times(MustParse("lb soil/ac per 6 in"))
	f, err := whole.To(MustParse("lb N/ac"))
	if err != nil {
		t.Fatal(err)
	}
	if f.Text() != "1/6000000" {
		t.Errorf("the factor is %s, want 1/6000000", f.Text())
	}
	for ppm := range 201 {
		for depth := range 73 {
			got := f.Apply(float64(ppm * depth * 2_000_000))
			if want := float64(ppm*depth) / 3; got != want {
				t.Fatalf("%v ppm over %v in is %v lb N/ac, want %v", ppm, depth, got, want)
			}
		}
	}
	if got := f.Apply(12 * 12 * 2_000_000); got != 48 {
		t.Errorf("12 ppm over 12 in is %v lb N/ac, want 48", got)
	}
}

// What no two whole numbers of a float64 make is one number: above the line when it is large, and below it when it is
// small. A mile is 1,609,344 mm.
func TestFactorsThatAreNotWhole(t *testing.T) {
	const large = 1609344.0 * 1609344 * 1609344 * 1609344
	for _, c := range []struct {
		from, to string
		want     Factor
	}{{"mi4", "mm4", Factor{large, 1}}, {"mm4", "mi4", Factor{1, large}}} {
		if f, err := MustParse(c.from).To(MustParse(c.to)); err != nil || f != c.want {
			t.Errorf("%s to %s is %v, %v; want %v", c.from, c.to, f, err, c.want)
		}
	}
}

// A pound of nitrogen in nitrate is a pound of nitrogen, and what is no nitrogen stays what it is.
func TestNitrogenOfAForm(t *testing.T) {
	for text, want := range map[string]string{
		"lb NO3-N/ac": "lb N/ac", "ppm NO3-N of soil": "ppm N of soil", "lb urea-N/lb product": "lb N/lb product",
		"oz/lb NH4-N": "oz/lb N", "lb P2O5/ac": "lb P2O5/ac", "in": "in", "ppm NO3": "ppm NO3",
	} {
		if got := MustParse(text).Nitrogen(); got.String() != want || !got.Same(MustParse(want)) {
			t.Errorf("the nitrogen of %s is in %s, want %s", text, got, want)
		}
	}
}

func TestFormsConvertByAtomicWeight(t *testing.T) {
	cases := []struct{ from, to, factor string }{
		{"ppm NO3", "ppm NO3-N", "4669/20668"}, // 14.007 / 62.004
		{"ppm NO3-N", "ppm NO3", "20668/4669"},
		{"ppm NH4", "ppm NH4-N", "14007/18039"},
		{"lb NH3/ac", "lb NH3-N/ac", "667/811"},
		{"lb urea-N/ac", "lb urea/ac", "30028/14007"},
		{"lb P/ac", "lb P2O5/ac", "141943/61948"},
		{"lb K2O/ac", "lb K/ac", "78196/94195"},
		{"lb N/lb P", "lb N/lb P2O5", "61948/141943"},
	}
	for _, c := range cases {
		f, err := MustParse(c.from).To(MustParse(c.to))
		if err != nil {
			t.Errorf("%s to %s: %v", c.from, c.to, err)
			continue
		}
		want, _ := new(big.Rat).SetString(c.factor)
		got := new(big.Rat).Quo(new(big.Rat).SetFloat64(f.Multiply), new(big.Rat).SetFloat64(f.Divide))
		if got.Cmp(want) != 0 {
			t.Errorf("%s to %s is %s, want %s", c.from, c.to, f.Text(), c.factor)
		}
	}
}

func TestCarrierMayBeSilentOnEitherSide(t *testing.T) {
	for _, c := range [][2]string{
		{"ppm NO3-N", "ppm NO3-N of soil"}, {"ppm NO3-N of water", "mg/L NO3-N"}, {"lb/ac", "lb product/ac"},
		{"ppm NO3", "ppm NO3-N of water"},
	} {
		if _, err := MustParse(c[0]).To(MustParse(c[1])); err != nil {
			t.Error(err)
		}
		if _, err := MustParse(c[1]).To(MustParse(c[0])); err != nil {
			t.Error(err)
		}
	}
}

func TestWhatDoesNotConvert(t *testing.T) {
	for _, c := range [][2]string{
		{"ppm NO3", "ppm NH4"}, {"lb N/ac", "lb P/ac"}, {"lb/ac", "lb N/ac"}, {"ppm", "ppm NO3-N"},
		{"lb product/ac", "lb N/ac"}, {"oz N/tree", "lb N/ac"}, {"ft", "ppm NO3-N"}, {"ppm N of soil", "ppm N of water"},
		{"lb urea", "lb NH3"}, {"ft", "ft2"}, {"$", "lb"}, {"", "trees"},
	} {
		for _, pair := range [][2]string{c, {c[1], c[0]}} {
			f, err := MustParse(pair[0]).To(MustParse(pair[1]))
			var m *Mismatch
			if !errors.As(err, &m) || m.Error() == "" {
				t.Errorf("%q to %q is %v, %v", pair[0], pair[1], f, err)
			}
		}
	}
}

// TestRoundTrip converts there and back between all pairs that convert. Two conversions round four times at most.
func TestRoundTrip(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	pairs := 0
	for _, a := range goodUnits {
		for _, b := range goodUnits {
			u, v := MustParse(a.text), MustParse(b.text)
			there, err := u.To(v)
			if err != nil {
				continue
			}
			back, err := v.To(u)
			if err != nil {
				t.Errorf("%s converts to %s but not back: %v", u, v, err)
				continue
			}
			pairs++
			for range 20 {
				value := math.Ldexp(r.Float64(), r.IntN(40)-20)
				got := back.Apply(there.Apply(value))
				if math.Abs(got-value) > 4*epsilon*value {
					t.Errorf("%v %s to %s and back is %v", value, u, v, got)
				}
			}
		}
	}
	if pairs < len(goodUnits) {
		t.Errorf("only %d pairs convert", pairs)
	}
}

// epsilon is half the distance from 1 to the next number: what one rounding can add, as a part of the value.
const epsilon = 1.0 / (1 << 53)

// TestFactorIsNearestWhenNotWhole compares with the exact ratio when a float64 can not hold its whole parts.
func TestFactorIsNearestWhenNotWhole(t *testing.T) {
	for _, c := range [][2]string{
		{"ac-ft4", "in3·in3·in3·in3"}, {"ac2", "mm4"}, {"oz7", "mg7"}, {"mg7", "oz7"},
		{"gal3/ac2", "mL3/mm4"}, {"mm4/mL3", "ac2/gal3"},
	} {
		u, v := MustParse(c[0]), MustParse(c[1])
		f, err := u.To(v)
		if err != nil {
			t.Error(err)
			continue
		}
		exact := new(big.Rat).Quo(u.ratio(), v.ratio())
		got := new(big.Rat).Quo(new(big.Rat).SetFloat64(f.Multiply), new(big.Rat).SetFloat64(f.Divide))
		off, _ := got.Sub(got, exact).Quo(got, exact).Float64()
		if math.Abs(off) > epsilon {
			t.Errorf("%s to %s is %s, off by %g of it", u, v, f.Text(), off)
		}
	}
}

func TestApplyRoundsTheProductFirst(t *testing.T) {
	v := 0.1
	third := Factor{3, 10}
	if got, want := third.Apply(v), float64(v*3)/10; got != want {
		t.Errorf("got %v, want %v", got, want)
	}
	if got := (Factor{1, 1}).Apply(v); got != v {
		t.Errorf("got %v, want %v", got, v)
	}
}

func TestApplyDoesNotAllocate(t *testing.T) {
	f, value := Factor{45359237, 100000000}, 12.0
	if n := testing.AllocsPerRun(100, func() { value = f.Apply(value) }); n != 0 {
		t.Errorf("it allocates %v times", n)
	}
}
