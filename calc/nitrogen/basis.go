package nitrogen

import "acreleaf/calc/sheet"

// NitrateBasis gives a laboratory's nitrate on both bases: as nitrate (NO3) and as the nitrogen in it (NO3-N).
var NitrateBasis = sheet.New("nitrate-basis", nitrateBasis)

func nitrateBasis(s *sheet.Sheet) {
	reported := s.Given("reported", "ppm NO3", sheet.Field{
		Typical: 45, Low: 0, High: 1000, Lab: true,
		Units: []string{"ppm NO3-N", "mg/L NO3", "mg/L NO3-N", "mg/kg NO3", "mg/kg NO3-N"},
	})
	of := s.Choice("of", []sheet.Option{
		{Name: "soil"}, {Name: "water"},
	}, sheet.Field{})
	nitrogen := s.Answer("nitrogen", "ppm NO3-N",
		reported.Times(nitrogenWeight(s)).Over(nitrateWeight(s)), sheet.Says{})
	s.Answer("nitrate", "ppm NO3", reported, sheet.Says{})

	s.InWords("nitrogen",
		sheet.When(reported.IsNothing(), "none"),
		sheet.Otherwise("both"))

	limit := drinkingLimit(s)
	s.Warn("drinking-water", of.Is("water").And(nitrogen.AtLeast(limit)), "at-limit")
	sayHalfway(s, of.Is("water").And(nitrogen.More(s.Constant("half-limit", "5 ppm NO3-N", halfLimit))).
		And(nitrogen.Less(limit)))
	s.Slip("not-converted", "nitrogen", reported)
	s.Slip("upside-down", "nitrogen", reported.Times(nitrateWeight(s)).Over(nitrogenWeight(s)))
	s.Slip("nitrogen-for-nitrate", "nitrate", nitrogen)
	s.Slip("nitrate-upside-down", "nitrate", nitrogen.Times(nitrogenWeight(s)).Over(nitrateWeight(s)))
}

// drinkingLimit is the maximum contaminant level of nitrate in public drinking water.
func drinkingLimit(s *sheet.Sheet) sheet.Term {
	return s.Constant("drinking-limit", "10 ppm NO3-N", sheet.Fact{Sources: []string{"epa-nitrate"}})
}

// halfLimit is the nitrate above which California has suppliers tell people of it.
var halfLimit = sheet.Fact{Sources: []string{"title-22-nitrate"}}

// sayHalfway tells of water that is over half the limit for drinking water, and not at it yet.
func sayHalfway(s *sheet.Sheet, when sheet.Term) {
	s.Say(sheet.Note, when, "half-limit")
}
