package nitrogen_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
)

// A saying is a situation and the remarks that it must bring, no more and no fewer. Each is known by its first words.
type saying struct {
	sheet  *sheet.Sheet
	givens []string
	said   []string
}

const (
	drinks   = "WARNING If people drink this water:"
	well     = "WARNING This water is at or above the limit for drinking water, 10 ppm NO3-N."
	halfway  = "This water is over half the limit for drinking water, 10 ppm NO3-N."
	rootZone = "Count only water that stays in the root zone."
	rule     = "The field rule was used. It assumes that 6 in of soil on an acre weigh 2,000,000 lb."
	factor   = "The exact factor 0.226613 was used:"
	deep     = "Roots of a first-leaf tree"
	ends     = "A real block has ends, roads and missing trees."
	ownRows  = "In a hexagon the rows are 0.866"
	middle   = "The spacing is along the sides of the square."
	split    = "NOTICE If "
)

var sayings = []saying{
	{nitrogen.NitrateBasis, []string{"reported=1000 ppm NO3", "of=soil"}, nil},
	{nitrogen.NitrateBasis, []string{"reported=44.2 ppm NO3", "of=water"}, []string{halfway}},
	{nitrogen.NitrateBasis, []string{"reported=44.2 ppm NO3", "of=soil"}, nil},
	{nitrogen.NitrateBasis, []string{"reported=5 ppm NO3-N", "of=water"}, nil},
	{nitrogen.NitrateBasis, []string{"reported=5.01 ppm NO3-N", "of=water"}, []string{halfway}},
	{nitrogen.NitrateBasis, []string{"reported=45 ppm NO3", "of=water"}, []string{drinks + " 10.2 ppm NO3-N is at or " +
		"above"}},
	{nitrogen.NitrateBasis, []string{"reported=9.99 ppm NO3-N", "of=water"}, []string{halfway}},
	{nitrogen.NitrateBasis, []string{"reported=10 ppm NO3-N", "of=water"}, []string{drinks + " 10 ppm NO3-N is at or " +
		"above"}},

	{nitrogen.SoilNitrogen, []string{"nitrate=12 ppm NO3-N", "depth=24 in"}, []string{rule}},
	{nitrogen.SoilNitrogen, []string{"nitrate=12 ppm NO3-N", "depth=24.01 in"}, []string{rule, deep}},
	{nitrogen.SoilNitrogen, []string{"nitrate=12 ppm NO3-N", "depth=2 ft", "bulk-density=1.3 g/cm3"}, []string{
		"Your bulk density was used: 84.8 lb N/ac. The field rule would say 96 lb N/ac.",
		"The field rule is 13.1 % off for this soil."}},
	{nitrogen.SoilNitrogen, []string{"nitrate=0 ppm NO3-N", "depth=2 ft", "bulk-density=1.3 g/cm3"},
		[]string{"Your bulk density was used: 0 lb N/ac. The field rule would say 0 lb N/ac."}},
	{nitrogen.SoilNitrogen, []string{"nitrate=50 ppm NO3-N", "depth=12 in"}, []string{rule}},
	{nitrogen.SoilNitrogen, []string{"nitrate=50.1 ppm NO3-N", "depth=12 in"},
		[]string{rule, "NOTICE 200 lb N/ac is a great deal."}},
	{nitrogen.SoilNitrogen, []string{"nitrate=100 ppm NO3-N", "depth=36 in", "bulk-density=1.3 g/cm3"},
		[]string{"Your bulk density was used: 1,061 lb N/ac.", "The field rule is 13.1 % off", deep,
			"NOTICE 1,061 lb N/ac is a great deal."}},

	{nitrogen.WaterNitrogen, []string{"nitrate=5 ppm NO3-N", "water=12 in"}, []string{rootZone, factor}},
	{nitrogen.WaterNitrogen, []string{"nitrate=9.99 ppm NO3-N", "water=12 in"}, []string{halfway, rootZone, factor}},
	{nitrogen.WaterNitrogen, []string{"nitrate=10 ppm NO3-N", "water=12 in"}, []string{well, rootZone, factor}},
	{nitrogen.WaterNitrogen, []string{"nitrate=10 mg/L NO3-N", "water=0 in"}, []string{well, rootZone}},
	{nitrogen.WaterNitrogen, []string{"nitrate=44 mg/L NO3", "water=12 in"}, []string{halfway, rootZone, factor}},
	{nitrogen.WaterNitrogen, []string{"nitrate=45 ppm NO3", "water=12 in"}, []string{well, rootZone, factor}},

	{nitrogen.TreeDensity, []string{"pattern=rectangle", "tree=18 ft", "row=22 ft"}, []string{ends}},
	{nitrogen.TreeDensity, []string{"pattern=square", "tree=20 ft"}, []string{ends}},
	{nitrogen.TreeDensity, []string{"pattern=square", "tree=20 ft", "row=20 ft"}, []string{ends}},
	{nitrogen.TreeDensity, []string{"pattern=square", "tree=6 m", "row=6 m"}, []string{ends}},
	{nitrogen.TreeDensity, []string{"pattern=hexagon", "tree=20 ft"}, []string{ends}},
	{nitrogen.TreeDensity, []string{"pattern=hexagon", "tree=20 ft", "row=17 ft"}, []string{ownRows, ends}},
	{nitrogen.TreeDensity, []string{"pattern=quincunx", "tree=30 ft"}, []string{middle, ends}},
	{nitrogen.TreeDensity, []string{"pattern=double-row", "tree=6 ft", "row=22 ft"}, []string{ends}},

	{nitrogen.TreeRate, []string{"rate=1 oz N/tree", "trees=110 trees/ac"}, nil},
	{nitrogen.TreeRate, []string{"rate=1.01 oz N/tree", "trees=110 trees/ac"},
		[]string{split + "1.01 oz of nitrogen a tree is a whole season's rate, split it"}},
	{nitrogen.TreeRate, []string{"rate=2 oz N/tree", "trees=110 trees/ac", "leaf=2"}, nil},
	{nitrogen.TreeRate, []string{"rate=1 oz N/tree", "trees=110 trees/ac", "leaf=1"}, nil},
	{nitrogen.TreeRate, []string{"rate=4 oz N/tree", "trees=110 trees/ac", "leaf=1"}, []string{wholeYear, split + "4 oz"}},
	{nitrogen.TreeRate, []string{"rate=4.01 oz N/tree", "trees=110 trees/ac", "leaf=1"},
		[]string{"NOTICE For a whole season 4.01 oz of nitrogen a tree is more than young trees are given:",
			split + "4.01 oz"}},
	{nitrogen.TreeRate, []string{"rate=16 oz N/tree", "trees=110 trees/ac", "leaf=4"}, []string{split + "16 oz"}},
	{nitrogen.TreeRate, []string{"rate=5 oz N/tree", "trees=110 trees/ac", "leaf=9"}, nil},
	{nitrogen.AcreRate, []string{"nitrogen=10 lb N/ac", "trees=160 trees/ac"}, nil},
	{nitrogen.AcreRate, []string{"nitrogen=30 lb N/ac", "trees=120 trees/ac", "leaf=1"}, []string{wholeYear, split + "4 " +
		"oz"}},
	{nitrogen.AcreRate, []string{"nitrogen=100 lb N/ac", "trees=100 trees/ac", "leaf=3"},
		[]string{"NOTICE For a whole season 16 oz of nitrogen a tree is more than young trees are given:", split + "16 oz"}},
	{nitrogen.AcreRate, []string{"nitrogen=20 lb N/ac", "trees=160 trees/ac"},
		[]string{split + "2 oz of nitrogen a tree is a whole season's rate, split it"}},
}

func TestRemarksComeExactlyWhenTheyShould(t *testing.T) {
	for _, c := range sayings {
		o := enter(t, c.sheet, c.givens...)
		said := o.Said()
		if len(said) != len(c.said) {
			t.Errorf("%s of %v says %q, want %q", c.sheet.Name, c.givens, said, c.said)
			continue
		}
		for i, s := range said {
			if text := strings.TrimSpace(s.Signal.String() + " " + s.Text); !saidLike(text, c.said[i]) {
				t.Errorf("%s of %v says %q, want %q", c.sheet.Name, c.givens, text, c.said[i])
			}
		}
	}
}

// saidLike says whether a remark begins with the words before a star, and has those after it.
func saidLike(text, want string) bool {
	begins, holds, _ := strings.Cut(want, "*")
	return strings.HasPrefix(text, begins) && strings.Contains(text, holds)
}

func TestSpacingsThatArePuzzlesAreRefused(t *testing.T) {
	needsRow := "This pattern needs the distance from row to row. Put it in. If the trees are as far apart both ways, " +
		"choose square."
	unlike := "A square has one distance both ways. Choose rectangle, or make the two distances the same."
	for _, c := range []struct {
		givens []string
		want   []string
	}{
		{[]string{"pattern=rectangle", "tree=18 ft"}, []string{needsRow}},
		{[]string{"pattern=double-row", "tree=6 ft"}, []string{needsRow}},
		{[]string{"pattern=square", "tree=18 ft", "row=22 ft"}, []string{unlike}},
	} {
		_, err := nitrogen.TreeDensity.Evaluate(write(t, nitrogen.TreeDensity, c.givens...))
		var refused *sheet.Refused
		if !errors.As(err, &refused) || !slices.Equal(refused.Sentences, c.want) {
			t.Errorf("%v: %v, want %q", c.givens, err, c.want)
		}
	}
}

// A figure that is too good says which of the two forms the report must name, and not the other way round: a report in
// NO3 that is read as NO3-N gives 4.43 times too much.
func TestAGreatDealAsksForTheRightForm(t *testing.T) {
	o := enter(t, nitrogen.SoilNitrogen, "nitrate=80 ppm NO3-N", "depth=18 in")
	want := "480 lb N/ac is a great deal. Does the report say NO3-N, and not NO3? Check it before " +
		"you use the answer."
	if !slices.ContainsFunc(o.Said(), func(s sheet.Said) bool { return s.Signal == sheet.Notice && s.Text == want }) {
		t.Errorf("%q is not among %q", want, o.Said())
	}
}
