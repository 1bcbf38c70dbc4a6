package nitrogen

import "acreleaf/calc/sheet"

// A tank is one material that a sheet works with: the grade, and what its own label or ticket says of it.
type tank struct {
	s        *sheet.Sheet
	grade    *sheet.Given
	analysis *sheet.Given
	density  *sheet.Given
	liquid   sheet.Term // a question: whether it is counted in gallons
	strength sheet.Term // nitrogen in the product
	gallon   sheet.Term // weight of a gallon; nothing for a dry material
	weighed  sheet.Term // the same in the lists
}

// materialGiven asks for the grade.
func materialGiven(s *sheet.Sheet) *sheet.Given {
	return s.Choice("material", materialOptions(), sheet.Field{
		Label: "Material", Hint: "By its grade. UAN-32 and UAN-28 are told apart by the label.",
	})
}

// fromLabel asks for what the label and the delivery ticket say, and otherwise takes the lists' figures.
func fromLabel(s *sheet.Sheet, grade *sheet.Given) *tank {
	t := &tank{s: s, grade: grade}
	t.analysis = s.Given("analysis", "% N of product", sheet.Field{
		Written: "% N", Label: "Nitrogen on the label, if not the usual",
		Hint: "Leave it empty to use the grade.", Typical: 32, Low: 1, High: 82, Optional: true, For: []*sheet.Given{grade},
	})
	t.density = s.Given("density", "lb product/gal", sheet.Field{
		Written: "lb/gal", Label: "Weight of a gallon, from the ticket",
		Hint:    "Leave it empty to use the usual one.",
		Typical: 11, Low: 4, High: 16, Units: []string{"kg/L"}, Optional: true, For: []*sheet.Given{grade},
	})
	t.weighed = s.Lookup("weighed", "lb product/gal", grade, figuresOf(grade, (*material).weight))
	dry := t.weighed.Same(s.Zero("lb product/gal"))
	t.liquid = dry.Not().Or(s.Stated(t.density))
	t.strength = s.Step("strength", "% N of product",
		sheet.If(s.Stated(t.analysis), t.analysis, listedStrength(s, grade)),
		sheet.Says{Label: "Nitrogen in the material", Work: "share of nitrogen"})
	t.gallon = s.Step("gallon", "lb product/gal",
		sheet.If(s.Stated(t.density), t.density, listedGallon(s, grade)),
		sheet.Says{Label: "Weight of a gallon", Work: "weight of a gallon", Also: "kg product/L", When: t.liquid})
	s.Refuse(dry.And(s.Stated(t.density)).And(s.Stated(t.analysis).Not()),
		"This material is dry, so it has no weight of a gallon: leave that line empty. If you dissolved it, put in the "+
			"nitrogen of the solution as well, from its label.")
	return t
}

func (t *tank) has(any trait) sheet.Term { return has(t.s, t.grade, any) }

// careOfMaterials says what the materials of a sheet must be handled for. has asks whether one of them has a trait.
func careOfMaterials(s *sheet.Sheet, has func(trait) sheet.Term) {
	s.Say(sheet.Danger, has(acid),
		"Urea-sulfuric acid burns skin and eyes, and eats brass, bronze and plain steel. Pour acid into water, never water "+
			"into acid. Never let it meet bleach, chlorine or thiosulfate: that makes a poison gas. Read the label, follow "+
			"the local code, and leave it to people who are trained for it.")
	s.Say(sheet.Danger, has(ammonia),
		"Ammonia gas burns eyes, skin and lungs, and can kill. Read the label, follow the local code, keep clean water "+
			"at hand to flush eyes, and leave it to trained applicators.")
}

// careOfTank adds what one material must be kept from.
func (t *tank) careOfTank() {
	careOfMaterials(t.s, t.has)
	t.s.Say(sheet.Caution, t.has(ammonia),
		"Ammonia raises the pH of irrigation water. Then lime settles out of hard water and plugs emitters: try it in a "+
			"jar of your own water first.")
	t.s.Say(sheet.Caution, t.has(calcium),
		"This material holds calcium. Never put it in one tank or line with sulfate or phosphate: they set to a scale "+
			"that plugs emitters. Flush the lines between the two.")
	t.s.Say(sheet.Caution, t.has(sulfate|phosphate),
		"This material holds sulfate or phosphate. Never put it in one tank or line with calcium, such as calcium "+
			"nitrate or CAN-17: they set to a scale that plugs emitters. Hard water does it too, so try a jar first.")
	t.noticeDensity()
}

// noticeDensity tells of a weight that is not sure, when it is used.
func (t *tank) noticeDensity() {
	listed := t.s.Stated(t.density).Not()
	t.s.Say(sheet.Notice, t.has(remembered).And(listed),
		"The weight of a gallon, {gallon}, is from memory. Read the density on the delivery ticket and put it in.")
	t.s.Say(sheet.Notice, t.has(disputed).And(listed),
		"Sources put a gallon of 12-0-0-26S at 11.1 to 11.5 lb. Read the density on the delivery ticket and put it in.")
	t.noticeOther()
}

// noticeOther tells of a ticket or a label that may be of another material than the one that is chosen: a weight far
// from the usual one, or another analysis beside the usual weight.
func (t *tank) noticeOther() {
	s := t.s
	grade := s.Lookup("graded", "% N of product", t.grade,
		figuresOf(t.grade, func(m *material) float64 { return m.nitrogen }))
	apart := func(given *sheet.Given, usual, share sheet.Term) sheet.Term {
		return s.Stated(given).And(given.Minus(usual).Size().More(usual.Times(share)))
	}
	regraded := apart(t.analysis, grade, s.Constant("other-grade", "5 %", sheet.Fact{
		Label: "How far a label may be from the grade", Source: "common practice", Sureness: sheet.CommonPractice,
		Note: "Labels of one grade differ by less: urea has 45 or 46 %.",
	}))
	reweighed := t.weighed.More(s.Zero("lb product/gal")).And(t.has(disputed).Not()).And(apart(t.density, t.weighed,
		s.Constant("other-weight", "3 %", sheet.Fact{
			Label: "How far a ticket may be from the usual weight", Source: "common practice",
			Sureness: sheet.CommonPractice, Note: "A warm gallon weighs 1 or 2 % less than a cold one.",
		})))
	s.Step("usual-gallon", "lb product/gal", listedGallon(s, t.grade),
		sheet.Says{Label: "Usual weight of a gallon", Also: "kg product/L", When: reweighed})
	s.Step("usual-strength", "% N of product", listedStrength(s, t.grade),
		sheet.Says{Label: "Nitrogen by the grade", When: regraded})
	alone := t.weighed.More(s.Zero("lb product/gal")).And(s.Stated(t.density).Not())
	s.Say(sheet.Notice, reweighed.And(regraded.Not()),
		"Your gallon weighs {density}, and a gallon of this material usually weighs {usual-gallon}. Check that the ticket "+
			"is for this material. If it is not, leave the weight empty.")
	s.Say(sheet.Notice, regraded.And(alone),
		"Your label has {analysis}, and this grade has {usual-strength}: the weight of a gallon, {gallon}, is still that of "+
			"the grade. Put in the weight from your ticket, or choose the material that your label names.")
	s.Say(sheet.Notice, regraded.And(t.weighed.More(s.Zero("lb product/gal")).Or(s.Stated(t.density).Not())).
		And(alone.Not()),
		"Your label has {analysis}, and this grade has {usual-strength}. Check that the label is of this material.")
}
