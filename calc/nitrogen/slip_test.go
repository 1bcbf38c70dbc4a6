package nitrogen_test

import (
	"math"
	"testing"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// A situation is a sheet at work with ordinary numbers.
type situation struct {
	sheet  *sheet.Sheet
	givens []string
}

// situations are the numbers of the guides and of a few other ordinary blocks.
var situations = []situation{
	{nitrogen.NitrateBasis, []string{"reported=45 ppm NO3", "of=water"}},
	{nitrogen.NitrateBasis, []string{"reported=12 ppm NO3-N", "of=water"}},
	{nitrogen.SoilNitrogen, []string{"nitrate=12 ppm NO3-N", "depth=12 in"}},
	{nitrogen.SoilNitrogen, []string{"nitrate=7 ppm NO3-N", "depth=24 in"}},
	{nitrogen.SoilNitrogen, []string{"nitrate=12 ppm NO3-N", "depth=12 in", "bulk-density=1.35 g/cm3"}},
	{nitrogen.WaterNitrogen, []string{"nitrate=10 ppm NO3-N", "water=12 in"}},
	{nitrogen.WaterNitrogen, []string{"nitrate=4 ppm NO3-N", "water=8 in"}},
	{nitrogen.TreeDensity, []string{"pattern=rectangle", "tree=18 ft", "row=22 ft"}},
	{nitrogen.TreeDensity, []string{"pattern=hexagon", "tree=20 ft"}},
	{nitrogen.TreeDensity, []string{"pattern=quincunx", "tree=30 ft"}},
	{nitrogen.TreeDensity, []string{"pattern=double-row", "tree=6 ft", "row=22 ft"}},
	{nitrogen.TreeRate, []string{"rate=3 oz N/tree", "trees=110 trees/ac"}},
	{nitrogen.TreeRate, []string{"rate=4 oz N/tree", "trees=141 trees/ac"}},
	{nitrogen.AcreRate, []string{"nitrogen=30 lb N/ac", "trees=110 trees/ac"}},
	{nitrogen.SeasonBudget, []string{"need=35 lb N/ac taken up", "soil=10 lb N/ac", "water=8 lb N/ac", "efficiency=70 %"}},
	{nitrogen.SeasonBudget, []string{"need=60 lb N/ac taken up", "soil=10 lb N/ac", "water=18 lb N/ac", "other=5 lb N/ac",
		"efficiency=80 %"}},
}

// A wrong answer must tell which slip it came from, so each is seen apart from the right one and from the others of
// the same answer, in the digits that a reader sees.
func TestSlipsAreToldApart(t *testing.T) {
	for _, c := range situations {
		values := write(t, c.sheet, c.givens...)
		toldApart(t, c.sheet, values)
	}
	for _, s := range nitrogen.Shelf() {
		toldApart(t, s, typicalValues(s))
	}
}

func toldApart(t *testing.T, s *sheet.Sheet, values map[string]float64) {
	t.Helper()
	o := work(t, s, values)
	slips, err := s.SlipValues(values)
	if err != nil {
		t.Fatal(err)
	}
	for _, result := range o.Answers() {
		seen := map[string]string{unit.Text(o.Value(result.Name).Value): "the right answer"}
		for _, slip := range s.Slips {
			if slip.Answer != result.Name {
				continue
			}
			value := slips[slip.Name]
			if math.IsNaN(value) || math.IsInf(value, 0) {
				t.Errorf("%s of %v: slip %s is %v", s.Name, values, slip.Name, value)
			}
			text := unit.Text(value)
			if other, taken := seen[text]; taken {
				t.Errorf("%s of %v: slip %s and %s are both %s", s.Name, values, slip.Name, other, text)
			}
			seen[text] = slip.Name
		}
	}
}

// These wrong ways happen to come out right, and a reader who goes one of them there has made no mistake that shows.
// Whoever marks an answer must ask first whether it is right.
func TestSlipsThatComeOutRight(t *testing.T) {
	for _, c := range []struct {
		slip, why string
		situation
	}{
		{"rows-for-trees", "a square has one distance both ways",
			situation{nitrogen.TreeDensity, []string{"pattern=square", "tree=20 ft"}}},
		{"one-slice", "the sample is as deep as the rule's slice",
			situation{nitrogen.SoilNitrogen, []string{"nitrate=12 ppm NO3-N", "depth=6 in"}}},
		{"one-inch", "one inch was put on",
			situation{nitrogen.WaterNitrogen, []string{"nitrate=12 ppm NO3-N", "water=1 in"}}},
		{"divided", "an ounce a tree",
			situation{nitrogen.TreeRate, []string{"rate=1 oz N/tree", "trees=141 trees/ac"}}},
		{"no-efficiency", "nothing is lost",
			situation{nitrogen.SeasonBudget,
				[]string{"need=35 lb N/ac taken up", "soil=10 lb N/ac", "water=8 lb N/ac", "efficiency=100 %"}}},
		{"no-credits", "there are none",
			situation{nitrogen.SeasonBudget,
				[]string{"need=35 lb N/ac taken up", "soil=0 lb N/ac", "water=0 lb N/ac", "efficiency=70 %"}}},
	} {
		values := write(t, c.sheet, c.givens...)
		slips, err := c.sheet.SlipValues(values)
		if err != nil {
			t.Fatal(err)
		}
		right := work(t, c.sheet, values).Value(c.sheet.Slips[indexOfSlip(t, c.sheet, c.slip)].Answer).Value
		alike(t, c.slip+" ("+c.why+")", slips[c.slip], right)
	}
}

func indexOfSlip(t testing.TB, s *sheet.Sheet, name string) int {
	t.Helper()
	for i, slip := range s.Slips {
		if slip.Name == name {
			return i
		}
	}
	t.Fatalf("%s has no slip %q", s.Name, name)
	return 0
}

// Each slip is what a grower who makes it would get on the back of an envelope.
func TestSlipsByHand(t *testing.T) {
	for _, c := range []struct {
		situation
		want map[string]float64
	}{
		{situation{nitrogen.NitrateBasis, []string{"reported=45 ppm NO3", "of=water"}},
			map[string]float64{"not-converted": 45, "upside-down": 45 * 4.4266}},
		{situation{nitrogen.SoilNitrogen, []string{"nitrate=12 ppm NO3-N", "depth=12 in"}}, map[string]float64{
			"nitrate-for-nitrogen": 48 * 4.4266, "converted-twice": 48 / 4.4266, "one-slice": 24, "inches-not-slices": 288}},
		{situation{nitrogen.WaterNitrogen, []string{"nitrate=10 ppm NO3-N", "water=12 in"}}, map[string]float64{
			"nitrate-for-nitrogen": 27.194 * 4.4266, "converted-twice": 27.194 / 4.4266, "one-inch": 2.2661,
			"feet-for-inches": 326.32, "soil-rule": 40}},
		{situation{nitrogen.TreeDensity, []string{"pattern=rectangle", "tree=18 ft", "row=22 ft"}}, map[string]float64{
			"rows-for-trees": 90, "added": 1089, "upside-down": 396.0 / 43560,
			"hexagon-for-square": 155.243}},
		{situation{nitrogen.TreeDensity, []string{"pattern=hexagon", "tree=20 ft"}}, map[string]float64{
			"rows-for-trees": 145.2, "added": 43560 / 37.3205, "upside-down": 346.41 / 43560, "hexagon-for-square": 108.9}},
		{situation{nitrogen.TreeRate, []string{"rate=3 oz N/tree", "trees=110 trees/ac"}}, map[string]float64{
			"ounces-for-pounds": 330, "one-tree": 3.0 / 16, "divided": 110.0 / 3 / 16}},
		{situation{nitrogen.AcreRate, []string{"nitrogen=30 lb N/ac", "trees=110 trees/ac"}}, map[string]float64{
			"pounds-for-ounces": 30.0 / 110, "multiplied": 30.0 * 110 / 16}},
		{situation{nitrogen.SeasonBudget,
			[]string{"need=35 lb N/ac taken up", "soil=10 lb N/ac", "water=8 lb N/ac", "efficiency=70 %"}}, map[string]float64{
			"efficiency-multiplied": 6.5, "no-credits": 50, "no-efficiency": 17, "divided-twice": 35/0.49 - 18,
			"credits-added": 68}},
	} {
		slipsByHand(t, c.situation, c.want)
	}
}

// slipsByHand wants every slip of a situation, and no other, to be what was worked by hand.
func slipsByHand(t *testing.T, c situation, want map[string]float64) {
	t.Helper()
	slips, err := c.sheet.SlipValues(write(t, c.sheet, c.givens...))
	if err != nil {
		t.Fatal(err)
	}
	if len(slips) != len(want) {
		t.Errorf("%s has %d slips, and %d are worked by hand", c.sheet.Name, len(slips), len(want))
	}
	for name, value := range want {
		if got, ok := slips[name]; !ok || math.Abs(got-value) > 1e-4*value {
			t.Errorf("%s: slip %s is %v, want %v", c.sheet.Name, name, got, value)
		}
	}
}
