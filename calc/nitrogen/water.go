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
		Label: "Nitrogen in an acre-inch of water, for each ppm", Reads: "0.226613 lb/ac per ppm and inch",
		Sources: []string{"nist-44"},
		Note:    "Guides print 0.2, 0.227 or 0.23. This is the exact one, of which they are roundings.",
	})
}

func waterNitrogen(s *sheet.Sheet) {
	s.Head("Nitrogen in irrigation water", "Turns the nitrate in a water test into pounds of nitrogen an acre.")
	nitrate := s.Given("nitrate", "ppm NO3-N", sheet.Field{
		Label: "Nitrate in the water", Hint: "Does the test say NO3-N or NO3? Choose the same here. mg/L is ppm.",
		Typical: 10, Low: 0, High: 200, Of: "water", Units: []string{"ppm NO3", "mg/L NO3-N", "mg/L NO3"}, Lab: true,
	})
	water := s.Given("water", "in", sheet.Field{
		Label: "Water put on", Hint: "Inches over the acre, in the time you are counting.",
		Typical: 12, Low: 0, High: 120, Units: []string{"ft", "ac-ft/ac", "gal/ac", "mm", "cm"},
	})
	factor := inchOfWater(s, "lb N/ac fed")
	perInch := s.Answer("per-inch", "lb N/ac fed per in", nitrate.Times(factor),
		sheet.Says{Label: "Nitrogen in each inch", Also: "kg N/ha fed per mm"})
	nitrogen := s.Answer("nitrogen", "lb N/ac fed", perInch.Times(water),
		sheet.Says{Label: "Nitrogen in this water", Also: "kg N/ha fed"})

	s.InWords("nitrogen",
		sheet.When(nitrogen.IsNothing(), "This water brings no nitrate: count on none."),
		sheet.Otherwise("This water puts on {nitrogen}. Count it as fed."))

	limit := s.Constant("drinking-limit", "10 ppm NO3-N of water", sheet.Fact{
		Label: "Limit for nitrate in drinking water", Sources: []string{"epa-nitrate"},
	})
	s.Warn("drinking-water", nitrate.AtLeast(limit),
		"This water is at or above the limit for drinking water, 10 ppm NO3-N. Does anyone drink from the same groundwater?")
	sayHalfway(s, nitrate.More(s.Constant("half-limit", "5 ppm NO3-N of water", halfLimit)).And(nitrate.Less(limit)))
	s.Say(sheet.Note, sheet.Always,
		"Count only water that stays in the root zone. What runs through takes its nitrate along. What stays is counted as "+
			"fed: in trials on vegetables it was taken up at least as well as that of fertilizer (Cahn and others 2017).")
	fieldFactor(s, nitrate, water, nitrogen)

	waterSlips(s, nitrate, water, perInch, nitrogen)
}

// fieldFactor works the answer by the factor that is used in the field too, and says how far apart the two are.
func fieldFactor(s *sheet.Sheet, nitrate, water *sheet.Given, nitrogen sheet.Term) {
	factor := s.Constant("field-factor", "0.23 lb N/ac fed per ppm NO3-N of water per in", sheet.Fact{
		Label: "The same, as it is used in the field", Reads: "0.23 lb/ac per ppm and inch",
		Sources: []string{"common-practice"},
		Note:    "A Colorado sheet of best practices prints it. It is shown beside the exact one, and no answer uses it.",
	})
	ruled := s.Step("by-rule", "lb N/ac fed", nitrate.Times(factor).Times(water),
		sheet.Says{Label: "With 0.23, as in the field", Work: "with 0.23", Also: "kg N/ha fed"})
	some := nitrogen.More(s.Zero("lb N/ac fed"))
	s.Step("apart", "%", ruled.Over(nitrogen).Minus(s.Number(1)),
		sheet.Says{Label: "How far 0.23 is from the exact factor", Work: "difference", When: some})
	s.Say(sheet.Note, some,
		"The exact factor 0.226613 was used: {nitrogen}. The 0.23 of the field gives {by-rule}, {apart} more.")
}

func waterSlips(s *sheet.Sheet, nitrate, water *sheet.Given, perInch, nitrogen sheet.Term) {
	s.Slip("nitrate-for-nitrogen", "nitrogen", nitrogen.Times(nitrateWeight(s)).Over(nitrogenWeight(s)),
		"That is 4.43 times too much: a test in NO3 was read as NO3-N.")
	s.Slip("converted-twice", "nitrogen", nitrogen.Times(nitrogenWeight(s)).Over(nitrateWeight(s)),
		"The test is in NO3-N already, so the 0.2259 is not needed.")
	s.Slip("one-inch", "nitrogen", perInch,
		"That is the nitrogen in one inch of water; multiply by the inches.")
	s.Slip("feet-for-inches", "nitrogen", nitrogen.Times(s.Number(12)),
		"2.72 lb is for an acre-foot. For an acre-inch it is 0.2266.")
	s.Slip("soil-rule", "nitrogen", nitrate.Times(water).Times(s.Number(2)).Over(s.Number(6)),
		"2 lb/ac for each ppm and 6 in is the rule for soil. Water is lighter: 0.2266 for each ppm and inch.")
}
