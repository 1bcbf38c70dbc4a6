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
	cases := []sheet.Case{sheet.When(priced.Not(),
		"Put in the price of each material to see which has the cheapest nitrogen.")}
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
		cases = append(cases, sheet.When(r.and(wins),
			"The "+r.place+" material has the cheapest nitrogen: {"+r.place+"-per-nitrogen}."))
	}
	s.InWords("first-per-nitrogen", append(cases, sheet.Otherwise(
		"No one of them has the cheapest nitrogen. Choose by what they do to the soil and by how they are handled."))...)
}

// without is the rivals but for one.
func without(rivals []*rival, one *rival) []*rival {
	return slices.DeleteFunc(slices.Clone(rivals), func(r *rival) bool { return r == one })
}

// sayForms says what the forms of a rival's nitrogen mean for leaching, loss to the air and the pH of the soil.
func (r *rival) sayForms(s *sheet.Sheet) {
	half := s.ConstantOnce("half", "50 %", sheet.Fact{
		Label: "Share of a form from which it counts here", Sources: []string{"common-practice"},
	})
	sour := soursMore(s)
	s.Say(sheet.Note, r.and(r.nitrate.AtLeast(half)),
		"Leaching: {"+r.place+"-nitrate} of the nitrogen in the "+r.place+" material is nitrate, which moves with water at "+
			"once. Feed it in small doses, and do not water past the roots.")
	s.Say(sheet.Note, r.and(r.urea.AtLeast(half)).And(has(s, r.grade, fact.Acid).Not()),
		"Loss to the air: {"+r.place+"-urea} of the nitrogen in the "+r.place+" material is urea. Water it in the same day.")
	s.Warn("acidity", r.and(r.limeEach.AtLeast(sour)),
		"The "+r.place+" material: in the long run lime makes up for what it does to the pH, {"+r.place+"-lime}.")
	s.Say(sheet.Note, r.and(asks(s, r.grade, (*material).limes)),
		"Soil pH: the "+r.place+" material works against acid soil, as lime does. It does the work of {"+r.place+"-liming}.")
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
		s.Say(sheet.Note, r.and(unknown),
			"The forms of the nitrogen in the "+r.place+" material differ by maker, so they are left out. Read them on its "+
				"label.")
	}
}

// held says whether one of the materials has the trait.
func held(trait fact.Trait) bool {
	return slices.ContainsFunc(materials, func(m material) bool { return m.traits&trait != 0 })
}
