package nitrogen

import "acreleaf/calc/sheet"

// LeafLevel compares a leaf analysis with the published range for the crop. Of the answers below, adequate and above,
// one is there: how far the level lies from the nearer end of the range.
var LeafLevel = sheet.New("leaf-level", leafLevel)

func leafLevel(s *sheet.Sheet) {
	s.Head("Reading a leaf analysis", "Compares a laboratory's number with the published range for the crop.")
	crop := s.Choice("crop", leafCrops(), sheet.Field{Label: "Crop", Hint: "Levels and month differ by crop."})
	nutrient := s.Choice("nutrient", []sheet.Option{
		{Name: "nitrogen", Label: "Nitrogen (N)"}, {Name: "potassium", Label: "Potassium (K)"},
	}, sheet.Field{Label: "Nutrient", Hint: "The same report has both."})
	value := s.Given("value", "%", sheet.Field{
		Label: "Level in the leaf", Hint: "Percent of dry weight, as the laboratory prints it.",
		Typical: 2.3, Low: 0, High: 10, Lab: true, For: []*sheet.Given{crop, nutrient},
	})
	l := &leaf{s: s, nitrogen: nutrient.Is("nitrogen"), n: leafNitrogen(s, crop), k: leafPotassium(s, crop)}
	l.askRange(crop, nutrient)
	low, ranged := l.rangeEnd("low", "Range from", l.from, l.n.low, l.k.low)
	high, bounded := l.rangeEnd("high", "Range to", l.to, l.n.high, l.k.high)
	deficient, known := l.figure("deficient", "Deficient below", l.n.deficient, l.k.deficient)
	excess, limited := l.figure("excess", "Excessive above", l.n.excess, l.k.excess)

	over := bounded.And(value.More(high))
	under := value.Less(low)
	within := over.Or(under).Not()
	s.Answer("below", "%", low.Minus(value), sheet.Says{Label: "Below the range by", When: under})
	margin := value.Minus(low)
	inside := s.Answer("adequate", "%", sheet.If(bounded, margin.Least(high.Minus(value)), margin),
		sheet.Says{Label: "Within the range, from its nearer end by", When: within})
	s.Answer("above", "%", value.Minus(high), sheet.Says{Label: "Above the range by", When: over})

	s.InWords("low",
		sheet.When(under, "This leaf has {value}, which is {below} under the range that starts at {low}."),
		sheet.When(over, "This leaf has {value}, which is {above} over the range that ends at {high}."),
		sheet.When(bounded, "This leaf has {value}, within the range of {low} to {high}."),
		sheet.Otherwise("This leaf has {value}, and {low} is the lowest level that is called enough."))

	s.Refuse(ranged.Not(),
		"No published figure is known here for this nutrient in leaves of this crop. Put in the range that your laboratory "+
			"prints: where it starts, and where it ends if it says so.")
	s.Refuse(s.Stated(l.to).And(l.own.Not()),
		"Your range has an end and no start. Put in where it starts too, or leave the end empty.")
	s.Refuse(l.own.And(s.Stated(l.to)).And(l.from.AtLeast(l.to)),
		"Your range starts at {from} and ends at {to}. The start must be the smaller number.")
	s.Warn("leaf-want", known.And(value.Less(deficient)), "Under {deficient} is called deficient.")
	s.Say(sheet.Note, under,
		"Below the range. Ask first whether water, roots or a heavy crop is behind it. Then plan next season's "+
			"feed from the crop that you expect.")
	s.Say(sheet.Note, within.And(bounded),
		"Within the range. More would be wasted: keep the feed to what the crop takes.")
	s.Say(sheet.Note, within.And(bounded.Not()),
		"At or above the lowest level that is called enough. No upper end is known here, so this does not say how much is "+
			"too much.")
	s.Say(sheet.Note, over,
		"Above the range. More will not add crop. Put on less, and count what soil and water bring.")
	s.Warn("leaf-excess", limited.And(value.More(excess)).And(l.nitrogen),
		"Over {excess} is called excessive. Too much nitrogen brings soft growth and disease: hull rot in almond.")
	s.Warn("leaf-excess", limited.And(value.More(excess)).And(l.nitrogen.Not()), "Over {excess} is called excessive.")
	leafNotes(s, crop)

	s.Slip("far-end", "adequate", sheet.If(bounded, margin.Most(high.Minus(value)), margin.Plus(low)),
		"That is the way to the farther end of the range.")
	s.Slip("of-the-low", "adequate", inside.Over(low),
		"That is a share of the lower end. A level is a percent already, so take one from the other.")
	s.Slip("added", "below", low.Plus(value), "Take the level from the lower end of the range.")
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
	field := sheet.Field{
		Label: "Range from, if your laboratory has its own", Hint: "Where its range starts. Empty: the published range.",
		Typical: 2.3, Low: 0.1, High: 10, Optional: true, For: belongs,
	}
	l.from = l.s.Given("from", "%", field)
	field.Label, field.Hint, field.Typical = "Range to", "Where that range ends. Leave it empty if it has no end.", 2.7
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
func (l *leaf) rangeEnd(name, label string, own *sheet.Given, n, k sheet.Term) (figure, known sheet.Term) {
	known = l.s.Stated(own).Or(l.own.Not().And(l.listed(n, k)))
	return l.s.Answer(name, "%", sheet.If(l.s.Stated(own), own, sheet.If(l.nitrogen, n, k)),
		sheet.Says{Label: label, When: known}), known
}

// figure adds the figure of the chosen nutrient, which is left out where none is known, and beside a range of the
// reader's own.
func (l *leaf) figure(name, label string, n, k sheet.Term) (figure, known sheet.Term) {
	known = l.own.Not().And(l.listed(n, k))
	return l.s.Step(name, "%", sheet.If(l.nitrogen, n, k), sheet.Says{Label: label, When: known}), known
}

// leafNotes say what a range is good for: the month, the trees, and how sure it is.
func leafNotes(s *sheet.Sheet, crop *sheet.Given) {
	s.Say(sheet.Note, crop.Is("almond").Or(crop.Is("walnut")),
		"The range is for leaves sampled in July. Do not compare leaves of another month with it.")
	s.Say(sheet.Note, crop.Is("pistachio").Or(crop.Is("hazelnut")),
		"The range is for leaves sampled in August. Do not compare leaves of another month with it.")
	s.Say(sheet.Note, crop.Is("pecan"),
		"The range is for leaves sampled in July or the first week of August, in the Southeast. Other regions and months "+
			"differ.")
	s.Say(sheet.Note, sheet.Always,
		"Levels were set on bearing trees. For a first-leaf tree they say little: look at its shoots.")
}
