package prose_test

import (
	"testing"

	"acreleaf/calc/prose"
	"acreleaf/calc/unit"
)

// A figure may be rounded, but not to another number: at most 5 percent, and never to nothing.
func TestQuotes(t *testing.T) {
	for _, c := range []struct {
		text, value string
		want        bool
	}{
		{"1 ft", "7 in", false},
		{"0 yd", "7 in", false},
		{"0.6 ft", "7 in", true},
		{"0 tons/ac", "28 lb N/ac", false},
		{"0.0 tons/ac", "28 lb N/ac", false},
		{"0.01 tons/ac", "28 lb N/ac", false},
		{"0.014 tons/ac", "28 lb N/ac", true},
		{"1 oz a tree", "0.824 oz N/tree", false},
		{"0.8 oz a tree", "0.824 oz N/tree", true},
		{"0 lb a tree", "0.824 oz N/tree", false},
		{"2 oz a tree", "2.47 oz N/tree", false},
		{"2.5 oz a tree", "2.47 oz N/tree", true},
		{"27.5 lb/ac", "27.45 lb N/ac", true}, // just between two rounds up
		{"27.4 lb/ac", "27.45 lb N/ac", false},
		{"27 lb/ac", "27.5 lb N/ac", false},
		{"28 lb/ac", "27.5 lb N/ac", true},
		{"0 lb/ac", "0 lb N/ac", true},
		{"0 to 5 ppm", "0 to 5 ppm NO3-N", true},
		{"3 to 4 oz/tree", "3.4 to 4 oz N/tree", false},
	} {
		value, err := unit.ParseRange(c.value)
		if err != nil {
			t.Fatal(err)
		}
		f, err := prose.For("en").ReadFigure(c.text, "", value.Unit)
		if err != nil || !f.Fits {
			t.Fatalf("%s for %s: %v", c.text, c.value, err)
		}
		back := f.By.Inverse()
		if got := f.AgreesClosely(back.Apply(value.Low), back.Apply(value.High)); got != c.want {
			t.Errorf("%s for %s: %v", c.text, c.value, got)
		}
	}
}
