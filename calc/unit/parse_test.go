package unit

import (
	"errors"
	"strings"
	"sync"
	"testing"
)

// goodUnits are texts that Parse reads, each with its tidied form and with the same unit written plainly.
var goodUnits = []struct{ text, tidied, same string }{
	{"", "", ""},
	{"lb N/ac", "lb N/ac", "oz N/ac per 1"},
	{"  lb   N / ac ", "lb N/ac", ""},
	{"pounds N per acre", "lb N per ac", "lb N/ac"},
	{"lbs N/acre", "lb N/ac", "lb N/ac"},
	{"oz N/tree", "oz N/tree", ""},
	{"LB N/Ac", "lb N/ac", ""},
	{"GAL/AC", "gal/ac", ""},
	{"Mg/ha", "t/ha", "t/ha"}, // a megagram is no milligram
	{"Mg2/MG", "t2/mg", "t·t/mg"},
	{"oz N/trees", "oz N/trees", "oz N/tree"},
	{"trees/acre", "trees/ac", "tree/ac"},
	{"lb product/ac", "lb product/ac", "lb material/ac"},
	{"lb fertilizer/ac", "lb fertilizer/ac", "lb product/ac"},
	{"lb kernels/ac", "lb kernels/ac", "lb of kernels/ac"},
	{"lb in-shell/ac", "lb in-shell/ac", "lb of in-shell/ac"},
	{"lb CaCO3", "lb CaCO3", "lb lime"},
	{"lb soil/ac per 6 in", "lb soil/ac per 6 in", "lb soil/(ac·(6 in))"},
	{"lb N per 1000 lb crop", "lb N per 1000 lb crop", "lb N/1,000 lb crop"},
	{"lb N/1000 lb crop", "lb N/1000 lb crop", "lb N/(1000 lb crop)"},
	{"lb/1.5 ac", "lb/1.5 ac", "lb/(1.5 ac)"},
	{"ppm NO3-N", "ppm NO3-N", "mg/kg NO3-N"},
	{"ppm NO3-N of soil", "ppm NO3-N of soil", "mg NO3-N/kg soil"},
	{"ppm of N of soil", "ppm N of soil", "ppm N of soil"},
	{"lb of N/ac", "lb N/ac", "lb N/ac"},
	{"mg/L NO3-N", "mg/L NO3-N", "ppm NO3-N"},
	{"mg NO3-N/L", "mg NO3-N/L", "ppm NO3-N"},
	{"mg/l", "mg/L", "ppm"},
	{"mg/L NO3-N of water", "mg/L NO3-N of water", "ppm NO3-N of water"},
	{"mg/kg NO3-N", "mg/kg NO3-N", "ppm NO3-N"},
	{"mg/kg NO3-N of soil", "mg/kg NO3-N of soil", "ppm NO3-N of soil"},
	{"mg/kg soil", "mg/kg soil", "ppm of soil"},
	{"% total N", "% total N", "% N"},
	{"ppm N total", "ppm total N", "ppm N"},
	{"mg/L total nitrogen", "mg/L total N", "mg/L N"},
	{"mg TN/L", "mg total N/L", "mg/L N"},
	{"lb total-N/ac", "lb total N/ac", "lb N/ac"},
	{"g/kg N", "g/kg N", "1000 ppm N per 1"},
	{"% N", "% N", "percent N"},
	{"%N", "% N", "% N"},
	{"ac-in/ac", "ac-in/ac", "in"},
	{"acre-feet", "ac-ft", "ac ft"},
	{"g/cm3", "g/cm3", "kg/L"},
	{"g/cm³", "g/cm3", "g/mL"},
	{"ft²/tree", "ft2/tree", "ft·ft/tree"},
	{"$/lb N", "$/lb N", ""},
	{"ac ft", "ac ft", "ac·ft"},
	{"ac⋅ft", "ac·ft", "ac-ft"},
	{"lb/ac in", "lb/ac in", "lb in/ac"}, // a stroke binds only what follows next
	{"lb/ac/in", "lb/ac/in", "lb/(ac·in)"},
	{"lb/(ac/in)", "lb/(ac/in)", "lb·in/ac"},
	{"(lb/ac)·in", "(lb/ac)·in", "lb in/ac"},
	{"lb/(lb soil/ac per 6 in)", "lb/(lb soil/ac per 6 in)", "lb·ac (6 in)/lb soil"},
	{"1/ac", "1/ac", "per ac"},
	{"/ac", "1/ac", "1/acre"},
	{"per ac", "per ac", "1/ac"},
	{"1 per ac", "1 per ac", "1/ac"},
	{"lb (per ac)", "lb (per ac)", "lb/ac"},
	{"lb/(/ac)", "lb/(/ac)", "lb ac"},
	{"gpm/emitter", "gpm/emitter", "gal/min/emitter"},
	{"gph", "gph", "gal/h"},
	{"cfs", "cfs", "ft3/s"},
	{"ft3 water", "ft3 water", "ft3 of water"},
	{"in\u00a0", "in", "inches"},

	// As laboratories and growers write them.
	{"ppm NO3N", "ppm NO3-N", "ppm NO3-N"},
	{"ppm NO3_N", "ppm NO3-N", "ppm NO3-N"},
	{"ppm NO3 N", "ppm NO3-N", "ppm NO3-N"},
	{"ppm N-NO3", "ppm NO3-N", "ppm NO3-N"},
	{"ppm NO₃-N", "ppm NO3-N", "ppm NO3-N"},
	{"ppm NO3⁻", "ppm NO3", "ppm NO3"},
	{"ppm nitrate nitrogen", "ppm NO3-N", "ppm NO3-N"},
	{"ppm Nitrate-N", "ppm NO3-N", "ppm NO3-N"},
	{"ppm nitrate as N", "ppm NO3-N", "ppm NO3-N"},
	{"ppm NO3 as N", "ppm NO3-N", "ppm NO3-N"},
	{"ppm nitrate as NO3", "ppm NO3", "ppm NO3"},
	{"ppm as NO3", "ppm NO3", "ppm NO3"},
	{"PPM NO3-N", "ppm NO3-N", "ppm NO3-N"},
	{"ppm no3-n", "ppm NO3-N", "ppm NO3-N"},
	{"MG/L nitrate", "mg/L NO3", "ppm NO3"},
	{"ppm ammonium-N", "ppm NH4-N", "ppm NH4-N"},
	{"ppm NH4N", "ppm NH4-N", "ppm NH4-N"},
	{"µg/L NO3-N", "ug/L NO3-N", "ppb NO3-N"},
	{"μg NO3-N/l", "ug NO3-N/L", "ppb NO3-N"},
	{"lb N/A", "lb N/ac", "lb N/ac"},
	{"LBS/A N", "lb N/ac", "lb N/ac"},
	{"lb/ac N", "lb N/ac", "lb N/ac"},
	{"lb/ac of actual nitrogen", "lb N/ac", "lb N/ac"},
	{"pounds of nitrogen an acre", "lb N/ac", "lb N/ac"},
	{"oz of nitrogen a tree", "oz N/tree", "oz N/tree"},
	{"tons an acre", "tons/ac", "ton/ac"},
	{"cubic yards", "yd3", "yd3"},
	{"cu. ft/tree", "ft3/tree", "ft3/tree"},
	{"sq ft/tree", "ft2/tree", "ft2/tree"},
	{"fl oz/gal", "floz/gal", "floz/gal"},
	{"g/cc", "g/mL", "g/cm3"},
	{"Mg/m3", "t/m3", "g/cm3"},
	{"parts per million NO3", "ppm NO3", "ppm NO3"},
	{"\"", "in", "in"},
	{"'", "ft", "ft"},
	{"in.", "in", "in"},
	{"mg NO3/100 g", "mg NO3/100 g", "10 ppm NO3 per 1"},
	{"lb N/ac fed", "lb N/ac fed", "lb N·fed/ac"},
	{"lb N/ac taken up", "lb N/ac taken up", "lb N/acre·taken   up"},
	{"oz N/tree present", "oz N/tree present", ""},
	{"% taken up/fed", "% taken up/fed", "% per fed taken up"},
	{"taken up/fed", "taken up/fed", ""},
	{"1/fed", "1/fed", "per fed"},
	{"lb N/ac fed per ppm NO3-N of water per in", "lb N/ac fed per ppm NO3-N of water per in", ""},
}

func TestParseTidiesAndMeansTheSame(t *testing.T) {
	for _, c := range goodUnits {
		u, err := Parse(c.text)
		if err != nil {
			t.Errorf("Parse(%q): %v", c.text, err)
			continue
		}
		if u.String() != c.tidied {
			t.Errorf("Parse(%q) is written %q, want %q", c.text, u, c.tidied)
		}
		if c.same == "" || strings.HasSuffix(c.same, "per 1") {
			continue
		}
		if v := MustParse(c.same); !u.Same(v) {
			t.Errorf("%q and %q differ: %v and %v", c.text, c.same, u.ratio(), v.ratio())
		}
	}
}

// TestParseReadsWhatStringWrites holds for a unit as it was written and as it would be written if it had been worked
// out, for products, quotients and powers of all pairs.
func TestParseReadsWhatStringWrites(t *testing.T) {
	check := func(u Unit) {
		t.Helper()
		v, err := Parse(u.String())
		if err != nil || !v.Same(u) {
			t.Errorf("%q reads back as %q, %v: %v %v", u, v, err, u.Dimension(), v.Dimension())
		}
	}
	for _, a := range goodUnits {
		u := MustParse(a.text)
		check(u)
		check(Unit{terms: u.terms, dimension: u.dimension, scale: u.scale})
		check(u.Power(2))
		check(u.Power(-1))
		for _, b := range goodUnits {
			v := MustParse(b.text)
			check(u.Times(v))
			check(u.Over(v))
			check(u.Over(v).Times(u))
		}
	}
}

func TestKnownWordsStayApart(t *testing.T) {
	for word := range spellings {
		if substanceBySymbol[word] != nil || word == "per" || word == "of" || word == "to" {
			t.Errorf("%q is a unit and something else", word)
		}
		of := ""
		if spellings[word].symbol.kind == molarKind {
			of = " NO3"
		}
		u, err := Parse(word + of)
		if err != nil || !strings.Contains(word+of+" "+spellings[word].text+of, u.String()) {
			t.Errorf("Parse(%q) gives %q, %v", word, u, err)
		}
	}
	for word := range substanceBySymbol {
		if u, err := Parse("ppm " + word); err != nil || u.String() != "ppm "+word {
			t.Errorf("ppm %s is written %q, %v", word, u, err)
		}
	}
}

func TestBadUnits(t *testing.T) {
	const unknown = " is not a unit or a substance known here; "
	cases := []struct {
		text    string
		at      int
		nearest string
		message string
	}{
		{"ozz", 0, "oz", `"ozz"` + unknown + `did you mean "oz"?`},
		{"lb N/arce", 5, "acre", `"arce"` + unknown + `did you mean "acre"?`},
		{"ppm N03", 4, "NO3", `"N03"` + unknown + `did you mean "NO3"?`},
		{"ppm N03-N", 4, "NO3-N", `"N03-N"` + unknown + `did you mean "NO3-N"?`},
		{"ppm K20", 4, "K2O", `"K20"` + unknown + `did you mean "K2O"?`},
		{"galons/ac", 0, "gallons", `"galons"` + unknown + `did you mean "gallons"?`},
		{"lb nitrogin/ac", 3, "", `"nitrogin"` + unknown + `write one such as lb, ppm, ac, N or NO3-N`},
		{"ft0", 0, "ft", `"ft0"` + unknown + `did you mean "ft"?`},
		{"H", 0, "h", `"H"` + unknown + `did you mean "h"?`}, // capitals tell single letters apart
		{"lb/G", 3, "g", `"G"` + unknown + `did you mean "g"?`},
		{"zzzzzz", 0, "", `"zzzzzz"` + unknown + `write one such as lb, ppm, ac, N or NO3-N`},
		{"N", 0, "", `"N": N is what a unit is of, and must follow one, as in lb N`},
		{"ppm of", 6, "", `"ppm of": a substance must follow of, as in ppm NO3-N of soil`},
		{"ppm of lb", 7, "", `"ppm of lb": a substance must follow of, as in ppm NO3-N of soil`},
		{"$/gal N", 6, "", `"$/gal N": N can not follow gal; write it after the unit it belongs to, as in lb N/ac`},
		{"meq/L", 5, "", `"meq/L": meq/L must say what it is of; write for example meq/L NO3`},
		{"meq/L N", 7, "", `"meq/L N": meq/L of N cannot be weighed here; write mg/L N`},
		{"trees N", 6, "", `"trees N": N can not follow trees; write it after the unit it belongs to, as in lb N/ac`},
		{"ppm N in soil", 9, "", `"ppm N in soil": in means inches; write what carries it as "of soil"`},
		{"lb N P", 5, "", `"lb N P": one unit can not be of both N and P; take one out`},
		{"lb N of P", 8, "", `"lb N of P": one unit can not be of both N and P; take one out`},
		{"12 lb", 0, "", `"12 lb": there is a unit without a number; leave out the 12`},
		{"1", 0, "", `"1": there is a unit without a number; leave out the 1`},
		{"lb 6 in", 3, "", `"lb 6 in": a number cannot be here; take out the 6`},
		{"lb per 0 in", 7, "", `"lb per 0 in": nothing can be counted per 0; write another number`},
		{"lb/1000", 3, "", `"lb/1000": a unit must follow the 1000; write it, such as 1000 lb`},
		{"lb/1,00 lb", 3, "", `"lb/1,00 lb": a comma parts thousands, as in 1,200; for a decimal write a point, as in 1.00`},
		{"lb/6 7 in", 3, "", `"lb/6 7 in": a unit must follow the 6; write it, such as 6 lb`},
		{"lb/", 3, "", `"lb/": the unit breaks off; write what is missing at its end`},
		{"lb per", 6, "", `"lb per": the unit breaks off; write what is missing at its end`},
		{"lb//ac", 3, "", `"lb//ac": a unit must come before this /; write it or take the / out`},
		{"lb per per ac", 7, "", `"lb per per ac": a unit must come before this per; write it or take the per out`},
		{"lb/(ac", 3, "", `"lb/(ac": this bracket is not closed; write the ) where it ends`},
		{strings.Repeat("lb ", 19) + "lb)", 59, "",
			`"` + strings.Repeat("lb ", 19) + `lb)": this ) closes no bracket; take it out`},
		{"  lb)  ", 4, "", `"lb)": this ) closes no bracket; take it out`},
		{"·lb", 0, "", `"·lb": a unit must come before this ·; write it or take the · out`},
		{"lb/(ac 6 in)", 7, "", `"lb/(ac 6 in)": a number cannot be here; take out the 6`},
		{"lb)", 2, "", `"lb)": this ) closes no bracket; take it out`},
		{"()", 1, "", `"()": a unit must come before this ); write it or take the ) out`},
		{"lb & ac", 3, "", `"lb & ac": the sign "&" has no place in a unit; take it out`},
		{"lb\xff", 2, "", `"lb\xff": the sign "\xff" has no place in a unit; take it out`},
		{"of soil", 0, "", `"of soil": a unit must come before this of; write it or take the of out`},
		{strings.Repeat("lb ", 67), 0, "",
			`"` + strings.Repeat("lb ", 20) + `…": this is too long for a unit; write one such as lb N/ac`},
	}
	for _, c := range cases {
		u, err := Parse(c.text)
		var e *Error
		if !errors.As(err, &e) {
			t.Errorf("Parse(%q) gives %q, %v", c.text, u, err)
			continue
		}
		if e.Message != c.message || e.Error() != c.message {
			t.Errorf("Parse(%q) says\n %s, want\n %s", c.text, e.Message, c.message)
		}
		if e.At != c.at || e.Nearest != c.nearest || e.Text != c.text {
			t.Errorf("Parse(%q) is wrong at %d, near %q; want %d, %q", c.text, e.At, e.Nearest, c.at, c.nearest)
		}
	}
}

func TestMustParsePanicsWithTheSentence(t *testing.T) {
	defer func() {
		if r := recover(); r == nil || !strings.Contains(r.(string), `did you mean "oz"?`) {
			t.Errorf("it said %v", r)
		}
	}()
	MustParse("ozz")
}

// TestParseAtOnce is for the race detector: one cache serves all pages of a press.
func TestParseAtOnce(t *testing.T) {
	var group sync.WaitGroup
	for range 8 {
		group.Go(func() {
			for _, c := range goodUnits {
				if u, err := Parse(c.text); err != nil || u.String() != c.tidied {
					t.Errorf("Parse(%q) gives %q, %v", c.text, u, err)
				}
			}
		})
	}
	group.Wait()
}
