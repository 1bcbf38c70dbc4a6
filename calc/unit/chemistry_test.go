package unit

import "testing"

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
		if v, err := Share(c.element, c.compound); err == nil || err.Error() != c.want {
			t.Errorf("%s in %s is %v, %v; want %s", c.element, c.compound, v, err, c.want)
		}
	}
	if w, known := AtomicWeight("Xx"); known {
		t.Errorf("Xx weighs %v", w)
	}
}
