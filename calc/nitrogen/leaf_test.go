package nitrogen_test

import (
	"math"
	"testing"

	"acreleaf/calc/internal/reference"
	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
)

func init() {
	situations = append(situations,
		situation{nitrogen.LeafLevel, level("almond", "nitrogen", "2.3")},
		situation{nitrogen.LeafLevel, level("almond", "potassium", "1.7")},
		situation{nitrogen.LeafLevel, level("hazelnut", "nitrogen", "1.9")},
	)
	for _, c := range []struct {
		crop, nutrient, value string
		said                  []string
	}{
		{"almond", "nitrogen", "1.9", []string{"NOTICE Under 2 % is called deficient.", low, july, bearing}},
		{"almond", "nitrogen", "2", []string{low, july, bearing}},
		{"almond", "nitrogen", "2.2", []string{in, july, bearing}},
		{"almond", "nitrogen", "2.5", []string{in, july, bearing}},
		{"almond", "nitrogen", "2.6", []string{high, july, bearing}},
		{"almond", "nitrogen", "2.8", []string{high, "NOTICE Over 2.7 % is called excessive. Too", july, bearing}},
		{"almond", "potassium", "2.8", []string{noEnd, july, bearing}},
		{"walnut", "potassium", "1.3", []string{noEnd, july, bearing}},
		{"pistachio", "potassium", "1.6", []string{low, august, bearing}},
		{"hazelnut", "nitrogen", "3.1", []string{high, "NOTICE Over 3 % is called excessive. Too", august, bearing}},
		{"hazelnut", "potassium", "3.1", []string{high, "NOTICE Over 3 % is called excessive. More of it", august, bearing}},
		{"pecan", "potassium", "1.2", []string{low, "The range is for leaves sampled in July or", bearing}},
	} {
		sayings = append(sayings, saying{nitrogen.LeafLevel, level(c.crop, c.nutrient, c.value), c.said})
	}
	own := func(value string, more ...string) []string {
		return append(level("walnut", "nitrogen", value), more...)
	}
	sayings = append(sayings,
		saying{nitrogen.LeafLevel, own("2.2", "from=2.3 %"), []string{low, july, bearing}},
		saying{nitrogen.LeafLevel, own("3.1", "from=2.3 %", "to=3 %"), []string{high, july, bearing}},
		saying{nitrogen.LeafLevel, own("3.1", "from=2.3 %"), []string{noEnd, july, bearing}},
		saying{nitrogen.LeafLevel, append(level("almond", "nitrogen", "1.9"), "from=1.8 %", "to=2.6 %"),
			[]string{in, july, bearing}},
	)
}

const (
	low     = "Below the range."
	in      = "Within the range."
	high    = "Above the range."
	noEnd   = "At or above the lowest level that is called enough. We know of no upper end"
	july    = "The range is for leaves sampled in July. Do not"
	august  = "The range is for leaves sampled in August. Do not"
	bearing = "Levels were set on bearing trees."
)

func level(crop, nutrient, value string) []string {
	return []string{"crop=" + crop, "nutrient=" + nutrient, "value=" + value + " %"}
}

// The levels as their publications print them, cell for cell; 0 where they print none.
func TestLeafLevelsAreThosePrinted(t *testing.T) {
	for _, c := range []struct {
		crop, nutrient               string
		low, high, deficient, excess float64
	}{
		// UC ANR 3364, Almond Production Manual, as printed in Almond Facts May-June 2023, page 41
		{"almond", "nitrogen", 2.2, 2.5, 2.0, 2.7},
		{"almond", "potassium", 1.4, 0, 1.0, 0},
		// Oregon State University EM 8786, August 2001, Table 1
		{"hazelnut", "nitrogen", 2.21, 2.5, 1.8, 3.0},
		{"hazelnut", "potassium", 0.81, 2.0, 0.5, 3.0},
		// Wells and Wood 2007, HortTechnology 17(4):473, abstract
		{"pecan", "nitrogen", 2.5, 2.9, 0, 0},
		{"pecan", "potassium", 1.3, 1.5, 0, 0},
		// Western Farm Press, after UC Cooperative Extension Butte County
		{"walnut", "potassium", 1.2, 0, 0.9, 0},
		// Zeng, Brown and Holtz 2001, HortScience 36(1):85, abstract: 16.9 g in a kilogram
		{"pistachio", "potassium", 1.69, 0, 0, 0},
	} {
		for column, want := range map[string]float64{
			"range-from": c.low, "range-to": c.high, "deficient-below": c.deficient, "excessive-above": c.excess,
		} {
			if got := listed(t, nitrogen.LeafLevel, c.nutrient+"-"+column, c.crop); got != want &&
				!(math.IsNaN(got) && want == 0) {
				t.Errorf("%s, %s, %s: %v, printed is %v", c.crop, c.nutrient, column, got, want)
			}
		}
	}
}

// checkLeaves checks the levels of leaves.
func checkLeaves(t *testing.T, rows *reference.Ledger) {
	of := func(crop, name string) float64 {
		return work(t, nitrogen.LeafLevel, write(t, nitrogen.LeafLevel, level(crop, "nitrogen", "2")...)).Value(name).Value
	}
	for id, where := range map[string][2]string{
		// G28 to G30: UC ANR 3364, Almond Production Manual, as printed in Almond Facts May-June 2023
		"G28": {"almond", "low"}, "G29": {"almond", "high"}, "G30": {"almond", "deficient"},
		// G31 to G33: Oregon State University EM 8786, Table 1
		"G31": {"hazelnut", "low"}, "G32": {"hazelnut", "high"}, "G33": {"hazelnut", "deficient"},
		// G34, G35: Wells and Wood 2007, HortTechnology 17:473
		"G34": {"pecan", "low"}, "G35": {"pecan", "high"},
	} {
		rows.Check(id, of(where[0], where[1]))
	}
	rows.LeaveOut("G36", "from memory, and so no level of ours: such a crop asks for the reader's own range")
	rows.LeaveOut("G37", "from memory, as G36")
}

// These are not rows of the reference file. Each is as the source beside it prints it, but for those from memory.
func TestLevelsBesideThoseOfTheReferenceFile(t *testing.T) {
	for _, c := range []struct {
		crop, list string
		want       float64
	}{
		// the same tables as for nitrogen
		{"almond", "potassium-range-from", 1.4}, {"almond", "potassium-deficient-below", 1.0},
		{"almond", "nitrogen-excessive-above", 2.7},
		{"hazelnut", "potassium-range-from", 0.81}, {"hazelnut", "potassium-range-to", 2},
		{"hazelnut", "potassium-deficient-below", 0.5}, {"hazelnut", "potassium-excessive-above", 3},
		{"hazelnut", "nitrogen-excessive-above", 3},
		{"pecan", "potassium-range-from", 1.3}, {"pecan", "potassium-range-to", 1.5},
		// UC Cooperative Extension, in Western Farm Press: symptoms at 0.9 %, adequate from 1.2 %
		{"walnut", "potassium-range-from", 1.2}, {"walnut", "potassium-deficient-below", 0.9},
		// Zeng, Brown and Holtz 2001, HortScience 36:85: 16.9 g of potassium in a kilogram is critical
		{"pistachio", "potassium-range-from", 1.69},
		{"pistachio", "nitrogen-range-from", sheet.None}, {"walnut", "nitrogen-range-from", sheet.None},
		{"walnut", "nitrogen-deficient-below", sheet.None}, {"pistachio", "nitrogen-deficient-below", sheet.None},
	} {
		got := listed(t, nitrogen.LeafLevel, c.list, c.crop)
		if got != c.want && !(math.IsNaN(got) && math.IsNaN(c.want)) {
			t.Errorf("%s, %s: %v, want %v", c.crop, c.list, got, c.want)
		}
	}
	for _, crop := range []string{"walnut", "pistachio"} {
		withheld(t, nitrogen.LeafLevel, level(crop, "nitrogen", "2.4"),
			"We know of no published figure for this nutrient in leaves of this crop.")
	}
	withheld(t, nitrogen.LeafLevel, append(level("almond", "nitrogen", "2.4"), "to=2.6 %"), "Your range has an end and "+
		"no start.")
	withheld(t, nitrogen.LeafLevel, append(level("almond", "nitrogen", "2.4"), "from=2.6 %", "to=2.6 %"),
		"Your range starts at 2.6 % and ends at 2.6 %.")
}

// One of below, adequate and above is there, and it is the way to the nearest end of the range.
func TestOneOfTheThreeLevelsHolds(t *testing.T) {
	r := random(t)
	seen := map[string]int{}
	for range 4 * draws {
		values, _ := drawTaken(t, r, nitrogen.LeafLevel)
		values["value"] = math.Round(40*r.Float64()) / 10 // often an end of a range
		o := work(t, nitrogen.LeafLevel, values)
		v, from, to := values["value"], o.Value("low").Value, math.Inf(1)
		if o.There("high") {
			to = o.Value("high").Value
		}
		want, way := "adequate", min(v-from, to-v)
		switch {
		case v < from:
			want, way = "below", from-v
		case v > to:
			want, way = "above", v-to
		}
		for _, name := range []string{"below", "adequate", "above"} {
			if o.There(name) != (name == want) {
				t.Fatalf("%v: %s is there: %v", values, name, o.There(name))
			}
		}
		closeBy(t, want, o.Value(want).Value, way, values)
		seen[want]++
	}
	if len(seen) != 3 || min(seen["below"], seen["adequate"], seen["above"]) < draws/10 {
		t.Errorf("seen %v: too few to say much", seen)
	}
}

// The levels of a crop are in order: deficient, range, excessive.
func TestLevelsStandInOrder(t *testing.T) {
	for _, nutrient := range []string{"nitrogen", "potassium"} {
		for _, crop := range nitrogen.LeafLevel.FindGiven("crop").Choices {
			last := 0.0
			for _, part := range []string{"deficient-below", "range-from", "range-to", "excessive-above"} {
				figure := listed(t, nitrogen.LeafLevel, nutrient+"-"+part, crop.Name)
				if math.IsNaN(figure) {
					continue
				}
				if figure <= last {
					t.Errorf("%s in %s: %s is %v, below the one before it, %v", nutrient, crop.Name, part, figure, last)
				}
				last = figure
			}
		}
	}
}

func TestLeafLevelByHand(t *testing.T) {
	byHand(t, nitrogen.LeafLevel, level("almond", "nitrogen", "2.3"), map[string]float64{
		"far-end": 0.2, "of-the-low": 100 * 0.1 / 2.2, "level-itself": 2.3, "added": 4.5, "from-the-low": 0.1})
	byHand(t, nitrogen.LeafLevel, level("almond", "potassium", "1.7"), map[string]float64{
		"of-the-low": 100 * 0.3 / 1.4, "level-itself": 1.7, "added": 3.1, "from-the-low": 0.3})
	byHand(t, nitrogen.LeafLevel, level("hazelnut", "nitrogen", "2.8"), map[string]float64{ // the range is 2.21 to 2.5
		"far-end": 0.59, "of-the-low": 0, "level-itself": 2.8, "added": 5.01, "from-the-low": 0.59})
	readsAs(t, nitrogen.LeafLevel, level("walnut", "potassium", "1"),
		"low = listed for this crop = 1.2 %", "deficient = listed for this crop = 0.9 %",
		"below = low − value = 1.2 % − 1 % = 0.2 %")
	readsAs(t, nitrogen.LeafLevel, level("pecan", "nitrogen", "2.6"),
		"low = listed for this crop = 2.5 %", "high = listed for this crop = 2.9 %",
		"adequate = the smaller of (value − low) and (high − value) = "+
			"the smaller of (2.6 % − 2.5 %) and (2.9 % − 2.6 %) = 0.1 %")
}
