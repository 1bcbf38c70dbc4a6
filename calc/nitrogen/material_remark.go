package nitrogen

import "acreleaf/calc/sheet"

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
		Label: "Nitrogen in a gallon of UAN, by the field rule", Source: "common practice",
		Sureness: sheet.CommonPractice, Note: "It is near for UAN-28, and too little for UAN-32.",
	})
}

func waterGallon(s *sheet.Sheet) sheet.Term {
	return s.ConstantOnce("water-gallon", "8.345404452 lb water/gal", sheet.Fact{
		Label: "Weight of a gallon of water", Reads: "8.345 lb/gal",
		Source: "unit definitions (NIST Handbook 44, Appendix C), water at 1 kg/L", Sureness: sheet.Standard,
	})
}

// storing tells what becomes of a material that waits: in a cold tank, or on top of the ground.
func (t *tank) storing() {
	s := t.s
	s.Say(sheet.Notice, t.grade.Is("UAN-32"),
		"UAN-32 salts out near 28 °F (-2 °C). Do not leave it in a tank or a line over a cold night.")
	s.Say(sheet.Notice, t.grade.Is("UAN-28"),
		"UAN-28 salts out near 0 °F (-18 °C). Do not leave it in a tank or a line over a hard freeze.")
	urea := s.Lookup("urea", "%", t.grade, figuresOf(t.grade, func(m *material) float64 { return m.urea }))
	s.Say(sheet.Note, urea.More(s.Zero("%")).And(t.has(acid).Not()),
		"Urea that stays on top of the ground gives off ammonia to the air. Water it in or work it in the same day.")
	s.Say(sheet.Note, t.grade.Is("21-0-0-24S"),
		"On a soil above pH 7.5, ammonium sulfate on top of the ground gives off ammonia too. Water it in.")
}

// souring tells what the nitrogen does to the soil's pH, and the lime that undoes it.
func (t *tank) souring(nitrogen *sheet.Given) {
	s := t.s
	each := s.Step("lime-each", "lb CaCO3/lb N", listedLime(s, t.grade),
		sheet.Says{Label: "Lime for a pound of its nitrogen", Work: "lime for a pound of N"})
	s.Step("lime", "lb CaCO3/ac", nitrogen.Times(each),
		sheet.Says{Label: "Lime that undoes the change in pH", Also: "kg CaCO3/ha"})
	s.Say(sheet.Note, each.More(s.Zero("lb CaCO3/lb N")),
		"In warm, moist soil its nitrogen turns to nitrate in 2 to 3 weeks, and that lowers the pH of the soil. In "+
			"the long run lime makes up for it: {lime}.")
	s.Say(sheet.Note, each.Less(s.Zero("lb CaCO3/lb N")),
		"This material raises the pH of the soil a little. Its nitrate moves with water at once, so water it gently.")
}
