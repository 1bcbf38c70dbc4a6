package nitrogen_test

import (
	"strings"
	"testing"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
)

// What laboratories and growers write is read as what they mean, or told what to write; no suggestion makes another
// form of nitrogen, another kind of quantity or another material of it.
func TestSpellingsOfTheTrade(t *testing.T) {
	for _, c := range []struct {
		s           *sheet.Sheet
		given, text string
		want        float64
	}{
		{nitrogen.SoilNitrogen, "nitrate", "10 ppm NO3N", 10},
		{nitrogen.SoilNitrogen, "nitrate", "10 ppm N-NO3", 10},
		{nitrogen.SoilNitrogen, "nitrate", "10 ppm nitrate nitrogen", 10},
		{nitrogen.SoilNitrogen, "nitrate", "10 PPM nitrate as N", 10},
		{nitrogen.SoilNitrogen, "nitrate", "<5 mg/kg NO3_N", 0},
		{nitrogen.SoilNitrogen, "depth", `12"`, 12},
		{nitrogen.SoilNitrogen, "depth", `1½'`, 18},
		{nitrogen.SoilNitrogen, "bulk-density", "1.4 g/cc", 1.4},
		{nitrogen.SoilNitrogen, "bulk-density", "1.4 Mg/m3", 1.4},
		{nitrogen.WaterNitrogen, "nitrate", "1 meq/L NO3", 14.007},        // IUPAC 2021: N 14.007
		{nitrogen.WaterNitrogen, "nitrate", "2.719362 lb NO3-N/ac-ft", 1}, // 43,560 ft3 of water at 1 kg/L
		{nitrogen.WaterNitrogen, "nitrate", "10,000 µg/L nitrate-N", 10},
		{nitrogen.TreeDensity, "tree", `18' 6"`, 18.5},
		{nitrogen.MaterialAmount, "nitrogen", "48 lbs N/A", 48},
		{nitrogen.MaterialAmount, "nitrogen", "48 lb/ac of nitrogen", 48},
		{nitrogen.MaterialAmount, "material", "uan32", 0},
		{nitrogen.CropDemand, "crop", "Walnut", 1},
	} {
		e, err := c.s.FindGiven(c.given).Read(c.text)
		if err != nil || e.Value < c.want*(1-1e-6) || e.Value > c.want*(1+1e-6) {
			t.Errorf("%s %s: %q is %v, %v; want %v", c.s.Name, c.given, c.text, e.Value, err, c.want)
		}
	}
	for _, c := range []struct {
		s                 *sheet.Sheet
		given, text, want string
		not               []string
	}{
		{nitrogen.SoilNitrogen, "nitrate", "10 ppm NO3NN", "12 ppm NO3-N, or 12 ppm NO3, as the report says",
			[]string{"mean"}},
		{nitrogen.SoilNitrogen, "nitrate", "12 pmm NO3-N", `did you mean "ppm"?`, nil},
		{nitrogen.SoilNitrogen, "nitrate", "12 mg/L NO3-N", "is for a litre of water", nil},
		{nitrogen.SoilNitrogen, "nitrate", "12 ppm N03", `did you mean "NO3"?`, nil},
		{nitrogen.SoilNitrogen, "depth", "12 inchs", `did you mean "inch"?`, nil},
		{nitrogen.SoilNitrogen, "depth", "12 lbb", "write for example 12 in", []string{"mean"}},
		{nitrogen.MaterialAmount, "nitrogen", "30 units/ac", "a unit of nitrogen is a pound", nil},
		{nitrogen.MaterialAmount, "material", "32-0-0", "there is no material", []string{"write 34-0-0"}},
		{nitrogen.MaterialAmount, "material", "2-10-0-24S", "there is no material", []string{"write 21-0-0-24S"}},
		{nitrogen.MaterialAmount, "material", "UAM-32", "write UAN-32", nil},
	} {
		_, err := c.s.FindGiven(c.given).Read(c.text)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s %s: %q gives %v, want %s", c.s.Name, c.given, c.text, err, c.want)
			continue
		}
		for _, not := range c.not {
			if strings.Contains(err.Error(), not) {
				t.Errorf("%s %s: %q gives %v, and should not say %s", c.s.Name, c.given, c.text, err, not)
			}
		}
	}
}
