package nitrogen_test

import (
	"slices"
	"testing"

	"acreleaf/calc/nitrogen"
)

// A slip that cannot be made with the numbers at hand, or that would come out right there, is not told.
func TestSlipsThatCannotBeMadeAreNotTold(t *testing.T) {
	density, season, share := nitrogen.TreeDensity, nitrogen.SeasonBudget, nitrogen.UptakeShare
	amount, back, compare := nitrogen.MaterialAmount, nitrogen.MaterialNitrogen, nitrogen.MaterialCompare
	lossless := []string{"need=35 lb N/ac taken up", "soil=10 lb N/ac", "water=8 lb N/ac", "efficiency=100 %"}
	two := []string{"nitrogen=30 lb N/ac", "first=15.5-0-0-19Ca", "second=46-0-0", "third=none"}
	byGallon := []string{"nitrogen=30 lb N/ac", "material=UAN-32", "price=2 $/gal"}
	byPound := []string{"amount=90 lb/ac", "material=UAN-32", "trees=110 trees/ac"}
	for _, c := range []struct {
		why string
		situation
		slips []string
	}{
		{"a square has one distance both ways", situation{density, []string{"pattern=square", "tree=20 ft"}},
			[]string{"rows-for-trees"}},
		{"nothing is lost", situation{season, lossless},
			[]string{"efficiency-multiplied", "no-efficiency", "divided-twice", "loss-added", "loss-added-last"}},
		{"there are no credits", situation{season, budget("35", "0", "0")}, []string{"no-credits", "credits-added"}},
		{"the credits come up to the need", situation{season, budget("35", "20", "15")},
			[]string{"efficiency-multiplied", "loss-added", "loss-added-last"}},
		{"the credits cover what must be fed", situation{season, budget("35", "30", "25")}, []string{"no-efficiency"}},
		{"the need is one that was fed", situation{season, fedBudget("35", "10", "8", "efficiency=70 %")},
			[]string{"no-efficiency", "loss-added", "loss-added-last", "share-as-percent"}},
		{"no share is known", situation{season, fedBudget("35", "10", "8")},
			[]string{"efficiency-multiplied", "divided-twice"}},
		{"walnut takes up even parts", situation{share, []string{"nitrogen=200 lb N/ac", "crop=walnut"}},
			[]string{"first-even", "second-even", "third-even", "fourth-even"}},
		{"pistachio has two stages", situation{share, []string{"nitrogen=200 lb N/ac", "crop=pistachio"}},
			[]string{"third-even", "fourth-even", "third-of-the-rest", "fourth-of-the-rest"}},
		{"calcium nitrate needs no lime", situation{compare, two},
			[]string{"first-lime-of-a-pound", "first-lime-of-material"}},
		{"the price is for a gallon", situation{amount, byGallon}, []string{"ton-for-pound", "metric-ton"}},
		{"the amount is in pounds", situation{back, byPound}, []string{"water-weight", "fluid-ounces"}},
		{"the range has one end", situation{nitrogen.LeafLevel, level("almond", "potassium", "1.7")}, []string{"far-end"}},
		{"no season's limit is known of old trees", situation{nitrogen.FeedSchedule, feedsOf("150", "4", "46-0-0")},
			[]string{"season-limit"}},
		{"the season is within its limit", situation{nitrogen.FeedSchedule, feedsOf("20", "1", "46-0-0")},
			[]string{"season-limit"}},
		{"the water goes beyond the roots on every side", situation{nitrogen.RootShare, circlesOf("12", "2", "2")},
			[]string{"emitter-at-trunk"}},
		{"the roots reach all of the water", situation{nitrogen.RootShare, circlesOf("2", "4", "1")}, []string{"divided"}},
	} {
		slips, err := c.sheet.SlipValues(entered(t, c.sheet, c.givens...))
		if err != nil {
			t.Fatal(err)
		}
		for _, slip := range c.slips {
			indexOfSlip(t, c.sheet, slip)
			if got, told := slips[slip]; told {
				t.Errorf("%s, %s: the slip %s is told, and gives %v", c.sheet.Name, c.why, slip, got)
			}
		}
	}
}

// A grade is nitrogen, phosphate, potash, and then what else is told. 30 lb of nitrogen over another of these numbers:
// 30 ÷ 34 % is 88.2 lb. Where a number is 0, or that of nitrogen, nobody can go wrong by it.
func TestOtherNumbersOfAGrade(t *testing.T) {
	phosphate := map[string]float64{"16-20-0": 20, "11-52-0": 52, "18-46-0": 46, "10-34-0": 34}
	last := map[string]float64{"21-0-0-24S": 24, "15.5-0-0-19Ca": 19, "13-0-46": 46, "12-0-0-26S": 26, "15-0-0-16S": 16}
	for _, name := range materialNames() {
		slips, err := nitrogen.MaterialAmount.SlipValues(
			entered(t, nitrogen.MaterialAmount, "nitrogen=30 lb N/ac", "material="+name))
		if err != nil {
			t.Fatal(err)
		}
		for slip, numbers := range map[string]map[string]float64{
			"phosphate-for-nitrogen": phosphate, "last-for-nitrogen": last,
		} {
			number, other := numbers[name]
			got, told := slips[slip]
			if told != other {
				t.Errorf("%s: %s is told %v, want %v", name, slip, told, other)
				continue
			}
			if told {
				alike(t, name+", "+slip, got, 30*100/number)
			}
		}
	}
	for name := range phosphate {
		if !slices.Contains(materialNames(), name) {
			t.Errorf("there is no %s", name)
		}
	}
}
