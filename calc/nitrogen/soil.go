package nitrogen

import "acreleaf/calc/sheet"

// SoilNitrogen credits the nitrate-nitrogen that a report found in one sampled layer of soil.
//
// Without a bulk density it uses the field rule, 2 lb/ac for each ppm in each 6 in of soil. With one it weighs the
// layer itself, ppm × g/cm3 × in × 0.226613, and says how far the field rule is from that.
var SoilNitrogen = sheet.New("soil-nitrogen", soilNitrogen)

func soilNitrogen(s *sheet.Sheet) {
	nitrate := s.Given("nitrate", "ppm NO3-N", sheet.Field{
		Typical: 12, Low: 0, High: 200, Of: "soil", Units: []string{"ppm NO3", "mg/kg NO3-N", "mg/kg NO3"},
		Lab: true,
	})
	depth := s.Given("depth", "in", sheet.Field{Typical: 12, Low: 1, High: 72, Units: []string{"ft", "cm", "mm"}})
	density := s.Given("bulk-density", "g soil/cm3", sheet.Field{
		Written: "g/cm3", Typical: 1.4, Low: 0.5, High: 2, Units: []string{"lb/ft3", "kg/m3"}, Optional: true,
	})
	rule, slice := fieldRule(s)
	ruled := s.Step("by-rule", "lb N/ac present", nitrate.Times(rule).Times(depth).Over(slice),
		sheet.Says{Also: "kg N/ha present"})
	weighed := s.Step("by-weight", "lb N/ac present", nitrate.Nitrogen().Times(density).Times(depth).CountedAs("present"),
		sheet.Says{Also: "kg N/ha present", When: s.Stated(density)})
	both := s.Stated(density).And(weighed.More(s.Zero("lb N/ac present")))
	s.Step("apart", "%", s.Number(1).Minus(ruled.Over(weighed)).Size(), sheet.Says{When: both})
	nitrogen := s.Answer("nitrogen", "lb N/ac present", sheet.If(s.Stated(density), weighed, ruled),
		sheet.Says{Also: "kg N/ha present"})

	s.InWords("nitrogen",
		sheet.When(nitrogen.IsNothing(), "none"),
		sheet.Otherwise("nitrogen"))

	s.Say(sheet.Note, s.Stated(density).Not(), "rule-used")
	s.Say(sheet.Note, s.Stated(density), "weight-used")
	s.Say(sheet.Note, both, "rule-off")
	s.Say(sheet.Note, depth.More(rootDepth(s)), "below-roots")
	s.Warn("check-numbers", nitrogen.More(s.Constant("unusual", "200 lb N/ac present", sheet.Fact{
		Sources: []string{"common-practice"},
	})), "unusual")

	soilSlips(s, nitrate, depth, nitrogen, rule)
}

// rootDepth is how deep most roots of a young tree are.
func rootDepth(s *sheet.Sheet) sheet.Term {
	return s.Constant("root-depth", "24 in", sheet.Fact{Sources: []string{"common-practice"}})
}

// fieldRule is the rule of thumb, and the depth of soil that it is for.
func fieldRule(s *sheet.Sheet) (rule, slice sheet.Term) {
	rule = s.Constant("field-rule", "2 lb N/ac present per ppm NO3-N of soil", sheet.Fact{
		Sources: []string{"montana-soil"},
	})
	slice = s.Constant("slice", "6 in", sheet.Fact{Sources: []string{"montana-soil"}})
	return rule, slice
}

func soilSlips(s *sheet.Sheet, nitrate, depth *sheet.Given, nitrogen, rule sheet.Term) {
	s.Slip("nitrate-for-nitrogen", "nitrogen", nitrogen.Times(nitrateWeight(s)).Over(nitrogenWeight(s)))
	s.Slip("converted-twice", "nitrogen", nitrogen.Times(nitrogenWeight(s)).Over(nitrateWeight(s)))
	s.Slip("one-slice", "nitrogen", nitrate.Times(rule))
	s.Slip("inches-not-slices", "nitrogen", nitrate.Times(rule).Times(depth))
	s.Slip("feet-for-inches", "nitrogen", nitrogen.Over(s.Number(12)))
	s.Slip("kilograms-for-pounds", "nitrogen",
		nitrogen.In("kg N/ha present").Over(s.Amount(1, "kg N/ha present")))
}
