package nitrogen

import "acreleaf/calc/sheet"

// LeafLevel holds a leaf analysis against the published range for the crop. Of the answers below, adequate and above
// the one that holds is there, with how far the level lies from the nearest end of the range.
var LeafLevel = sheet.New("leaf-level", leafLevel)

func leafLevel(s *sheet.Sheet) {
	s.Head("Reading a leaf analysis", "Holds a laboratory's number against the published range for the crop.")
	crop := s.Choice("crop", leafCrops(), sheet.Field{Label: "Crop", Hint: "Levels and month differ by crop."})
	nutrient := s.Choice("nutrient", []sheet.Option{
		{Name: "nitrogen", Label: "Nitrogen (N)"}, {Name: "potassium", Label: "Potassium (K)"},
	}, sheet.Field{Label: "Nutrient", Hint: "The same report has both."})
	value := s.Given("value", "%", sheet.Field{
		Label: "Level in the leaf", Hint: "Percent of dry weight, as the laboratory prints it.",
		Typical: 2.3, Low: 0, High: 10, For: []*sheet.Given{crop, nutrient},
	})
	l := &leaf{s: s, nitrogen: nutrient.Is("nitrogen"), n: leafNitrogen(s, crop), k: leafPotassium(s, crop)}
	low, ranged := l.figure(s.Answer, "low", "Range from", l.n.low, l.k.low)
	high, bounded := l.figure(s.Answer, "high", "Range to", l.n.high, l.k.high)
	deficient, known := l.figure(s.Step, "deficient", "Deficient below", l.n.deficient, l.k.deficient)
	excess, limited := l.figure(s.Step, "excess", "Excessive above", l.n.excess, l.k.excess)

	over := bounded.And(value.More(high))
	under := value.Less(low)
	within := over.Or(under).Not()
	s.Answer("below", "%", low.Minus(value), sheet.Says{Label: "Below the range by", When: under})
	margin := value.Minus(low)
	inside := s.Answer("adequate", "%", sheet.If(bounded, margin.Least(high.Minus(value)), margin),
		sheet.Says{Label: "Within the range, from its nearer end by", When: within})
	s.Answer("above", "%", value.Minus(high), sheet.Says{Label: "Above the range by", When: over})

	s.Refuse(ranged.Not(),
		"No published figure is known here for potassium in pistachio leaves. Ask your laboratory which range it goes by.")
	s.Say(sheet.Caution, known.And(value.Less(deficient)),
		"Under {deficient} is called deficient. Have it looked at this season: water, roots and the sample itself, and then "+
			"the feed.")
	s.Say(sheet.Notice, under,
		"Below the published range. Ask first whether water, roots or a heavy crop is behind it. Then plan next season's "+
			"feed from the crop that you expect.")
	s.Say(sheet.Note, within, "Within the published range. More would be wasted: keep the feed to what the crop takes.")
	s.Say(sheet.Note, within.And(bounded.Not()),
		"No upper end is published here. A level far above the lower end is still more than the trees need.")
	s.Say(sheet.Notice, over,
		"Above the published range. More will not add crop. Put on less, and count what soil and water bring.")
	s.Say(sheet.Caution, limited.And(value.More(excess)).And(l.nitrogen),
		"Over {excess} is called excessive. Too much nitrogen brings soft growth and disease: hull rot in almond.")
	s.Say(sheet.Caution, limited.And(value.More(excess)).And(l.nitrogen.Not()),
		"Over {excess} is called excessive. No more potassium is needed for now.")
	leafNotes(s, crop, l.nitrogen)

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
}

// figure adds the figure of the chosen nutrient, as a step or an answer that is left out where none is known.
func (l *leaf) figure(add func(string, string, sheet.Value, sheet.Says) sheet.Term, name, label string,
	n, k sheet.Term,
) (figure, known sheet.Term) {
	nothing := l.s.Zero("%")
	known = l.nitrogen.And(n.More(nothing)).Or(l.nitrogen.Not().And(k.More(nothing)))
	return add(name, "%", sheet.If(l.nitrogen, n, k), sheet.Says{Label: label, When: known}), known
}

// leafNotes say what a range is good for: the month, the trees, and how sure it is.
func leafNotes(s *sheet.Sheet, crop *sheet.Given, nitrogen sheet.Term) {
	s.Say(sheet.Notice, nitrogen.And(crop.Is("walnut").Or(crop.Is("pistachio"))),
		"The levels of nitrogen for this crop are from memory of a production manual. Check them with your advisor.")
	s.Say(sheet.Note, crop.Is("almond").Or(crop.Is("walnut")),
		"The range is for leaves sampled in July. Leaves of another month cannot be held against it.")
	s.Say(sheet.Note, crop.Is("pistachio").Or(crop.Is("hazelnut")),
		"The range is for leaves sampled in August. Leaves of another month cannot be held against it.")
	s.Say(sheet.Note, crop.Is("pecan"),
		"The range is for leaves sampled in July or the first week of August, in the Southeast. Other regions and months "+
			"differ.")
	s.Say(sheet.Note, sheet.Always,
		"Levels were set on bearing trees. For a first-leaf tree they say little: look at its shoots.")
}
