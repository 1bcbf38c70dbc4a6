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
	{nitrogen.SeasonBudget, []string{"need=60 lb N/ac fed", "soil=10 lb N/ac", "water=18 lb N/ac", "efficiency=80 %"}},
	{nitrogen.UptakeShare, []string{"nitrogen=220 lb N/ac", "crop=walnut"}},
	{nitrogen.LeafLevel, level("almond", "nitrogen", "2.8")},
	{nitrogen.MaterialAmount, []string{"nitrogen=30 lb N/ac", "material=11-52-0", "price=700 $/ton"}},
	{nitrogen.MaterialAmount, []string{"nitrogen=30 lb N/ac", "material=UAN-32", "price=2.4 $/gal"}},
	{nitrogen.MaterialNitrogen, []string{"amount=9 gal/ac", "material=UAN-32", "trees=110 trees/ac"}},
}

// A wrong answer must tell which slip it came from, so each is seen apart from the right one and from the others of
// the same answer, in the digits that a reader sees. Every slip is in one of the situations or made with usual numbers.
func TestSlipsAreToldApart(t *testing.T) {
	met := map[string]bool{}
	for _, c := range situations {
		toldApart(t, c.sheet, entered(t, c.sheet, c.givens...), met)
	}
	for _, s := range nitrogen.Shelf() {
		entries := map[string]sheet.Entry{}
		for name, value := range typicalValues(s) {
			entries[name] = sheet.Entry{Value: value, High: value}
		}
		toldApart(t, s, entries, met)
	}
	for _, s := range nitrogen.Shelf() {
		for _, slip := range s.Slips {
			if !met[s.Name+", "+slip.Name] {
				t.Errorf("%s: no situation has the slip %s", s.Name, slip.Name)
			}
		}
	}
}

func toldApart(t *testing.T, s *sheet.Sheet, values map[string]sheet.Entry, met map[string]bool) {
	t.Helper()
	o, err := sheet.NewBench(s).Work(values)
	if err != nil {
		t.Fatal(err)
	}
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
			value, open := slips[slip.Name]
			if !open {
				continue
			}
			met[s.Name+", "+slip.Name] = true
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
		{"one-slice", "the sample is as deep as the rule's slice",
			situation{nitrogen.SoilNitrogen, []string{"nitrate=12 ppm NO3-N", "depth=6 in"}}},
		{"one-inch", "one inch was put on",
			situation{nitrogen.WaterNitrogen, []string{"nitrate=12 ppm NO3-N", "water=1 in"}}},
		{"divided", "an ounce a tree",
			situation{nitrogen.TreeRate, []string{"rate=1 oz N/tree", "trees=141 trees/ac"}}},
	} {
		slips, err := c.sheet.SlipValues(entered(t, c.sheet, c.givens...))
		if err != nil {
			t.Fatal(err)
		}
		right := enter(t, c.sheet, c.givens...).Value(c.sheet.Slips[indexOfSlip(t, c.sheet, c.slip)].Answer).Value
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
			map[string]float64{"not-converted": 45, "upside-down": 45 * 4.4266, "nitrogen-for-nitrate": 45 / 4.4266,
				"nitrate-upside-down": 45 / 4.4268 / 4.4266}},
		{situation{nitrogen.SoilNitrogen, []string{"nitrate=12 ppm NO3-N", "depth=12 in"}}, map[string]float64{
			"nitrate-for-nitrogen": 48 * 4.4266, "converted-twice": 48 / 4.4266, "one-slice": 24, "inches-not-slices": 288,
			"feet-for-inches": 4, "kilograms-for-pounds": 48 * 1.12085}},
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
			"credits-added": 68, "loss-added": 35*1.3 - 18, "loss-added-last": 17 * 1.3, "share-as-percent": 4982}},
		{situation{nitrogen.SeasonBudget,
			[]string{"need=35 lb N/ac fed", "soil=10 lb N/ac", "water=8 lb N/ac", "efficiency=70 %"}}, map[string]float64{
			"efficiency-multiplied": 6.5, "no-credits": 35, "divided-twice": 32, "credits-added": 53}},
		{situation{nitrogen.SeasonBudget, []string{"need=35 lb N/ac fed", "soil=10 lb N/ac", "water=8 lb N/ac"}},
			map[string]float64{"no-credits": 35, "credits-added": 53}},
	} {
		slipsByHand(t, c.situation, c.want)
	}
}

// slipsByHand wants every slip of a situation, and no other, to be what was worked by hand.
func slipsByHand(t *testing.T, c situation, want map[string]float64) {
	t.Helper()
	slips, err := c.sheet.SlipValues(entered(t, c.sheet, c.givens...))
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
