package nitrogen_test

import (
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
)

// What calculations come to, in the words of their own sentences. The numbers are worked by hand.
func TestSentencesSayWhatTheAnswersAre(t *testing.T) {
	compared := func(prices ...string) []string {
		return append([]string{"nitrogen=10 lb N/ac", "first=34-0-0", "second=46-0-0", "third=none"}, prices...)
	}
	budget := func(soil, water string, more ...string) []string {
		return append([]string{"need=35 lb N/ac fed", "reach=100 %", "soil=" + soil + " lb N/ac",
			"water=" + water + " lb N/ac"}, more...)
	}
	for _, c := range []struct {
		sheet  *sheet.Sheet
		givens []string
		want   string
	}{
		{nitrogen.SeasonBudget, budget("12", "8"),
			"Put on 15 lb of nitrogen an acre; the soil and the water bring the other 20."},
		{nitrogen.SeasonBudget, budget("0", "8"), "Put on 27 lb of nitrogen an acre; the water brings the other 8."},
		{nitrogen.SeasonBudget, budget("12", "0"), "Put on 23 lb of nitrogen an acre; the soil brings the other 12."},
		{nitrogen.SeasonBudget, budget("0", "0"), "Put on 35 lb of nitrogen an acre: there are no credits."},
		{nitrogen.SeasonBudget, budget("12", "0", "compost=3 lb N/ac"),
			"Put on 20 lb of nitrogen an acre; what is there already brings the other 15."},
		{nitrogen.SeasonBudget, budget("30", "8"),
			"What is there covers the need of 35 lb of nitrogen an acre: put on none."},
		{nitrogen.SoilNitrogen, []string{"nitrate=12 ppm NO3-N", "depth=12 in"},
			"This layer of 12 in holds 48 lb of nitrogen an acre as nitrate."},
		{nitrogen.UptakeEfficiency, []string{"system=furrow-or-broadcast"},
			"Trees take up 50 % of it: put on 2 lb for each pound that they are to take up."},
		{nitrogen.TreeDensity, []string{"pattern=square", "tree=20 ft"},
			"This spacing gives 400 square feet a tree, which is 109 trees an acre."},
		{nitrogen.TreeRate, []string{"rate=4 oz N/tree", "trees=100 trees/ac"},
			"4 oz of nitrogen a tree is 25 lb of nitrogen an acre."},
		{nitrogen.AcreRate, []string{"nitrogen=25 lb N/ac", "trees=100 trees/ac"},
			"25 lb of nitrogen an acre is 4 oz of nitrogen a tree."},
		{nitrogen.MaterialAmount, []string{"nitrogen=23 lb N/ac", "material=46-0-0", "price=500 $/ton"},
			"Put on 50 lb of material an acre. It costs $12.50 an acre."},
		{nitrogen.MaterialAmount, []string{"nitrogen=20 lb N/ac", "material=AN-20", "density=10 lb/gal"},
			"Put on 100 lb of material an acre, which is 10 gal an acre."},
		{nitrogen.MaterialCompare, compared("first-price=340 $/ton", "second-price=920 $/ton"),
			"The first material has the cheapest nitrogen: $0.50 a pound of nitrogen."},
		{nitrogen.MaterialCompare, compared("first-price=680 $/ton", "second-price=460 $/ton"),
			"The second material has the cheapest nitrogen: $0.50 a pound of nitrogen."},
		{nitrogen.MaterialCompare, compared("first-price=680 $/ton"),
			"Put in the price of each material to see which has the cheapest nitrogen."},
		{nitrogen.MaterialCompare, []string{"nitrogen=10 lb N/ac", "first=34-0-0", "second=34-0-0", "third=none",
			"first-price=680 $/ton", "second-price=680 $/ton"},
			"None of them has the cheapest nitrogen alone. Choose by what they do to the soil and by how they are handled."},
		{nitrogen.FeedSchedule, feedsOf("27.5", "1", "AN-20"),
			"Give 4 feeds of 1 oz of nitrogen a tree, from Apr 15, 2027 to Jul 15, 2027."},
		{nitrogen.FeedSchedule, feedsOf("5.5", "1", "AN-20"), "One feed of 0.8 oz of nitrogen a tree is enough."},
		{nitrogen.FeedSchedule, feedsOf("0", "1", "AN-20"), "There is nothing to feed."},
		{nitrogen.FeedSchedule, feedsOf("27.5", "1", "AN-20", "cap=5 oz N/tree"),
			"This is too much in one feed: 4 oz of nitrogen a tree is over 1 oz, the most for this leaf."},
		{nitrogen.Balance, []string{"applied=200 lb N/ac", "removed=160 lb N/ac"},
			"More was put on than left with the crop: 1.25 lb for each pound that left."},
		{nitrogen.Balance, []string{"applied=120 lb N/ac", "removed=160 lb N/ac"},
			"Less was put on than left with the crop: 0.75 lb for each pound that left."},
	} {
		if got := enter(t, c.sheet, c.givens...).Words(); !slices.Equal(got, []string{c.want}) {
			t.Errorf("%s of %v says %q, want %q", c.sheet.Name, c.givens, got, c.want)
		}
	}
}

// A page has a title and a sentence of each calculation, and says of a choice that may be none that it may.
func TestEveryCalculationSaysWhatItIs(t *testing.T) {
	for _, s := range nitrogen.Shelf() {
		if s.Title == "" || !strings.HasSuffix(s.Summary, ".") {
			t.Errorf("%s has the title %q and the summary %q", s.Name, s.Title, s.Summary)
		}
		for _, g := range s.Givens {
			none := slices.ContainsFunc(g.Choices, func(o sheet.Option) bool { return o.Name == "none" })
			if none && !strings.Contains(g.Hint, "none") {
				t.Errorf("%s of %s may be none, and its hint is %q", g.Name, s.Name, g.Hint)
			}
		}
	}
}
