package practice_test

import (
	"testing"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/practice"
	"acreleaf/calc/sheet"
)

// A season of one inch cannot be told from the slip of one inch, and the right answer is what both give.
func TestDoubt(t *testing.T) {
	water := nitrogen.WaterNitrogen
	e := &practice.Exercise{Seed: "doubt", Uses: []*practice.Use{{
		Name: "well", Sheet: water,
		Fixed:  map[string]sheet.Entry{"nitrate": entry(water, "nitrate", "7 ppm NO3-N")},
		Varied: []practice.Varied{varied(water, "water", "1 in", "3 in", "12 in")},
	}}, Asks: []practice.Ask{{Use: "well", Result: "nitrogen", Digits: 3}}}
	set, err := practice.NewSet(e, "en")
	if err != nil {
		t.Fatal(err)
	}
	d, err := set.Doubt(e.Distinct())
	if err != nil {
		t.Fatal(err)
	}
	if d.Cards != 1 || len(d.Unsure) != 1 || d.Unsure[0].Slip.Name != "one-inch" || d.Unsure[0].Other != nil ||
		d.Unsure[0].Cards != 1 {
		t.Errorf("%d cards in doubt: %+v; only the card of one inch is, with the slip one-inch", d.Cards, d.Unsure)
	}
}
