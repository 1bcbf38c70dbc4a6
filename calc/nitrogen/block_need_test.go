package nitrogen_test

import (
	"errors"
	"strings"
	"testing"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
)

func init() {
	situations = append(situations,
		situation{nitrogen.BlockNeed, need("almond", "1", "rate=3.5 oz N/tree fed")},
		situation{nitrogen.BlockNeed, need("walnut", "6", "yield=3000 lb/ac")},
		situation{nitrogen.BlockTrees, countedOn("1500", "20")},
		situation{nitrogen.WaterApplied, append(applied("1", "2", "110", "12"), "known=6 in")},
	)
}

func need(crop, leaf string, more ...string) []string {
	return append([]string{"crop=" + crop, "leaf=" + leaf, "trees=100 trees/ac", "efficiency=70 %"}, more...)
}

func countedOn(trees, acres string) []string {
	return []string{"spaced=110 trees/ac", "count=" + trees + " trees", "acres=" + acres + " ac"}
}

// A rate that is known is what tree-rate makes of it, whatever the crop; without one the need is what crop-demand has,
// over the share that is taken up.
func TestBlockNeedIsThatOfTheOtherCalculations(t *testing.T) {
	for _, crop := range []string{"almond", "walnut", "pistachio", "pecan", "hazelnut"} {
		got := answer(t, nitrogen.BlockNeed, "nitrogen", "lb N/ac", need(crop, "2", "rate=3.5 oz N/tree fed")...)
		want := answer(t, nitrogen.TreeRate, "nitrogen", "lb N/ac", "rate=3.5 oz N/tree fed", "trees=100 trees/ac")
		alike(t, crop+" by its rate", got, want)
	}
	for _, crop := range []string{"almond", "walnut", "pistachio"} {
		for _, leaf := range []string{"2", "5", "9"} {
			for _, yield := range []string{"0", "900", "2400"} {
				got := answer(t, nitrogen.BlockNeed, "nitrogen", "lb N/ac", need(crop, leaf, "yield="+yield+" lb/ac")...)
				taken := answer(t, nitrogen.CropDemand, "demand", "lb N/ac", "crop="+crop, "leaf="+leaf,
					"yield="+yield+" lb/ac")
				alike(t, crop+" of leaf "+leaf+" with "+yield, got, taken/0.7)
			}
		}
	}
}

// What no source gives is asked for, by a sentence, and nothing is answered.
func TestBlockNeedAsksForWhatIsNotKnown(t *testing.T) {
	for _, c := range []struct{ crop, leaf, says string }{
		{"almond", "1", "first-leaf tree"}, {"hazelnut", "1", "first-leaf tree"},
		{"pecan", "2", "pecan or hazelnut"}, {"hazelnut", "8", "pecan or hazelnut"},
	} {
		_, err := nitrogen.BlockNeed.Evaluate(write(t, nitrogen.BlockNeed, need(c.crop, c.leaf)...))
		if !errors.As(err, new(*sheet.Refused)) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s of leaf %s: %v", c.crop, c.leaf, err)
		}
	}
}

// Trees that were counted count in place of the spacing, and inches that are known in place of the emitters.
func TestWhatIsCountedCountsInPlaceOfWhatIsWorked(t *testing.T) {
	alike(t, "trees", answer(t, nitrogen.BlockTrees, "trees", "trees/ac", countedOn("1500", "20")...), 75)
	alike(t, "spaced", answer(t, nitrogen.BlockTrees, "trees", "trees/ac", "spaced=110 trees/ac", "acres=20 ac"), 110)
	known := append(applied("1", "2", "110", "12"), "known=6 in")
	alike(t, "inches", answer(t, nitrogen.WaterApplied, "depth", "in", known...), 6)
	alike(t, "gallons", answer(t, nitrogen.WaterApplied, "tree-volume", "gal/tree", known...),
		6*43560.0/12*12*12*12/231/110)
}
