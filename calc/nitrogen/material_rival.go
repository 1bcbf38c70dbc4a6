package nitrogen

import (
	"slices"

	"acreleaf/calc/sheet"
)

// sayCheapest says which of the rivals has the cheapest nitrogen.
func sayCheapest(s *sheet.Sheet, rivals []*rival) {
	var won []sheet.Term
	priced := s.Stated(rivals[0].price)
	for _, r := range rivals[1:] {
		stated := s.Stated(r.price)
		if r.optional {
			stated = r.there.Not().Or(stated)
		}
		priced = priced.And(stated)
	}
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
		wins = priced.And(r.and(wins))
		won = append(won, wins)
		s.Say(sheet.Note, wins,
			"The "+r.place+" material has the cheapest nitrogen: {"+r.place+"-per-nitrogen}.")
	}
	s.Say(sheet.Note, priced.Not(), "To see which has the cheapest nitrogen, put in the price of each.")
	s.Say(sheet.Note, priced.And(won[0].Or(won[1]).Or(won[2]).Not()),
		"No one of them has the cheapest nitrogen. Choose by what they do to the soil and by how they are handled.")
}

// without is the rivals but for one.
func without(rivals []*rival, one *rival) []*rival {
	return slices.DeleteFunc(slices.Clone(rivals), func(r *rival) bool { return r == one })
}

// sayForms says what the forms of a rival's nitrogen mean for leaching, loss to the air and the pH of the soil.
func (r *rival) sayForms(s *sheet.Sheet) {
	half := s.ConstantOnce("half", "50 %", sheet.Fact{
		Label: "Share of a form from which it counts here", Source: "common practice", Sureness: sheet.CommonPractice,
	})
	sour := s.ConstantOnce("sours", "3 lb CaCO3/lb N", sheet.Fact{
		Label: "Lime from which a material sours soil more than most", Source: "common practice",
		Sureness: sheet.CommonPractice, Note: "Urea, ammonia and ammonium nitrate take 1.8.",
	})
	s.Say(sheet.Note, r.and(r.nitrate.AtLeast(half)),
		"Leaching: {"+r.place+"-nitrate} of the nitrogen in the "+r.place+" material is nitrate, which moves with water at "+
			"once. Feed it in small doses, and do not water past the roots.")
	s.Say(sheet.Note, r.and(r.urea.AtLeast(half)).And(has(s, r.grade, acid).Not()),
		"Loss to the air: {"+r.place+"-urea} of the nitrogen in the "+r.place+" material is urea. Water it in the same day.")
	s.Say(sheet.Note, r.and(r.limeEach.AtLeast(sour)),
		"Soil pH: the "+r.place+" material sours the soil more than most. In the long run lime makes up for it: {"+
			r.place+"-lime}.")
	s.Say(sheet.Note, r.and(r.limeEach.Less(s.Zero("lb CaCO3/lb N"))),
		"Soil pH: the "+r.place+" material raises the pH of the soil a little.")
}

// sayTogether says what the rivals must be handled for, and which of them must not meet.
func sayTogether(s *sheet.Sheet, rivals []*rival) {
	any := func(traits trait) sheet.Term {
		found := has(s, rivals[0].grade, traits)
		for _, r := range rivals[1:] {
			found = found.Or(has(s, r.grade, traits))
		}
		return found
	}
	careOfMaterials(s, any)
	s.Say(sheet.Caution, any(calcium).And(any(sulfate|phosphate)),
		"One of these holds calcium and another holds sulfate or phosphate. Never put them in one tank or line: they set "+
			"to a scale that plugs emitters. If you use both, flush the lines between them.")
	s.Say(sheet.Notice, any(unlisted),
		"The forms of the nitrogen in one of these are from memory, or differ by maker. Read the forms on its label.")
}
