package nitrogen

import (
	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
)

// fieldRule tells how far the field rule for UAN is from the weight and the analysis at hand.
func (t *tank) fieldRule(inGallon sheet.Term) {
	solution := t.grade.Is("UAN-32").Or(t.grade.Is("UAN-28"))
	t.s.Step("apart", "%", inGallon.Over(threePounds(t.s)).Minus(t.s.Number(1)).Size(),
		sheet.Says{Label: "How far the field rule is from this", Work: "difference", When: solution})
	t.s.Say(sheet.Note, solution,
		"The field rule is 3 lb of nitrogen to a gallon of UAN. By weight it is {in-gallon}: the two are {apart} apart. "+
			"The answer is by weight.")
}

func threePounds(s *sheet.Sheet) sheet.Term {
	return s.ConstantOnce("three-pounds", "3 lb N/gal", sheet.Fact{
		Label: "Nitrogen in a gallon of UAN, by the field rule", Sources: []string{"common-practice"},
		Note: "It is near for UAN-28, and too little for UAN-32.",
	})
}

func waterGallon(s *sheet.Sheet) sheet.Term {
	return s.ConstantOnce("water-gallon", "8.345404452 lb water/gal", sheet.Fact{
		Label: "Weight of a gallon of water", Reads: "8.345 lb/gal",
		Sources: []string{"nist-44"},
	})
}

// storing tells what becomes of a material that waits: in a cold tank, or on top of the ground.
func (t *tank) storing() {
	s := t.s
	s.Warn("salts-out", t.grade.Is("UAN-32"), "UAN-32 salts out near 28 °F (-2 °C).")
	s.Warn("salts-out", t.grade.Is("UAN-28"), "UAN-28 salts out near 0 °F (-18 °C).")
	urea := asks(s, t.grade, func(m *material) bool { return m.forms.urea > 0 })
	s.Say(sheet.Note, urea.And(t.has(fact.Acid).Not()),
		"Urea that stays on top of the ground gives off ammonia to the air. Water it in or work it in the same day.")
	s.Say(sheet.Note, t.grade.Is("21-0-0-24S"),
		"On a soil above pH 7.5, ammonium sulfate on top of the ground gives off ammonia too. Water it in.")
}

// souring tells what the nitrogen does to the soil's pH, and the lime that undoes it.
func (t *tank) souring(nitrogen sheet.Term) {
	s := t.s
	each := s.Step("lime-each", "lb CaCO3/lb N", listedLime(s, t.grade),
		sheet.Says{Label: "Lime for a pound of its nitrogen", Work: "lime for a pound of N"})
	s.Step("lime", "lb CaCO3/ac", nitrogen.Times(each),
		sheet.Says{Label: "Lime that undoes the change in pH", Also: "kg CaCO3/ha"})
	s.Warn("acidity", each.AtLeast(soursMore(s)), "")
	s.Say(sheet.Note, each.More(s.Zero("lb CaCO3/lb N")),
		"In warm, moist soil its nitrogen turns to nitrate in 2 to 3 weeks, and that lowers the pH of the soil. In the "+
			"long run lime makes up for it: {lime}.")
	limes := asks(s, t.grade, (*material).limes)
	liming := s.Step("liming-each", "lb CaCO3/lb N", listedLiming(s, t.grade),
		sheet.Says{Label: "Lime that a pound of its nitrogen does the work of", Work: "liming by a pound of N",
			When: limes})
	s.Step("liming", "lb CaCO3/ac", nitrogen.Times(liming),
		sheet.Says{Label: "Lime that it does the work of", Also: "kg CaCO3/ha", When: limes})
	s.Say(sheet.Note, limes, "This material works against acid soil, as lime does: it does the work of {liming}. Its "+
		"nitrate moves with water at once, so water it gently.")
}

// soursMore is the lime from which a material sours soil more than most.
func soursMore(s *sheet.Sheet) sheet.Term {
	return s.ConstantOnce("sours", "3 lb CaCO3/lb N", sheet.Fact{
		Label: "Lime from which a material sours soil more than most", Sources: []string{"common-practice"},
		Note: "Urea, ammonia and ammonium nitrate take 1.8.",
	})
}
