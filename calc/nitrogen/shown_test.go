package nitrogen_test

import (
	"slices"
	"testing"

	"acreleaf/calc/nitrogen"
)

// The work must read as it would on the back of an envelope. Units make some wrong formulas come out right (16 oz/lb is
// one, so multiplying by it changes nothing but the reading), which the answer alone would not show.
func TestWorkReadsAsAGrowerWouldWriteIt(t *testing.T) {
	for _, c := range []struct {
		situation
		work []string
	}{
		{situation{nitrogen.NitrateBasis, []string{"reported=45 ppm NO3", "of=water"}}, []string{
			"nitrogen = reported × 14.007 ÷ 62.004 = 45 ppm NO3 × 14.007 ÷ 62.004 = 10.2 ppm NO3-N",
			"nitrate = reported = 45 ppm NO3"}},
		{situation{nitrogen.SoilNitrogen, []string{"nitrate=12 ppm NO3-N", "depth=12 in"}}, []string{
			"by the field rule = nitrate × 2 lb/ac per ppm × depth ÷ 6 in = 12 ppm NO3-N × 2 lb/ac per ppm × 12 " +
				"in ÷ 6 in = 48 lb N/ac present",
			"nitrogen = by the field rule = 48 lb N/ac present"}},
		{situation{nitrogen.SoilNitrogen, []string{"nitrate=10 ppm NO3-N", "depth=12 in", "bulk-density=1.3 g/cm3"}},
			[]string{"by the field rule = nitrate × 2 lb/ac per ppm × depth ÷ 6 in = 10 ppm NO3-N × 2 lb/ac per " +
				"ppm × 12 in ÷ 6 in = 40 lb N/ac present",
				"by the weight of the soil = nitrate × bulk density × depth × 0.226613 = 10 ppm NO3-N × 1.3 " +
					"g/cm3 × 12 in × 0.226613 = 35.4 lb N/ac present",
				"difference = the size of (1 − by the field rule ÷ by the weight of the soil) = the size of (1 " +
					"− 40 lb N/ac present ÷ 35.352 lb N/ac present) = 13.1 %",
				"nitrogen = by the weight of the soil = 35.4 lb N/ac present"}},
		{situation{nitrogen.WaterNitrogen, []string{"nitrate=10 ppm NO3-N", "water=12 in"}}, []string{
			"per inch = nitrate × 0.226613 lb/ac per ppm and inch = " +
				"10 ppm NO3-N × 0.226613 lb/ac per ppm and inch = 2.27 lb N/ac fed per in",
			"nitrogen = per inch × water = 2.27 lb N/ac fed per in × 12 in = 27.2 lb N/ac fed",
			"with 0.23 = nitrate × 0.23 lb/ac per ppm and inch × water = 10 ppm NO3-N × 0.23 lb/ac per ppm and " +
				"inch × 12 in = 27.6 lb N/ac fed",
			"difference = with 0.23 ÷ nitrogen − 1 = 27.6 lb N/ac fed ÷ 27.194 lb N/ac fed − 1 = 1.49 %"}},
		{situation{nitrogen.TreeDensity, []string{"pattern=rectangle", "tree=18 ft", "row=22 ft"}}, []string{
			"row distance = row = 22 ft",
			"area = row distance × tree ÷ 1 tree = 22 ft × 18 ft ÷ 1 tree = 396 ft2/tree",
			"trees = 43,560 ft2/ac ÷ area = 43,560 ft2/ac ÷ 396 ft2/tree = 110 trees/ac"}},
		{situation{nitrogen.TreeDensity, []string{"pattern=hexagon", "tree=20 ft"}}, []string{
			"row distance = tree × √3 ÷ 2 = 20 ft × √3 ÷ 2 = 17.3 ft",
			"area = row distance × tree ÷ 1 tree = 17.3 ft × 20 ft ÷ 1 tree = 346 ft2/tree",
			"trees = 43,560 ft2/ac ÷ area = 43,560 ft2/ac ÷ 346 ft2/tree = 126 trees/ac"}},
		{situation{nitrogen.TreeRate, []string{"rate=3 oz N/tree", "trees=110 trees/ac"}}, []string{
			"nitrogen = rate × trees ÷ 16 oz/lb = 3 oz N/tree fed × 110 trees/ac ÷ 16 oz/lb = 20.6 lb N/ac fed"}},
		{situation{nitrogen.AcreRate, []string{"nitrogen=35 lb N/ac", "trees=110 trees/ac"}}, []string{
			"rate = nitrogen × 16 oz/lb ÷ trees = 35 lb N/ac fed × 16 oz/lb ÷ 110 trees/ac = 5.09 oz N/tree fed"}},
		{situation{nitrogen.SeasonBudget, fedBudget("35", "10", "8")}, []string{
			"fed need = need = 35 lb N/ac fed",
			"in reach = soil × reach = 10 lb N/ac present × 100 % = 10 lb N/ac fed",
			"credits = in reach + water = 10 lb N/ac fed + 8 lb N/ac fed = 18 lb N/ac fed",
			"apply = the larger of 0 lb N/ac fed and (fed need − credits) = " +
				"the larger of 0 lb N/ac fed and (35 lb N/ac fed − 18 lb N/ac fed) = 17 lb N/ac fed",
			"surplus = the larger of 0 lb N/ac fed and (credits − fed need) = " +
				"the larger of 0 lb N/ac fed and (18 lb N/ac fed − 35 lb N/ac fed) = 0 lb N/ac fed"}},
	} {
		o := enter(t, c.sheet, c.givens...)
		if got := o.Work(); !slices.Equal(got, c.work) {
			t.Errorf("%s of %v:\n got  %q\n want %q", c.sheet.Name, c.givens, got, c.work)
		}
	}
}
