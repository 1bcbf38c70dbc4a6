package nitrogen_test

import (
	"math/big"
	"testing"

	"acreleaf/calc/internal/reference"
	"acreleaf/calc/nitrogen"
)

func init() {
	situations = append(situations,
		situation{nitrogen.WaterApplied, applied("1", "2", "110", "12")},
		situation{nitrogen.WaterApplied, applied("10.4", "1.5", "124", "5.27")},
	)
	sayings = append(sayings,
		saying{nitrogen.WaterApplied, applied("1", "2", "110", "12"), []string{wholeAcre, leaves, drowned}},
		saying{nitrogen.WaterApplied, applied("10", "2", "110", "740"), []string{wholeAcre, leaves, drowned}},
		saying{nitrogen.WaterApplied, applied("10", "2", "110", "741"),
			[]string{wholeAcre, leaves, "NOTICE 60 in is more than a grown orchard", drowned}},
	)
	for _, given := range []string{"flow", "emitters", "trees", "hours"} {
		responses = append(responses, response{nitrogen.WaterApplied, "depth", given, 1})
		scalings = append(scalings, scaling{nitrogen.WaterApplied, "depth", 1, []string{given}},
			scaling{nitrogen.WaterApplied, "volume", 1, []string{given}})
	}
	responses = append(responses, response{nitrogen.WaterApplied, "tree-volume", "trees", 0})
}

const (
	wholeAcre = "The depth is as if the water were spread over the whole acre."
	leaves    = "This is what leaves the emitters."
)

func applied(flow, emitters, trees, hours string) []string {
	return []string{"flow=" + flow + " gal/h per emitter", "emitters=" + emitters + " emitters/tree",
		"trees=" + trees + " trees/ac", "hours=" + hours + " h"}
}

func TestPublishedIrrigation(t *testing.T) {
	rows := reference.Open(t, "k-irrigation")
	water := nitrogen.WaterApplied
	// The sheet goes from gallons to inches, so the gallons of a depth are those of the hours that bring it.
	perInch := answer(t, water, "volume", "gal/ac", applied("1", "2", "110", "12")...) /
		answer(t, water, "depth", "in", applied("1", "2", "110", "12")...)
	perFoot := answer(t, water, "volume", "gal/ft2", applied("1", "2", "110", "12")...) /
		answer(t, water, "depth", "in", applied("1", "2", "110", "12")...)
	input := func(id, name string) float64 { return rows.Row(id).Input(t, name) }

	// K01, K02: UC Sacramento Valley Orchards, ET report FAQ
	rows.Check("K01", perInch*input("K01", "depth_in"))
	rows.Check("K02", perInch*input("K02", "depth_in"))
	// K04, K05: UC ANR micro-irrigation maintenance, Microsprinkler evaluation example
	rows.Check("K04", perFoot*input("K04", "depth_in")*input("K04", "area_ft2"))
	rows.Check("K05", perFoot*input("K05", "depth_in_per_day")*input("K05", "spacing_ft2"))
	// K06: the same; the hours that bring the gallons of a tree are those over the gallons of one hour
	anHour := applied(decimal(input("K06", "gph_per_tree")), "1", "110", "1")
	rows.Check("K06", input("K06", "gal_per_tree")/answer(t, water, "tree-volume", "gal/tree", anHour...))
	// K07: the same; in one hour, at the trees of the spacing
	trees := decimal(43_560 / input("K07", "spacing_ft2"))
	rows.Check("K07", answer(t, water, "depth", "in", applied(decimal(input("K07", "gph_per_tree")), "1", trees, "1")...))
	// K08: Central Platte NRD, Irrigators formula: gallons of an inch on an acre, at a minute each
	rows.Check("K08", perInch*input("K08", "acre_in")/60)
	// K09: Central Platte NRD formula; the pump's flow falls to a hundred trees an acre
	flow := decimal(60 * input("K09", "gpm") / input("K09", "acres") / 100)
	rows.Check("K09", answer(t, water, "depth", "in", applied(flow, "1", "100", decimal(input("K09", "hours")))...))
	checkAll(t, rows, []published{
		// K10: definition
		{"K10", water, "depth", "in", applied("{gph_per_tree}", "1", "{trees_per_acre}", "{hours}")},
		// K12: definition (C01)
		{"K12", nitrogen.WaterNitrogen, "nitrogen", "lb N/ac",
			[]string{"nitrate={nitrate_n_ppm} ppm NO3-N", "water={percolate_in} in"}},
	})
	rows.LeaveOut("K03", "a week's gallons over seven days; no calculation of this shelf plans water by the day")
	rows.LeaveOut("K11", "how much more to give where water is uneven; no calculation of this shelf plans irrigation")
	rows.LeaveOut("K13", "how even a drip system should be: advice, not arithmetic")
}

// An acre-inch in gallons is 43,560 ft2 × 1/12 ft × 1,728 in3/ft3 ÷ 231 in3/gal, to the last bit.
func TestAcreInchInGallonsIsExact(t *testing.T) {
	want, _ := big.NewRat(43_560*1728, 12*231).Float64()
	if got := constant(t, nitrogen.WaterApplied, "acre-inch").Quantity.Value; got != want {
		t.Errorf("the constant is %v, want %v", got, want)
	}
}

// Water put on by the clock and its nitrogen by the inch are the nitrogen of its gallons by weight: a gallon of water
// at 1 kg/L is 3.785411784 kg, and a pound 0.45359237 kg.
func TestNitrogenOfTheGallons(t *testing.T) {
	r := random(t)
	for range draws {
		values, o := drawTaken(t, r, nitrogen.WaterApplied)
		depth, ppm := o.Value("depth").Value, 200*r.Float64()
		if depth > 120 {
			continue
		}
		byDepth := work(t, nitrogen.WaterNitrogen, map[string]float64{"nitrate": ppm, "water": depth}).Value("nitrogen").Value
		byWeight := o.Value("volume").Value * 3.785411784 / 0.45359237 * ppm / 1e6
		closeBy(t, "nitrogen by depth and by weight", byDepth, byWeight, values)
	}
}

func TestWaterAppliedByHand(t *testing.T) {
	o := work(t, nitrogen.WaterApplied, write(t, nitrogen.WaterApplied, applied("1", "2", "110", "12")...))
	for name, want := range map[string]string{
		"tree-volume": "24 gal/tree", "volume": "2,640 gal/ac", "depth": "0.0972 in",
	} {
		if got := o.Text(name); got != want {
			t.Errorf("%s is %s, want %s", name, got, want)
		}
	}
	slips, err := nitrogen.WaterApplied.SlipValues(entered(t, nitrogen.WaterApplied, applied("1", "2", "110", "12")...))
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]float64{
		"one-emitter": 12, "one-hour": 2, "one-tree": 24, "emitters-left-out": 1320,
		"feet-for-inches": 2640.0 * 12 / 325851.42857142857 / 12, "one-tree-for-acre": 24 * 12 / 325851.42857142857,
	} {
		alike(t, name, slips[name], want)
	}
	// 10 L/h from one sprinkler at each of 272 trees a hectare for 10 h is 27.2 m3/ha, 2.72 mm.
	metric := []string{"flow=10 L/h per emitter", "emitters=1 emitters/tree", "trees=272 trees/ha", "hours=10 h"}
	alike(t, "metric", answer(t, nitrogen.WaterApplied, "depth", "mm", metric...), 2.72)
}
