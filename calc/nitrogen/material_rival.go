package nitrogen

import (
	"slices"

	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
)

// sayCheapest says which of the rivals has the cheapest nitrogen.
func sayCheapest(s *sheet.Sheet, rivals []*rival) {
	priced := s.Stated(rivals[0].price)
	for _, r := range rivals[1:] {
		stated := s.Stated(r.price)
		if r.optional {
			stated = r.there.Not().Or(stated)
		}
		priced = priced.And(stated)
	}
	cases := []sheet.Case{sheet.When(priced.Not(), "no-prices")}
	for _, r := range rivals {
		var wins sheet.Term
		for i, other := range without(rivals, r) {
			beats := r.each.Less(other.each)
			if other.optional {
				beats = other.there.Not().Or(beats)
			}
			if i > 0 {
				beats = wins.And(beats)
			}
			wins = beats
		}
		cases = append(cases, sheet.When(r.and(wins), r.place+"-cheapest"))
	}
	s.InWords("first-per-nitrogen", append(cases, sheet.Otherwise("no-cheapest"))...)
}

// without is the rivals but for one.
func without(rivals []*rival, one *rival) []*rival {
	return slices.DeleteFunc(slices.Clone(rivals), func(r *rival) bool { return r == one })
}

// sayForms says what the forms of a rival's nitrogen mean for leaching, loss to the air and the pH of the soil.
func (r *rival) sayForms(s *sheet.Sheet) {
	half := s.ConstantOnce("half", "50 %", sheet.Fact{Sources: []string{"common-practice"}})
	sour := soursMore(s)
	s.Say(sheet.Note, r.and(r.nitrate.AtLeast(half)), r.place+"-leaches")
	s.Say(sheet.Note, r.and(r.urea.AtLeast(half)).And(has(s, r.grade, fact.Acid).Not()), r.place+"-lost-to-air")
	s.Warn("acidity", r.and(r.limeEach.AtLeast(sour)), r.place+"-sours")
	s.Say(sheet.Note, r.and(asks(s, r.grade, (*material).limes)), r.place+"-limes")
}

// sayTogether says what the rivals must be handled for, and which of them must not meet.
func sayTogether(s *sheet.Sheet, rivals []*rival) {
	any := func(traits fact.Trait) sheet.Term {
		found := has(s, rivals[0].grade, traits)
		for _, r := range rivals[1:] {
			found = found.Or(has(s, r.grade, traits))
		}
		return found
	}
	underPressure(s, any)
	careOfMaterials(s, any)
	for _, p := range fact.Pairs() {
		if held(p.A) && held(p.B) {
			s.Warn(p.ID(), any(p.A).And(any(p.B)), "")
		}
	}
	mixing(s, any)
	for _, r := range rivals {
		unknown := asks(s, r.grade, func(m *material) bool { return m.name != "" && m.forms.sources == nil })
		s.Say(sheet.Note, r.and(unknown), r.place+"-forms-unknown")
	}
}

// held says whether one of the materials has the trait.
func held(trait fact.Trait) bool {
	return slices.ContainsFunc(materials, func(m material) bool { return m.traits&trait != 0 })
}
