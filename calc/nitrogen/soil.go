package nitrogen

import "acreleaf/calc/sheet"

// SoilNitrogen credits the nitrate-nitrogen that a report found in one sampled layer of soil.
//
// Without a bulk density it uses the field rule, 2 lb/ac for each ppm in each 6 in of soil. With one it weighs the
// layer itself, ppm × g/cm3 × in × 0.226613, and says how far the field rule is from that.
var SoilNitrogen = sheet.New("soil-nitrogen", soilNitrogen)

func soilNitrogen(s *sheet.Sheet) {
	s.Head("Nitrogen in the soil", "Turns the nitrate line of a soil report into pounds of nitrogen an acre.")
	nitrate := s.Given("nitrate", "ppm NO3-N", sheet.Field{
		Label: "Nitrate on the report", Hint: "Does the report say NO3-N or NO3? Choose the same here.",
		Typical: 12, Low: 0, High: 200, Of: "soil", Units: []string{"ppm NO3", "mg/kg NO3-N", "mg/kg NO3"}, Lab: true,
	})
	depth := s.Given("depth", "in", sheet.Field{
		Label: "Depth of the sample", Hint: "How thick it is. For a layer from 12 to 24 in, write 12.",
		Typical: 12, Low: 1, High: 72, Units: []string{"ft", "cm", "mm"},
	})
	density := s.Given("bulk-density", "g soil/cm3", sheet.Field{
		Written: "g/cm3",
		Label:   "Bulk density, if you have it", Hint: "Leave it empty to use the field rule.",
		Typical: 1.4, Low: 0.5, High: 2, Units: []string{"lb/ft3", "kg/m3"}, Optional: true,
	})
	rule, slice := fieldRule(s)
	ruled := s.Step("by-rule", "lb N/ac present", nitrate.Times(rule).Times(depth).Over(slice),
		sheet.Says{Label: "By the field rule", Work: "by the field rule", Also: "kg N/ha present"})
	weighed := s.Step("by-weight", "lb N/ac present", nitrate.Nitrogen().Times(density).Times(depth).CountedAs("present"),
		sheet.Says{Label: "By the weight of your soil", Work: "by the weight of the soil", Also: "kg N/ha present",
			When: s.Stated(density)})
	both := s.Stated(density).And(weighed.More(s.Zero("lb N/ac present")))
	s.Step("apart", "%", s.Number(1).Minus(ruled.Over(weighed)).Size(),
		sheet.Says{Label: "How far the field rule is from the weight", Work: "difference", When: both})
	nitrogen := s.Answer("nitrogen", "lb N/ac present", sheet.If(s.Stated(density), weighed, ruled),
		sheet.Says{Label: "Nitrogen in this layer", Also: "kg N/ha present"})

	s.InWords("nitrogen",
		sheet.When(nitrogen.IsNothing(), "The report shows no nitrate in this layer: count on none."),
		sheet.Otherwise("This layer of {depth} holds {nitrogen} as nitrate."))

	s.Say(sheet.Note, s.Stated(density).Not(),
		"The field rule was used. It takes 6 in of soil on an acre to weigh 2,000,000 lb. "+
			"If you know the bulk density, put it in.")
	s.Say(sheet.Note, s.Stated(density), "Your bulk density was used: {by-weight bare} lb N/ac. The field rule would "+
		"say {by-rule bare} lb N/ac.")
	s.Say(sheet.Note, both, "The field rule is {apart} off for this soil.")
	s.Say(sheet.Note, depth.More(rootDepth(s)),
		"Roots of a first-leaf tree are mostly in the top foot or two. Nitrate below them may not be found.")
	s.Warn("check-numbers", nitrogen.More(s.Constant("unusual", "200 lb N/ac present", sheet.Fact{
		Label: "More than most young orchards hold", Sources: []string{"common-practice"},
	})), "{nitrogen bare} lb N/ac is a great deal. Does the report say NO3-N, and not NO3?")

	soilSlips(s, nitrate, depth, nitrogen, rule)
}

// rootDepth is how deep most roots of a young tree are.
func rootDepth(s *sheet.Sheet) sheet.Term {
	return s.Constant("root-depth", "24 in", sheet.Fact{
		Label: "Depth beyond which a young tree finds little", Sources: []string{"common-practice"},
	})
}

// fieldRule is the rule of thumb, and the depth of soil that it is for.
func fieldRule(s *sheet.Sheet) (rule, slice sheet.Term) {
	rule = s.Constant("field-rule", "2 lb N/ac present per ppm NO3-N of soil", sheet.Fact{
		Label: "Pounds an acre for each ppm, in 6 in of soil", Reads: "2 lb/ac per ppm",
		Sources: []string{"montana-soil"},
		Note: "It takes 6 in of soil on an acre to weigh 2,000,000 lb, which is 1.47 g/cm3. Penn State uses it for 6.7 in. " +
			"It is 4 lb for a foot; California's Crop Fertilization Guidelines print roughly 3.5.",
	})
	slice = s.Constant("slice", "6 in", sheet.Fact{
		Label: "Depth that the field rule is for", Sources: []string{"montana-soil"},
	})
	return rule, slice
}

func soilSlips(s *sheet.Sheet, nitrate, depth *sheet.Given, nitrogen, rule sheet.Term) {
	s.Slip("nitrate-for-nitrogen", "nitrogen", nitrogen.Times(nitrateWeight(s)).Over(nitrogenWeight(s)),
		"That is 4.43 times too much: a report in NO3 was read as NO3-N.")
	s.Slip("converted-twice", "nitrogen", nitrogen.Times(nitrogenWeight(s)).Over(nitrateWeight(s)),
		"The report is in NO3-N already, so the 0.2259 is not needed.")
	s.Slip("one-slice", "nitrogen", nitrate.Times(rule),
		"That is the nitrogen in 6 in of soil, whatever the depth of the sample.")
	s.Slip("inches-not-slices", "nitrogen", nitrate.Times(rule).Times(depth),
		"The rule is 2 lb/ac for each 6 in, not for each inch: divide the depth by 6.")
}
