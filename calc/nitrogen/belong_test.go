package nitrogen_test

import (
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
)

// A ticket or a label that may be of another material, in every sheet that takes them.
func init() {
	const (
		ticket = "NOTICE Your gallon weighs 11.05 lb/gal, and a gallon of this material usually weighs 10.6 lb product/gal."
		label  = "NOTICE Your label has 32 % N, and this grade has 28 % N of product: the weight of a gallon, 10.67"
		grade  = "NOTICE Your label has 28 % N, and this grade has 20 % N of product. Is the label of"
	)
	amount := func(more ...string) []string { return append([]string{"nitrogen=30 lb N/ac"}, more...) }
	put := func(more ...string) []string {
		return append([]string{"amount=20 lb/ac", "trees=110 trees/ac"}, more...)
	}
	fed := func(more ...string) []string {
		return feedsOf("6", "2", more[0][len("material="):], append(more[1:], "last=2027-04-15")...)
	}
	injected := func(more ...string) []string {
		return feedOf(more[0][len("material="):], "6 h", "2 h", "2 h", more[1:]...)
	}
	for _, c := range []struct {
		sheet  *sheet.Sheet
		givens func(more ...string) []string
		tank   bool     // it says what the material must be kept from
		after  []string // what is said besides
		uan    []string // what is said besides of UAN-28
	}{
		{nitrogen.MaterialAmount, amount, true, []string{sours}, []string{three, freezes, onTop, sours}},
		{nitrogen.MaterialNitrogen, put, true, nil, nil},
		{nitrogen.FeedSchedule, fed, false, olderSaid(), olderSaid()},
		{nitrogen.Injection, injected, true, []string{neverBack, thirds, drowned},
			[]string{neverBack, onLiquids, thirds, drowned}},
	} {
		said := func(material string, rest []string, notice ...string) []string {
			var kept []string
			if c.tank {
				kept = tanked(material)
			} else if material == "AN-20" {
				kept = []string{flames}
			}
			return append(append(kept, notice...), rest...)
		}
		sayings = append(sayings,
			saying{c.sheet, c.givens("material=AN-20", "density=11.05 lb/gal"), said("AN-20", c.after, ticket)},
			saying{c.sheet, c.givens("material=AN-20", "density=10.9 lb/gal"), said("AN-20", c.after)},
			saying{c.sheet, c.givens("material=UAN-28", "analysis=32 % N"), said("UAN-28", c.uan, label)},
			saying{c.sheet, c.givens("material=UAN-28", "analysis=28.5 % N"), said("UAN-28", c.uan)},
			saying{c.sheet, c.givens("material=AN-20", "density=11.05 lb/gal", "analysis=28 % N"),
				said("AN-20", c.after, grade)},
		)
	}
	sayings = append(sayings, saying{nitrogen.MaterialCompare,
		[]string{"nitrogen=30 lb N/ac", "first=AN-20", "first-price=420 $/ton", "second=AN-20", "third=none"},
		[]string{flames, apart, "Leaching: 50 %", "Leaching: 50 %"}})
}

// A label of another material is noticed for a liquid too of which no weight is listed, with a weight from its ticket.
// A dry material that was dissolved has the analysis of its solution, and none is.
func TestOtherLabelsAreNoticed(t *testing.T) {
	for material, want := range map[string]bool{"15-0-0-16S": true, "AN-20": true, "46-0-0": false} {
		o := enter(t, nitrogen.MaterialAmount,
			"nitrogen=30 lb N/ac", "material="+material, "density=9.6 lb/gal", "analysis=23 % N")
		noticed := slices.ContainsFunc(o.Said(), func(said sheet.Said) bool {
			return strings.HasPrefix(said.Text, "Your label has 23 % N, and this grade has ")
		})
		if noticed != want {
			t.Errorf("%s with 23 %% N: noticed %v, want %v", material, noticed, want)
		}
	}
}
