package nitrogen_test

import (
	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
)

// A ticket or a label that may be of another material, in every sheet that takes them.
func init() {
	const (
		ticket = "NOTICE Your gallon weighs 11.05 lb/gal, and a gallon of this material usually weighs 10.6 lb product/gal."
		label  = "NOTICE Your label has 32 % N, and this grade has 28 % N of product: the weight of a gallon, 10.6"
		grade  = "NOTICE Your label has 28 % N, and this grade has 20 % N of product. Check that the label"
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
		after  []string // what is said besides
		uan    []string // what is said besides of UAN-28
	}{
		{nitrogen.MaterialAmount, amount, []string{sours}, []string{three, freezes, onTop, sours}},
		{nitrogen.MaterialNitrogen, put, nil, nil},
		{nitrogen.FeedSchedule, fed, feedSaid(), feedSaid()},
		{nitrogen.Injection, injected, []string{neverBack, thirds, drowned}, []string{neverBack, thirds, drowned}},
	} {
		first := func(notice string, rest []string) []string { return append([]string{notice}, rest...) }
		sayings = append(sayings,
			saying{c.sheet, c.givens("material=AN-20", "density=11.05 lb/gal"), first(ticket, c.after)},
			saying{c.sheet, c.givens("material=AN-20", "density=10.9 lb/gal"), c.after},
			saying{c.sheet, c.givens("material=UAN-28", "analysis=32 % N"), first(label, c.uan)},
			saying{c.sheet, c.givens("material=UAN-28", "analysis=28.5 % N"), c.uan},
			saying{c.sheet, c.givens("material=AN-20", "density=11.05 lb/gal", "analysis=28 % N"), first(grade, c.after)},
		)
	}
	sayings = append(sayings, saying{nitrogen.MaterialCompare,
		[]string{"nitrogen=30 lb N/ac", "first=AN-20", "first-price=420 $/ton", "second=AN-20", "third=none"},
		[]string{"To see which has the cheapest nitrogen", "Leaching: 50 %", "Leaching: 50 %"}})
}
