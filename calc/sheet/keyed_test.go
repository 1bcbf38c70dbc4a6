package sheet_test

import (
	"slices"
	"testing"

	"acreleaf/calc/sheet"
)

// A product or a power is printed with as many digits as give the printed result to a person who keys it in.
func TestPrintedWorkCanBeKeyedIn(t *testing.T) {
	s := sheet.New("keyed", func(s *sheet.Sheet) {
		n := s.Given("n", "", sheet.Field{Label: "N", Typical: 1, Low: 0, High: 9000})
		third := s.Step("third", "", n.Over(s.Number(3)), sheet.Says{})
		many := s.Constant("many", "3000", sheet.Fact{Label: "Many", Sources: []string{"geometry"}, Reads: "3,000"})
		s.Answer("whole", "", third.Times(many), sheet.Says{})
		s.Answer("cube", "", third.Power(3).Times(s.Number(27000)), sheet.Says{})
		s.Answer("part", "", third.Times(s.Number(1.5)), sheet.Says{})
	})
	o := workedOut(t, s, "n=1")
	want := []string{"third = n ÷ 3 = 1 ÷ 3 = 0.333", "whole = third × 3,000 = 0.3333 × 3,000 = 1,000",
		"cube = third to the power 3 × 27,000 = (0.3333) to the power 3 × 27,000 = 1,000",
		"part = third × 1.5 = 0.3333 × 1.5 = 0.5"}
	if got := o.Work(); !slices.Equal(got, want) {
		t.Errorf("the work is %q, want %q", got, want)
	}
	// A step of more than five digits is cut short where that does not change the result.
	if got := workedOut(t, s, "n=3703.68").Work()[3]; got != "part = third × 1.5 = 1,234.6 × 1.5 = 1,852" { // of 1234.56
		t.Errorf("the work is %q", got)
	}
	if words := o.Words(); len(words) != 0 {
		t.Errorf("a sheet without a sentence says %q", words)
	}
}

// Over a range a figure that is looked up is that of the option, and no neighbour's: n × figure − n × n over 1 to 2
// ends at 2 × 1 − 4 and at 1 × 1 − 1 for the first, and is greatest at n = 2.5, past its end, for the last.
func TestRangesLookUpOneOption(t *testing.T) {
	s := sheet.New("lookup", func(s *sheet.Sheet) {
		n := s.Given("n", "", sheet.Field{Label: "N", Typical: 1, Low: 0, High: 9})
		options := []sheet.Option{{Name: "one", Label: "A"}, {Name: "two", Label: "B"}, {Name: "five", Label: "C"}}
		kind := s.Choice("kind", options, sheet.Field{Label: "K"})
		figure := s.Lookup("figure", "", kind, map[string]float64{"one": 1, "two": 2, "five": 5})
		s.Answer("left", "", n.Times(figure).Minus(n.Times(n)), sheet.Says{})
	})
	for kind, want := range map[string]string{"one": "-2 to 0", "two": "0 to 1", "five": "4 to 6"} {
		if got := workedOut(t, s, "n=1 to 2", "kind="+kind).Text("left"); got != want {
			t.Errorf("for %s it is %s, want %s", kind, got, want)
		}
	}
}

// An unknown word in a given is reported with what that given takes; a number in another unit is reported with how
// it becomes one in the given's.
func TestGivensTellTheirOwnUnit(t *testing.T) {
	s := sheet.New("own", func(s *sheet.Sheet) {
		n := s.Given("nitrate", "ppm NO3-N", sheet.Field{Label: "Nitrate", Typical: 12, Low: 0, High: 200})
		s.Answer("same", "ppm NO3-N", n, sheet.Says{})
	})
	g := s.FindGiven("nitrate")
	_, err := g.Read("12 zzzzzz")
	if want := `"zzzzzz" is not a unit or a substance known here; write for example 12 ppm NO3-N`; err == nil ||
		err.Error() != want {
		t.Errorf("%v, want %s", err, want)
	}
	// 62.004 g of NO3 hold 14.007 g of nitrogen.
	for text, want := range map[string]string{
		"62.004 ppm NO3": "nitrate = 62.004 ppm NO3 × 0.225905 = 14 ppm NO3-N", "12 ppm NO3-N": "", "12 mg/kg NO3-N": "",
	} {
		e, err := g.Read(text)
		if got := g.Converted(e); err != nil || got != want {
			t.Errorf("%s is %q, %v; want %q", text, got, err, want)
		}
	}
}

// What is typed is reported with its digits, and a fraction that never ends with three.
func TestFractionsAreToldInThreeDigits(t *testing.T) {
	s := sheet.New("parts", func(s *sheet.Sheet) {
		n := s.Given("n", "ft", sheet.Field{Label: "N", Typical: 1, Low: 0, High: 9000})
		s.Answer("same", "ft", n, sheet.Says{})
	})
	for typed, want := range map[string]string{"1/3": "0.333", "2 1/3": "2.33", "1234.5678": "1,234.5678"} {
		if got := workedOut(t, s, "n="+typed+" ft").Numbers("n"); got != want {
			t.Errorf("%s is told as %s, want %s", typed, got, want)
		}
	}
}

// An option is found without its hyphens and in other capitals, but a hyphen between numbers counts.
func TestOptionsInOtherSigns(t *testing.T) {
	s := sheet.New("grades", func(s *sheet.Sheet) {
		options := []sheet.Option{{Name: "CAN-17"}, {Name: "15-5-X"}, {Name: "21-0-0"}}
		kind := s.Choice("kind", options, sheet.Field{Label: "K"})
		s.Answer("none", "", s.Number(0), sheet.Says{When: kind.Is("CAN-17")})
	})
	g := s.FindGiven("kind")
	for text, want := range map[string]float64{"can17": 0, "Can 17": 0, "CAN_17": 0, "15-5x": 1, "15-5 x": 1, "21-0-0": 2,
		"2100": -1, "21-00": -1, "21-0-0-": -1, "-21-0-0": -1, "155X": -1, "CAN-": -1, "-CAN17": -1} {
		e, err := g.Read(text)
		if want < 0 && err == nil || want >= 0 && (err != nil || e.Value != want) {
			t.Errorf("%q is %v, %v; want option %v", text, e.Value, err, want)
		}
	}
}
