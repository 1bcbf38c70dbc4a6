package unit

import (
	"math"
	"testing"
)

func TestParseFormulaCountsAtoms(t *testing.T) {
	cases := map[string]map[string]int{
		"N":         {"N": 1},
		"NO3":       {"N": 1, "O": 3},
		"CO(NH2)2":  {"C": 1, "O": 1, "N": 2, "H": 4},
		"(NH4)2SO4": {"N": 2, "H": 8, "S": 1, "O": 4},
		"CaCO3":     {"Ca": 1, "C": 1, "O": 3},
		"P2O5":      {"P": 2, "O": 5},
		"((NO)2)3":  {"N": 6, "O": 6},
		"N10O19":    {"N": 10, "O": 19},
		"ZnO":       {"Zn": 1, "O": 1},
		"((((N))))": {"N": 1},
		"N9999":     {"N": 9999},
		"N9(Az)10":  {"N": 9, "Az": 10},
	}
	for text, want := range cases {
		got, err := parseFormula(text)
		if err != nil || len(got) != len(want) {
			t.Errorf("%s is %v, %v; want %v", text, got, err, want)
			continue
		}
		for element, n := range want {
			if got[element] != n {
				t.Errorf("%s has %d %s, want %d", text, got[element], element, n)
			}
		}
	}
}

func TestBadFormulasAreRefused(t *testing.T) {
	cases := map[string]string{
		"":            `"" is not a chemical formula`,
		"no3":         `"no3" is not a chemical formula`,
		"NO3)":        `"NO3)" is not a chemical formula`,
		"(NO3":        `a bracket is left open in the formula "(NO3"`,
		"3N":          `"3N" is not a chemical formula`,
		"N{":          `"N{" is not a chemical formula`,
		"O(n":         `"O(n" is not a chemical formula`,
		"N10000":      `"N10000" is not a chemical formula`,
		"N-O":         `"N-O" is not a chemical formula`,
		"(((((N)))))": `"(((((N)))))" is not a chemical formula`,
	}
	for text, want := range cases {
		if counts, err := parseFormula(text); err == nil || err.Error() != want {
			t.Errorf("%q gives %v, %v; want %s", text, counts, err, want)
		}
	}
}

func TestShareRefusesWhatItDoesNotKnow(t *testing.T) {
	cases := []struct{ element, compound, want string }{
		{"K", "NO3", "there is no K in NO3"},
		{"N", "LiNO3", `no atomic weight is known for "Li" in "LiNO3"`},
		{"N", "no3", `"no3" is not a chemical formula`},
	}
	for _, c := range cases {
		if v, err := Share(c.element, c.compound); err == nil || err.Error() != c.want || v != 0 {
			t.Errorf("%s in %s is %v, %v; want %s", c.element, c.compound, v, err, c.want)
		}
	}
	if w, known := AtomicWeight("Xx"); known || w != 0 {
		t.Errorf("Xx weighs %v", w)
	}
	for want, slip := range map[string]func(){
		`unit: "12 lb" is not a number`: func() { rational("12 lb") },
		"unit: there is no N in K2O":    func() { mustShare("N", "K2O") },
	} {
		func() {
			defer func() {
				if got := recover(); got != want {
					t.Errorf("panics with %v, want %s", got, want)
				}
			}()
			slip()
		}()
	}
}

// Molar masses as PubChem prints them, from memory; each is told to the last place that is written.
func TestMolesAreWeighed(t *testing.T) {
	for _, c := range []struct {
		of      string
		mass    float64 // of a mole, in grams
		charges float64
		within  float64
	}{
		{"NO3-N", 14.007, 1, 0.0005}, {"NO3", 62.005, 1, 0.0015}, {"NO2-N", 14.007, 1, 0.0005}, {"NO2", 46.006, 1, 0.0015},
		{"NH4-N", 14.007, 1, 0.0005}, {"NH4", 18.039, 1, 0.0015}, {"K", 39.098, 1, 0.0005}, {"Ca", 40.078, 2, 0.0005},
		{"SO4", 96.06, 2, 0.005}, {"Na", 22.990, 1, 0.0005}, {"Cl", 35.45, 1, 0.005},
	} {
		for from, want := range map[string]float64{"mmol/L ": c.mass, "meq/L ": c.mass / c.charges} {
			f, err := MustParse(from + c.of).To(MustParse("mg/L " + c.of))
			if got := f.Apply(1); err != nil || math.Abs(got-want) > c.within {
				t.Errorf("1 %s%s is %v mg/L, %v; want %v", from, c.of, got, err, want)
			}
		}
	}
}
