package nitrogen

import (
	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
)

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

	poured    sheet.Term // a question: whether it is a liquid as it is sold
	unweighed sheet.Term // a question: whether it is a liquid of which no weight of a gallon is known
}

// materialGiven asks for the grade.
func materialGiven(s *sheet.Sheet) *sheet.Given {
	return s.Choice("material", materialOptions(), sheet.Field{})
}

// fromLabel asks for what the label and the delivery ticket say, and otherwise takes the lists' figures.
func fromLabel(s *sheet.Sheet, grade *sheet.Given) *tank {
	t := &tank{s: s, grade: grade}
	t.analysis = s.Given("analysis", "% N of product", sheet.Field{
		Written: "% N", Typical: 32, Low: 1, High: 82, Optional: true, For: []*sheet.Given{grade},
	})
	t.density = s.Given("density", "lb product/gal", sheet.Field{
		Written: "lb/gal", Typical: 11, Low: 4, High: 16, Units: []string{"kg/L"}, Optional: true,
		For: []*sheet.Given{grade},
	})
	t.weighed = s.Lookup("weighed", "lb product/gal", grade, figuresOf(grade, (*material).weight))
	t.poured = asks(s, grade, func(m *material) bool { return m.liquid })
	t.liquid = t.weighed.More(s.Zero("lb product/gal")).Or(s.Stated(t.density))
	t.strength = s.Step("strength", "% N of product",
		sheet.If(s.Stated(t.analysis), t.analysis, listedStrength(s, grade)), sheet.Says{})
	t.gallon = s.Step("gallon", "lb product/gal",
		sheet.If(s.Stated(t.density), t.density, listedGallon(s, grade)),
		sheet.Says{Also: "kg product/L", When: t.liquid})
	t.unweighed = t.poured.And(t.liquid.Not())
	s.Refuse(t.poured.Not().And(s.Stated(t.density)).And(s.Stated(t.analysis).Not()), "dry-weighed")
	return t
}

func (t *tank) has(any fact.Trait) sheet.Term { return has(t.s, t.grade, any) }

// careOfMaterials says what the materials of a sheet must be handled for. has asks whether one of them has a trait.
func careOfMaterials(s *sheet.Sheet, has func(fact.Trait) sheet.Term) {
	s.Warn("acid", has(fact.Acid), "")
	s.Warn("ammonia", has(fact.Ammonia), "")
	s.Warn("fire", has(fact.Oxidizer), "")
}

// mixing tells not to mix, and of the jar to try first only where a jar is safe: all that is dangerous to mix has acid
// or ammonia on one side.
func mixing(s *sheet.Sheet, has func(fact.Trait) sheet.Term) {
	dangerous := has(fact.Acid | fact.Ammonia)
	s.Mention("never-mixing", dangerous, "")
	s.Mention("no-mixing", dangerous.Not(), "")
}

// underPressure warns of a gas. An injector does not take one, so that its sheet refuses it.
func underPressure(s *sheet.Sheet, has func(fact.Trait) sheet.Term) {
	s.Warn("pressure", has(fact.Pressure), "")
}

// careOfTank adds what one material must be kept from.
func (t *tank) careOfTank() {
	s := t.s
	careOfMaterials(s, t.has)
	for _, trait := range fact.Traits() {
		if _, harms := fact.FindHazard(fact.KeepID(trait)); harms {
			s.Warn(fact.KeepID(trait), t.has(trait), "")
		}
		if _, plugs := fact.FindHazard(fact.ClogID(trait)); plugs {
			s.Mention(fact.ClogID(trait), t.has(trait), "")
		}
	}
	s.Warn("hard-water", t.has(fact.Ammonia), "")
	mixing(s, t.has)
}

// noticeWeight tells of a weight of a gallon that is not known, and of a ticket or a label that may be of another
// material than the one that is chosen: a weight far from the usual one, or another analysis beside the usual weight.
func (t *tank) noticeWeight() {
	s := t.s
	s.Say(sheet.Note, t.unweighed, "gallons-left-out")
	t.noticeOther()
}

func (t *tank) noticeOther() {
	s := t.s
	grade := s.Lookup("graded", "% N of product", t.grade,
		figuresOf(t.grade, func(m *material) float64 { return m.nitrogen.Value }))
	apart := func(given *sheet.Given, usual, share sheet.Term) sheet.Term {
		return s.Stated(given).And(given.Minus(usual).Size().More(usual.Times(share)))
	}
	regraded := apart(t.analysis, grade, s.Constant("other-grade", "5 %", sheet.Fact{
		Sources: []string{"common-practice"},
	}))
	// Sources are further apart on the weight of thiosulfate than a ticket may be.
	weighed := t.weighed.More(s.Zero("lb product/gal")).And(t.has(fact.Thiosulfate).Not())
	reweighed := weighed.And(apart(t.density, t.weighed,
		s.Constant("other-weight", "3 %", sheet.Fact{Sources: []string{"common-practice"}})))
	s.Step("usual-gallon", "lb product/gal", listedGallon(s, t.grade),
		sheet.Says{Also: "kg product/L", When: reweighed})
	s.Step("usual-strength", "% N of product", listedStrength(s, t.grade), sheet.Says{When: regraded})
	alone := t.weighed.More(s.Zero("lb product/gal")).And(s.Stated(t.density).Not())
	s.Warn("check-numbers", reweighed.And(regraded.Not()), "other-weight")
	s.Warn("check-numbers", regraded.And(alone), "other-grade-weight")
	// A dry material that was dissolved has the analysis and the weight of its solution.
	s.Warn("check-numbers", regraded.And(t.poured.Or(s.Stated(t.density).Not())).And(alone.Not()), "other-grade")
}
