package nitrogen

import "acreleaf/calc/sheet"

// WaterNitrogen credits the nitrate-nitrogen that irrigation water brings to an acre.
var WaterNitrogen = sheet.New("water-nitrogen", waterNitrogen)

// acreInch is the nitrogen in an inch of water on an acre, for each ppm: 102.790 m3 of water at 1 kg/L holds 102.790 g
// for each ppm. Sixteen digits, so that metric units come back whole.
const acreInch = "0.22661349689140495"

// inchOfWater is acreInch, with where it comes from, in pounds an acre of an account: fed for the water of a well, and
// none for water that leaves the roots.
func inchOfWater(s *sheet.Sheet, pounds string) sheet.Term {
	return s.Constant("acre-inch", acreInch+" "+pounds+" per ppm NO3-N of water per in", sheet.Fact{
		Sources: []string{"nist-44"},
	})
}

func waterNitrogen(s *sheet.Sheet) {
	nitrate := s.Given("nitrate", "ppm NO3-N", sheet.Field{
		Typical: 10, Low: 0, High: 200, Of: "water", Units: []string{"ppm NO3", "mg/L NO3-N", "mg/L NO3"}, Lab: true,
	})
	water := s.Given("water", "in", sheet.Field{
		Typical: 12, Low: 0, High: 120, Units: []string{"ft", "ac-ft/ac", "gal/ac", "mm", "cm"},
	})
	factor := inchOfWater(s, "lb N/ac fed")
	perInch := s.Answer("per-inch", "lb N/ac fed per in", nitrate.Times(factor),
		sheet.Says{Also: "kg N/ha fed per mm"})
	nitrogen := s.Answer("nitrogen", "lb N/ac fed", perInch.Times(water), sheet.Says{Also: "kg N/ha fed"})

	s.InWords("nitrogen",
		sheet.When(nitrogen.IsNothing(), "none"),
		sheet.Otherwise("puts-on"))

	limit := s.Constant("drinking-limit", "10 ppm NO3-N of water", sheet.Fact{Sources: []string{"epa-nitrate"}})
	s.Warn("drinking-water", nitrate.AtLeast(limit), "at-limit")
	sayHalfway(s, nitrate.More(s.Constant("half-limit", "5 ppm NO3-N of water", halfLimit)).And(nitrate.Less(limit)))
	s.Say(sheet.Note, sheet.Always, "stays-in-roots")
	fieldFactor(s, nitrate, water, nitrogen)

	waterSlips(s, nitrate, water, perInch, nitrogen)
}

// fieldFactor works the answer by the factor that is used in the field too, and says how far apart the two are.
func fieldFactor(s *sheet.Sheet, nitrate, water *sheet.Given, nitrogen sheet.Term) {
	factor := s.Constant("field-factor", "0.23 lb N/ac fed per ppm NO3-N of water per in", sheet.Fact{
		Sources: []string{"common-practice"},
	})
	ruled := s.Step("by-rule", "lb N/ac fed", nitrate.Times(factor).Times(water), sheet.Says{Also: "kg N/ha fed"})
	some := nitrogen.More(s.Zero("lb N/ac fed"))
	s.Step("apart", "%", ruled.Over(nitrogen).Minus(s.Number(1)), sheet.Says{When: some})
	s.Say(sheet.Note, some, "exact-factor")
}

func waterSlips(s *sheet.Sheet, nitrate, water *sheet.Given, perInch, nitrogen sheet.Term) {
	s.Slip("nitrate-for-nitrogen", "nitrogen", nitrogen.Times(nitrateWeight(s)).Over(nitrogenWeight(s)))
	s.Slip("converted-twice", "nitrogen", nitrogen.Times(nitrogenWeight(s)).Over(nitrateWeight(s)))
	s.Slip("one-inch", "nitrogen", perInch)
	s.Slip("feet-for-inches", "nitrogen", nitrogen.Times(s.Number(12)))
	s.Slip("soil-rule", "nitrogen", nitrate.Times(water).Times(s.Number(2)).Over(s.Number(6)))
}
