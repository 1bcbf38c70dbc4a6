package nitrogen

import (
	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
)

// fieldRule tells how far the field rule for UAN is from the weight and the analysis at hand.
func (t *tank) fieldRule(inGallon sheet.Term) {
	solution := t.grade.Is("UAN-32").Or(t.grade.Is("UAN-28"))
	t.s.Step("apart", "%", inGallon.Over(threePounds(t.s)).Minus(t.s.Number(1)).Size(), sheet.Says{When: solution})
	t.s.Say(sheet.Note, solution, "three-pounds")
}

func threePounds(s *sheet.Sheet) sheet.Term {
	return s.ConstantOnce("three-pounds", "3 lb N/gal", sheet.Fact{Sources: []string{"common-practice"}})
}

func waterGallon(s *sheet.Sheet) sheet.Term {
	return s.ConstantOnce("water-gallon", "8.345404452 lb water/gal", sheet.Fact{
		Reads: "8.345 lb/gal", Sources: []string{"nist-44"},
	})
}

// storing tells what becomes of a material that waits: in a cold tank, or on top of the ground.
func (t *tank) storing() {
	s := t.s
	s.Warn("salts-out", t.grade.Is("UAN-32"), "salts-out-32")
	s.Warn("salts-out", t.grade.Is("UAN-28"), "salts-out-28")
	urea := asks(s, t.grade, func(m *material) bool { return m.forms.urea > 0 })
	s.Say(sheet.Note, urea.And(t.has(fact.Acid).Not()), "urea-on-top")
	s.Say(sheet.Note, t.grade.Is("21-0-0-24S"), "sulfate-on-top")
}

// souring tells what the nitrogen does to the soil's pH, and the lime that undoes it.
func (t *tank) souring(nitrogen sheet.Term) {
	s := t.s
	each := s.Step("lime-each", "lb CaCO3/lb N", listedLime(s, t.grade), sheet.Says{})
	s.Step("lime", "lb CaCO3/ac", nitrogen.Times(each), sheet.Says{Also: "kg CaCO3/ha"})
	s.Warn("acidity", each.AtLeast(soursMore(s)), "")
	s.Say(sheet.Note, each.More(s.Zero("lb CaCO3/lb N")), "lime-makes-up")
	limes := asks(s, t.grade, (*material).limes)
	liming := s.Step("liming-each", "lb CaCO3/lb N", listedLiming(s, t.grade), sheet.Says{When: limes})
	s.Step("liming", "lb CaCO3/ac", nitrogen.Times(liming), sheet.Says{Also: "kg CaCO3/ha", When: limes})
	s.Say(sheet.Note, limes, "works-as-lime")
}

// soursMore is the lime from which a material makes soil more acid than most do.
func soursMore(s *sheet.Sheet) sheet.Term {
	return s.ConstantOnce("sours", "3 lb CaCO3/lb N", sheet.Fact{Sources: []string{"common-practice"}})
}
