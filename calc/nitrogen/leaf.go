package nitrogen

import "acreleaf/calc/sheet"

// LeafLevel compares a leaf analysis with the published range for the crop. Of the answers below, adequate and above,
// one is there: how far the level lies from the nearer end of the range.
var LeafLevel = sheet.New("leaf-level", leafLevel)

func leafLevel(s *sheet.Sheet) {
	crop := s.Choice("crop", leafCrops(), sheet.Field{})
	nutrient := s.Choice("nutrient", []sheet.Option{
		{Name: "nitrogen"}, {Name: "potassium"},
	}, sheet.Field{})
	value := s.Given("value", "%", sheet.Field{
		Typical: 2.3, Low: 0, High: 10, Lab: true, For: []*sheet.Given{crop, nutrient},
	})
	l := &leaf{s: s, nitrogen: nutrient.Is("nitrogen"), n: leafNitrogen(s, crop), k: leafPotassium(s, crop)}
	l.askRange(crop, nutrient)
	low, ranged := l.rangeEnd("low", l.from, l.n.low, l.k.low)
	high, bounded := l.rangeEnd("high", l.to, l.n.high, l.k.high)
	deficient, known := l.figure("deficient", l.n.deficient, l.k.deficient)
	excess, limited := l.figure("excess", l.n.excess, l.k.excess)

	over := bounded.And(value.More(high))
	under := value.Less(low)
	within := over.Or(under).Not()
	s.Answer("below", "%", low.Minus(value), sheet.Says{When: under})
	margin := value.Minus(low)
	inside := s.Answer("adequate", "%", sheet.If(bounded, margin.Least(high.Minus(value)), margin),
		sheet.Says{When: within})
	s.Answer("above", "%", value.Minus(high), sheet.Says{When: over})

	s.InWords("low",
		sheet.When(under, "under"),
		sheet.When(over, "over"),
		sheet.When(bounded, "within"),
		sheet.Otherwise("enough"))

	s.Refuse(ranged.Not(), "no-range")
	s.Refuse(s.Stated(l.to).And(l.own.Not()), "no-start")
	s.Refuse(l.own.And(s.Stated(l.to)).And(l.from.AtLeast(l.to)), "range-backward")
	s.Warn("leaf-want", known.And(value.Less(deficient)), "deficient")
	s.Say(sheet.Note, under, "under")
	s.Say(sheet.Note, within.And(bounded), "within")
	s.Say(sheet.Note, within.And(bounded.Not()), "enough")
	s.Say(sheet.Note, over, "over")
	s.Warn("leaf-excess", limited.And(value.More(excess)).And(l.nitrogen), "excess-nitrogen")
	s.Warn("leaf-excess", limited.And(value.More(excess)).And(l.nitrogen.Not()), "excess")
	leafNotes(s, crop)

	s.SlipWhen(bounded, "far-end", "adequate", margin.Most(high.Minus(value)))
	s.Slip("level-itself", "adequate", value)
	s.Slip("of-the-low", "adequate", inside.Over(low))
	s.Slip("added", "below", low.Plus(value))
	s.Slip("from-the-low", "above", value.Minus(low))
}

// leaf is what builds the figures of the nutrient that is chosen.
type leaf struct {
	s        *sheet.Sheet
	nitrogen sheet.Term // whether the nutrient is nitrogen
	n, k     leafTable
	from, to *sheet.Given // the reader's own range
	own      sheet.Term   // whether there is one
}

// askRange asks for a range that takes the place of the published one.
func (l *leaf) askRange(belongs ...*sheet.Given) {
	field := sheet.Field{Typical: 2.3, Low: 0.1, High: 10, Optional: true, For: belongs}
	l.from = l.s.Given("from", "%", field)
	field.Typical = 2.7
	l.to = l.s.Given("to", "%", field)
	l.own = l.s.Stated(l.from)
}

// listed asks whether the tables have a figure for the chosen nutrient.
func (l *leaf) listed(n, k sheet.Term) sheet.Term {
	nothing := l.s.Zero("%")
	return l.nitrogen.And(n.More(nothing)).Or(l.nitrogen.Not().And(k.More(nothing)))
}

// rangeEnd adds an end of the range: the reader's own, or the figure of the chosen nutrient. It is left out where none
// is known.
func (l *leaf) rangeEnd(name string, own *sheet.Given, n, k sheet.Term) (figure, known sheet.Term) {
	known = l.s.Stated(own).Or(l.own.Not().And(l.listed(n, k)))
	return l.s.Answer(name, "%", sheet.If(l.s.Stated(own), own, sheet.If(l.nitrogen, n, k)),
		sheet.Says{When: known}), known
}

// figure adds the figure of the chosen nutrient, which is left out where none is known, and beside a range of the
// reader's own.
func (l *leaf) figure(name string, n, k sheet.Term) (figure, known sheet.Term) {
	known = l.own.Not().And(l.listed(n, k))
	return l.s.Step(name, "%", sheet.If(l.nitrogen, n, k), sheet.Says{When: known}), known
}

// leafNotes say what a range is good for: the month, the trees, and how sure it is.
func leafNotes(s *sheet.Sheet, crop *sheet.Given) {
	s.Say(sheet.Note, crop.Is("almond").Or(crop.Is("walnut")), "july")
	s.Say(sheet.Note, crop.Is("pistachio").Or(crop.Is("hazelnut")), "august")
	s.Say(sheet.Note, crop.Is("pecan"), "july-southeast")
	s.Say(sheet.Note, sheet.Always, "bearing-trees")
}
