package nitrogen_test

import (
	"math"
	"testing"

	"acreleaf/calc/internal/reference"
	"acreleaf/calc/nitrogen"
)

func init() {
	situations = append(situations,
		situation{nitrogen.NitrateReach, reach("3 in", "sandy-loam")},
		situation{nitrogen.NitrateReach, reach("2 in", "clay", "nitrate=20 ppm NO3-N")},
		situation{nitrogen.NitrateReach, reach("50 mm", "loam", "capacity=3.2 in/ft", "nitrate=45 ppm NO3")},
	)
	sayings = append(sayings,
		saying{nitrogen.NitrateReach, reach("0 in", "sand"), []string{front}},
		saying{nitrogen.NitrateReach, reach("2.4 in", "sand"),
			[]string{"Nitrate in the lowest 24 in of the root zone may pass below it.", front}},
		saying{nitrogen.NitrateReach, reach("2.5 in", "sand"),
			[]string{"CAUTION Nitrate at the surface may move 25 in, past most roots", front}},
		saying{nitrogen.NitrateReach, reach("3 in", "loam", "capacity=15 %"),
			[]string{"Nitrate in the lowest 20 in of the root zone may pass below it.", front}},
	)
	responses = append(responses,
		response{nitrogen.NitrateReach, "depth", "excess", 1}, response{nitrogen.NitrateReach, "depth", "capacity", -1},
		response{nitrogen.NitrateReach, "depth", "nitrate", 0}, response{nitrogen.NitrateReach, "leached", "excess", 1},
		response{nitrogen.NitrateReach, "leached", "nitrate", 1}, response{nitrogen.NitrateReach, "leached", "capacity", 0},
	)
	scalings = append(scalings,
		scaling{nitrogen.NitrateReach, "depth", 1, []string{"excess"}},
		scaling{nitrogen.NitrateReach, "leached", 1, []string{"excess"}})
}

const front = "This is the middle of the front."

func reach(excess, texture string, more ...string) []string {
	return append([]string{"excess=" + excess, "texture=" + texture}, more...)
}

// Saxton and Rawls 2006, Soil Science Society of America Journal 70:1569, equation 2: the water that a soil holds at
// 33 kPa from its sand, clay and organic matter. Their Table 3 is the same for the middle of each texture, in whole
// percents, at 2.5 % organic matter; the sand and the clay below are those that the table prints.
func TestFieldCapacityIsThatOfItsEquation(t *testing.T) {
	const matter = 2.5
	equation := func(sand, clay float64) float64 {
		first := -0.251*sand + 0.195*clay + 0.011*matter + 0.006*sand*matter - 0.027*clay*matter + 0.452*sand*clay + 0.299
		return first + 1.283*first*first - 0.374*first - 0.015
	}
	for texture, of := range map[string][2]float64{
		"sand": {0.88, 0.05}, "loamy-sand": {0.80, 0.05}, "sandy-loam": {0.65, 0.10}, "loam": {0.40, 0.20},
		"silt-loam": {0.20, 0.15}, "sandy-clay-loam": {0.60, 0.25}, "clay-loam": {0.30, 0.35},
		"silty-clay-loam": {0.10, 0.35}, "silty-clay": {0.10, 0.45}, "sandy-clay": {0.50, 0.40}, "clay": {0.25, 0.50},
	} {
		got, want := listed(t, nitrogen.NitrateReach, "field-capacity", texture), 100*equation(of[0], of[1])
		if math.Abs(got-want) > 0.55 {
			t.Errorf("%s holds %v %%, the equation says %.2f", texture, got, want)
		}
	}
}

// Each note beside a texture gives what New Mexico State University has for it: a percent by weight times the bulk
// density of its table (Table of soil moisture content, after Israelsen 1932).
func TestNotesBesideTheTexturesAreTheOtherTable(t *testing.T) {
	other := map[string][2]float64{
		"sand": {9.1, 1.627}, "loamy-sand": {11.6, 1.584}, "sandy-loam": {13.9, 1.533}, "loam": {22.3, 1.395},
		"silt-loam": {27.6, 1.278}, "sandy-clay-loam": {20.0, 1.471}, "clay-loam": {26.4, 1.354},
		"silty-clay-loam": {32.1, 1.239}, "sandy-clay": {23.1, 1.444}, "silty-clay": {31.2, 1.279}, "clay": {35.1, 1.262},
	}
	for _, texture := range nitrogen.NitrateReach.FindGiven("texture").Choices {
		of, there := other[texture.Name]
		begin := "New Mexico State University gives " + decimal(math.Round(of[0]*of[1])) + " %."
		if !there || len(texture.Note) < len(begin) || texture.Note[:len(begin)] != begin {
			t.Errorf("%s: the note %q does not begin with %q", texture.Name, texture.Note, begin)
		}
	}
}

// K12: definition (C01)
func TestPublishedLeaching(t *testing.T) {
	row := reference.Row(t, "K12")
	row.Check(t, published{"K12", nitrogen.NitrateReach, "leached", "lb N/ac",
		reach("{percolate_in} in", "loam", "nitrate={nitrate_n_ppm} ppm NO3-N")}.value(t, row))
}

// The depth of soil, holding what it holds, is the water; and twice the capacity halves the depth.
func TestReachGoesBothWays(t *testing.T) {
	r := random(t)
	for range draws {
		values, _ := drawTaken(t, r, nitrogen.NitrateReach)
		values = with(values, "capacity", 2+28*r.Float64())
		o := work(t, nitrogen.NitrateReach, values)
		closeBy(t, "the water", o.Value("depth").Value*o.Value("holds").Value/100, values["excess"], values)
		half := work(t, nitrogen.NitrateReach, with(values, "capacity", 2*values["capacity"])).Value("depth").Value
		alike(t, "half the depth", o.Value("depth").Value, 2*half)
	}
}

func TestReachByHand(t *testing.T) {
	byHand(t, nitrogen.NitrateReach, reach("3 in", "sandy-loam", "nitrate=20 ppm NO3-N"), map[string]float64{
		"multiplied": 0.54, "feet-for-inches": 3 / 0.18 / 12, "air-for-water": 3 / 0.82, "one-inch": 4.53227,
		"soil-rule": 20})
	readsAs(t, nitrogen.NitrateReach, reach("6 in", "loam", "capacity=1.5 in/ft", "nitrate=20 ppm NO3-N"),
		"water that the soil holds = capacity = 12.5 %", "depth = excess ÷ water that the soil holds = 6 in ÷ 12.5 % = 48 in",
		"leached = nitrate × excess × 0.226613 lb/ac per ppm and inch = "+
			"20 ppm NO3-N × 6 in × 0.226613 lb/ac per ppm and inch = 27.2 lb N/ac")
	readsAs(t, nitrogen.NitrateReach, reach("3 in", "sandy-loam"),
		"water that the soil holds = listed for this texture = 18 %", "depth = excess ÷ water that the soil "+
			"holds = 3 in ÷ 18 % = 16.7 in")
}
