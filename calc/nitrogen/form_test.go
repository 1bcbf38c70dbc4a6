package nitrogen_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
)

// The trade weighs each crop in one form, and its figures are for that form: removal of almonds for kernels (G02), of
// walnuts for nuts in the shell (G16), of pistachios for CPC weight (G20). Kernels of a walnut are about half of it, so
// a figure of one form taken for the other is wrong by two.
func TestAYieldIsTakenInTheFormThatItsFigureIsFor(t *testing.T) {
	own := map[string]string{
		"almond": "kernels", "walnut": "in-shell", "pistachio": "CPC", "pecan": "in-shell", "hazelnut": "in-shell",
	}
	for _, o := range nitrogen.CropDemand.FindGiven("crop").Choices {
		for _, form := range []string{"", "kernels", "in-shell", "CPC"} {
			for _, c := range []struct{ yield, removal string }{
				{strings.TrimSpace("2000 lb "+form) + "/ac", "68 lb N per 1000 lb crop"},
				{"2000 lb/ac", strings.TrimSpace("68 lb N per 1000 lb " + form)},
			} {
				givens := demand(o.Name, "8", c.yield, "growth=30 lb N/ac", "removal="+c.removal)
				_, err := workEntries(t, nitrogen.CropDemand, givens)
				var refused *sheet.Refused
				switch right := form == "" || form == own[o.Name]; {
				case right && err != nil:
					t.Errorf("%s, %s, %s: %v", o.Name, c.yield, c.removal, err)
				case !right && (!errors.As(err, &refused) || !strings.Contains(err.Error(), "lb "+own[o.Name])):
					t.Errorf("%s, %s, %s: %v, want a sentence that asks for %s", o.Name, c.yield, c.removal, err, own[o.Name])
				}
			}
		}
		if own[o.Name] == "" {
			t.Errorf("no form is known for %s", o.Name)
		}
	}
}

// workEntries works a sheet for what a person would write.
func workEntries(t *testing.T, s *sheet.Sheet, givens []string) (sheet.Outcome, error) {
	t.Helper()
	entries := map[string]sheet.Entry{}
	for _, given := range givens {
		name, text, _ := strings.Cut(given, "=")
		e, err := s.FindGiven(name).Read(text)
		if err != nil {
			t.Fatal(err)
		}
		entries[name] = e
	}
	return sheet.NewBench(s).Work(entries)
}

// Nitrogen that is no nitrate is not taken for it, in soil, in water or on a report: each refusal names what is needed.
func TestOnlyNitrateIsTakenForNitrate(t *testing.T) {
	for _, c := range []struct {
		s     *sheet.Sheet
		given string
	}{{nitrogen.SoilNitrogen, "nitrate"}, {nitrogen.WaterNitrogen, "nitrate"}, {nitrogen.NitrateBasis, "reported"}} {
		given := c.s.FindGiven(c.given)
		for _, form := range []string{"NH4-N", "NH4", "NO2-N", "NO2", "NH3-N", "NH3", "urea-N", "urea", "N", "P", "K"} {
			if e, err := given.Read("12 ppm " + form); err == nil || !strings.Contains(err.Error(), "nitrate") {
				t.Errorf("%s %s: 12 ppm %s gives %v, %v", c.s.Name, c.given, form, e, err)
			}
		}
		var values []float64
		for _, text := range []string{"10 ppm NO3-N", "44.2664 ppm NO3"} {
			e, err := given.Read(text)
			if err != nil {
				t.Fatal(err)
			}
			values = append(values, e.Value)
		}
		slices.Sort(values)
		if values[1]-values[0] > 1e-5*values[0] { // 62.004 ÷ 14.007, IUPAC 2021 (A31)
			t.Errorf("%s: 10 ppm NO3-N and 44.2664 ppm NO3 are %v", c.s.Name, values)
		}
	}
}
