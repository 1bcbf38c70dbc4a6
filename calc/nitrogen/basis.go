package nitrogen

import "acreleaf/calc/sheet"

// NitrateBasis gives a laboratory's nitrate on both bases: as nitrate (NO3) and as the nitrogen in it (NO3-N).
var NitrateBasis = sheet.New("nitrate-basis", nitrateBasis)

func nitrateBasis(s *sheet.Sheet) {
	s.Head("Nitrate, or nitrogen in nitrate", "Gives the number on a report both as NO3 and as NO3-N.")
	reported := s.Given("reported", "ppm NO3", sheet.Field{
		Label:   "Nitrate on the report",
		Hint:    "Choose the form that the report names. A soil report is in ppm or mg/kg. Of water, mg/L is ppm.",
		Typical: 45, Low: 0, High: 1000, Lab: true,
		Units: []string{"ppm NO3-N", "mg/L NO3", "mg/L NO3-N", "mg/kg NO3", "mg/kg NO3-N"},
	})
	of := s.Choice("of", []sheet.Option{
		{Name: "soil", Label: "A soil report"}, {Name: "water", Label: "A water test"},
	}, sheet.Field{Label: "What was tested", Hint: "Soil, or water that people may drink."})
	nitrogen := s.Answer("nitrogen", "ppm NO3-N",
		reported.Times(nitrogenWeight(s)).Over(nitrateWeight(s)),
		sheet.Says{Label: "As nitrogen, NO3-N"})
	s.Answer("nitrate", "ppm NO3", reported, sheet.Says{Label: "As nitrate, NO3"})

	s.InWords("nitrogen",
		sheet.When(reported.IsNothing(), "The report shows no nitrate."),
		sheet.Otherwise("{nitrate} is the same as {nitrogen}. Count nitrogen with the second."))

	limit := drinkingLimit(s)
	s.Warn("drinking-water", of.Is("water").And(nitrogen.AtLeast(limit)),
		"If people drink this water: {nitrogen} is at or above the limit for drinking water, 10 ppm NO3-N.")
	sayHalfway(s, of.Is("water").And(nitrogen.More(s.Constant("half-limit", "5 ppm NO3-N", halfLimit))).
		And(nitrogen.Less(limit)))
	s.Slip("not-converted", "nitrogen", reported,
		"That is the nitrate itself. Nitrogen is 0.2259 of it.")
	s.Slip("upside-down", "nitrogen", reported.Times(nitrateWeight(s)).Over(nitrogenWeight(s)),
		"Nitrogen is a part of the nitrate, so its number is the smaller: multiply by 0.2259, do not divide.")
}

// drinkingLimit is the maximum contaminant level of nitrate in public drinking water.
func drinkingLimit(s *sheet.Sheet) sheet.Term {
	return s.Constant("drinking-limit", "10 ppm NO3-N", sheet.Fact{
		Label: "Limit for nitrate in drinking water", Sources: []string{"epa-nitrate"},
		Note: "It is for public supplies, as nitrogen. It is about 44 ppm as NO3; 45 is the usual round figure.",
	})
}

// halfLimit is the nitrate above which California has suppliers tell people of it.
var halfLimit = sheet.Fact{
	Label: "Nitrate above which suppliers tell people of it", Sources: []string{"title-22-nitrate"},
	Note: "Half the limit for drinking water. To test each year from there is common practice.",
}

// sayHalfway tells of water that is over half the limit for drinking water, and not at it yet.
func sayHalfway(s *sheet.Sheet, when sheet.Term) {
	s.Say(sheet.Note, when, "This water is over half the limit for drinking water, 10 ppm NO3-N. If people drink it, or "+
		"drink from the same groundwater, have it tested each year.")
}
