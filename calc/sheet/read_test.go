package sheet_test

import (
	"errors"
	"math"
	"testing"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// paper has a given of each sort that a grower fills in from paper.
var paper = sheet.New("paper", func(s *sheet.Sheet) {
	s.Given("nitrate", "ppm NO3-N", sheet.Field{Label: "Nitrate", Typical: 12, Low: 0, High: 200, Of: "soil", Lab: true,
		Units: []string{"mg/kg NO3-N", "ppm NO3"}})
	s.Given("reported", "ppm NO3", sheet.Field{Label: "Reported", Typical: 45, Low: 0, High: 1000})
	s.Given("depth", "in", sheet.Field{Label: "Depth", Typical: 12, Low: 1, High: 72, Units: []string{"ft"}})
	s.Given("share", "%", sheet.Field{Label: "Share", Typical: 70, Low: 10, High: 100})
	s.Given("weight", "g soil/cm3", sheet.Field{Label: "Weight", Written: "g/cm3", Typical: 1.4, Low: 0.5, High: 2})
	s.Given("rate", "oz N/tree", sheet.Field{Label: "Rate", Typical: 3, Low: 0, High: 80})
	s.Given("price", "$/lb", sheet.Field{Label: "Price", Typical: 0.62, Low: 0, High: 10})
	s.Given("count", "", sheet.Field{Label: "Count", Typical: 4, Low: 0, High: 50})
	s.Choice("pattern", []sheet.Option{{Name: "square"}, {Name: "double-row"}}, sheet.Field{Label: "Pattern"})
	s.Answer("answer", "in", s.Zero("in"), sheet.Says{})
})

func TestReadTakesWhatIsOnPaper(t *testing.T) {
	for _, c := range []struct {
		given, text string
		value       float64
		typed       float64
		unit        string
	}{
		{"nitrate", "12 ppm NO3-N", 12, 12, "ppm NO3-N"},
		{"nitrate", "  12ppm NO3-N ", 12, 12, "ppm NO3-N"},
		{"nitrate", "12 mg/kg NO3-N", 12, 12, "mg/kg NO3-N"},
		{"nitrate", "12 ppm NO3-N of soil", 12, 12, "ppm NO3-N of soil"},
		{"nitrate", "54 ppm NO3", 54 * 14.007 / 62.004, 54, "ppm NO3"}, // 0.2259 of it
		{"nitrate", "0 ppm NO3-N", 0, 0, "ppm NO3-N"},
		{"nitrate", "0.0012 % NO3-N", 12, 0.0012, "% NO3-N"},
		{"reported", "10 ppm NO3-N", 10 * 62.004 / 14.007, 10, "ppm NO3-N"},
		{"reported", "45 mg/L NO3", 45, 45, "mg/L NO3"},
		{"depth", "1 ft", 12, 1, "ft"},
		{"depth", "30.48 cm", 12, 30.48, "cm"},
		{"share", "70 %", 70, 70, "%"},
		{"share", "70%", 70, 70, "%"},
		{"weight", "1.4 g/cm3", 1.4, 1.4, "g/cm3"},
		{"weight", "1.4 g soil/cm3", 1.4, 1.4, "g soil/cm3"},
		{"rate", "0.25 lb N/tree", 4, 0.25, "lb N/tree"},
		{"price", "$0.62/lb", 0.62, 0.62, "$/lb"},
		{"count", "12", 12, 12, ""},
		{"pattern", "double-row", 1, 1, ""},
	} {
		entry, err := paper.FindGiven(c.given).Read(c.text)
		if err != nil {
			t.Errorf("%s: %q: %v", c.given, c.text, err)
			continue
		}
		if math.Abs(entry.Value-c.value) > 1e-13*c.value || entry.Typed != c.typed || entry.Unit.String() != c.unit {
			t.Errorf("%s: %q is read as %v (%v %s), want %v (%v %s)", c.given, c.text,
				entry.Value, entry.Typed, entry.Unit, c.value, c.typed, c.unit)
		}
	}
}

func TestReadSaysWhatToWrite(t *testing.T) {
	for _, c := range []struct{ given, text, want string }{
		{"nitrate", "<5", `<5 has no unit; write <5 ppm NO3-N or <5 ppm NO3, as the report says`},
		{"nitrate", "ND", `"ND" means less than the lab can measure; look up that limit and write it with < and ` +
			`the unit of the report`},
		{"rate", "<5 oz N/tree", `"<5 oz N/tree" has <, which is for what a laboratory could not measure; ` +
			`type a number or a range, such as 3 oz N/tree`},
		{"nitrate", "<2 to 5 ppm NO3-N", `"<2 to 5 ppm NO3-N" has < before a range; write the one number that the lab ` +
			`prints after it`},
		{"nitrate", "", "nothing is written here; write a number with its unit, such as 12 ppm NO3-N"},
		{"nitrate", "twelve", `"twelve": there is no number here; write one in digits, such as 12 ppm NO3-N`},
		{"nitrate", "1.2.3 ppm NO3-N", `"1.2.3 ppm NO3-N": a number has one decimal point; write it such as 1.2`},
		{"nitrate", "1,2 ppm NO3-N",
			`"1,2 ppm NO3-N": a comma parts thousands, as in 1,200; for a decimal write a point, as in 1.2`},
		{"nitrate", "12 to 8 ppm NO3-N", `"12 to 8 ppm NO3-N": the lower number goes first; write 8 to 12`},
		// Which form it is is on the report, and a guess could be wrong by 4.43 times.
		{"nitrate", "12", "12 has no unit; write 12 ppm NO3-N or 12 ppm NO3, as the report says"},
		{"nitrate", "12 ppm", "12 ppm does not say what it is of; this needs nitrate-nitrogen (ppm NO3-N); " +
			"write 12 ppm NO3-N or 12 ppm NO3, as the report says"},
		{"nitrate", "12 ppm NO3-N of water", "12 ppm NO3-N of water is a share of NO3-N in water; " +
			"this needs a share of NO3-N in soil (ppm NO3-N); write for example 12 ppm NO3-N"},
		{"nitrate", "12 ppm P", "12 ppm P is phosphorus; this needs nitrate-nitrogen (ppm NO3-N); " +
			"write for example 12 ppm NO3-N"},
		{"nitrate", "250 ppm NO3-N", "250 ppm NO3-N is outside what this calculation takes: 0 to 200 ppm NO3-N"},
		{"nitrate", "-1 ppm NO3-N", "-1 ppm NO3-N is outside what this calculation takes: 0 to 200 ppm NO3-N"},
		{"nitrate", "12 to 250 ppm NO3-N", "250 ppm NO3-N is outside what this calculation takes: 0 to 200 ppm NO3-N"},
		{"nitrate", "12 zzzzzz", `"zzzzzz" is not a unit or a substance known here; write for example 12 ppm NO3-N, ` +
			"or 12 ppm NO3, as the report says"},
		{"depth", "12 zzzzzz", `"zzzzzz" is not a unit or a substance known here; write for example 12 in`},
		{"depth", "12", "12 has no unit; write 12 in"},
		{"depth", "120", "120 has no unit; write it with its unit, such as 12 in"},
		{"depth", "12 lb", "12 lb is a mass; this needs inches (in); write for example 12 in"},
		{"depth", "7 ft", "84 in is outside what this calculation takes: 1 to 72 in"},
		{"share", "70", "70 has no unit; write 70 %"},
		{"share", "0.7", "0.7 has no unit; write it with its unit, such as 70 %"},
		{"share", "0.7 %", "0.7 % is outside what this calculation takes: 10 to 100 %"},
		{"rate", "3 oz/tree", "3 oz/tree does not say what it is of; this needs nitrogen (oz N/tree); " +
			"write 3 oz N/tree"},
		{"rate", "30 lb N/ac", "30 lb N/ac is a mass of N on an area; this needs oz N/tree: divide it by trees/ac first; " +
			"write for example 3 oz N/tree"},
		{"rate", "8 oz product/tree", "8 oz product/tree is product; this needs nitrogen (oz N/tree): " +
			"multiply it by the share of nitrogen in the product first; " +
			"write for example 3 oz N/tree"},
		{"price", "0.62", "0.62 has no unit; write $0.62/lb"},
		{"count", "200 %", "200 % has a unit, and this is a number without one; write for example 4"},
		{"count", "4 ft", "4 ft is a length; this needs a plain number; write for example 4"},
		{"pattern", "hexagon", `there is no pattern "hexagon"; choose one of: square, double-row`},
		{"pattern", "", `there is no pattern ""; choose one of: square, double-row`},
		{"pattern", "1", `there is no pattern "1"; choose one of: square, double-row`},
	} {
		_, err := paper.FindGiven(c.given).Read(c.text)
		if err == nil || err.Error() != c.want {
			t.Errorf("%s: %q:\n got  %v\n want %s", c.given, c.text, err, c.want)
		}
	}
}

// An author's editor needs the place of a fault, so the error that knows it stays within reach.
func TestReadKeepsThePlaceOfAFault(t *testing.T) {
	_, err := paper.FindGiven("depth").Read("12 inchs")
	var fault *unit.Error
	if !errors.As(err, &fault) || fault.At != 3 {
		t.Errorf("%v, want a fault at byte 3", err)
	}
	_, err = paper.FindGiven("depth").Read("12 lb")
	var mismatch *unit.Mismatch
	if !errors.As(err, &mismatch) || mismatch.Given != "12 lb" {
		t.Errorf("%v, want a mismatch of 12 lb", err)
	}
}

func TestCheckKnowsTheOptions(t *testing.T) {
	pattern := paper.FindGiven("pattern")
	for _, value := range []float64{0, 1} {
		if err := pattern.Check(value); err != nil {
			t.Errorf("option %v: %v", value, err)
		}
	}
	for value, want := range map[float64]string{
		0.5: "option 0.5 is not in the list; choose one of: square, double-row",
		2:   "option 2 is not in the list; choose one of: square, double-row",
		-1:  "option -1 is not in the list; choose one of: square, double-row",
	} {
		if err := pattern.Check(value); err == nil || err.Error() != want {
			t.Errorf("option %v: %v, want %s", value, err, want)
		}
	}
	if pattern.Low != 0 || pattern.High != 1 {
		t.Errorf("the options are from %v to %v", pattern.Low, pattern.High)
	}
	if pattern.Check(math.NaN()) == nil {
		t.Error("no number was taken for an option")
	}
}

func TestExamplesCanBeRead(t *testing.T) {
	for _, g := range paper.Givens {
		entry, err := g.Read(g.Example())
		if err != nil || math.Abs(entry.Value-g.Typical) > 1e-12*g.Typical {
			t.Errorf("the example of %s, %q, is read as %v, %v", g.Name, g.Example(), entry.Value, err)
		}
	}
}
