package nitrogen

import "acreleaf/calc/sheet"

// RootShare is the part of a feed that falls where the roots are: the overlap of two circles, the ground that the
// emitter wets and the root zone, by Weisstein's formula for the area in which two circles meet.
//
// The two angles of the formula are worked from their halves, by the sine or the cosine, whichever is the smaller. That
// is the same angle, and it loses no digits where the circles barely touch.
var RootShare = sheet.New("root-share", rootShare)

func rootShare(s *sheet.Sheet) {
	s.Head("Share of a feed that the roots can reach",
		"Compares the ground that an emitter wets with the ground that the roots hold.")
	wetted := s.Given("wetted", "ft", sheet.Field{
		Label: "Wetted circle, from side to side", Hint: "Measure the wet ground of one emitter an hour after a set.",
		Typical: 6, Low: 0.5, High: 60, Units: []string{"m", "cm", "in"},
	})
	root := s.Given("root", "ft", sheet.Field{
		Label:   "Root zone, from the trunk outward",
		Hint:    "Roots reach about 6 in past the drip line: half the width of the canopy, and 6 in.",
		Typical: 2, Low: 0.25, High: 40, Units: []string{"m", "cm", "in"},
	})
	offset := s.Given("offset", "ft", sheet.Field{
		Label: "Tree to emitter", Hint: "From the trunk to the middle of the wet ground.",
		Typical: 2, Low: 0, High: 60, Units: []string{"m", "cm", "in"},
	})
	rate := s.Given("rate", "oz N/tree fed", sheet.Field{
		Label: "Nitrogen for one tree, in one feed", Hint: "Ounces of nitrogen, not of fertilizer.",
		Typical: 0.8, Low: 0, High: 80, Units: []string{"lb N/tree fed", "g N/tree fed"},
	})
	half := s.Step("reach", "ft", wetted.Over(s.Number(2)),
		sheet.Says{Label: "Radius of the wetted circle", Work: "radius of the wet circle", Also: "m"})
	c := circles{s: s, reach: half, root: root.Term, offset: offset.Term, pi: pi(s)}
	whole := s.Step("wetted-area", "ft2", c.pi.Times(half.Power(2)),
		sheet.Says{Label: "Ground that is wetted", Work: "wet ground", Also: "m2"})
	overlap := c.overlap()
	share := s.Answer("share", "%", s.Number(1).Least(overlap.Over(whole)),
		sheet.Says{Label: "Share of the wetted ground with roots in it"})
	effective := s.Answer("effective", "oz N/tree fed", rate.Times(share),
		sheet.Says{Label: "Nitrogen that falls where the roots are", Also: "g N/tree fed"})

	s.InWords("share",
		sheet.When(share.IsNothing(), "None of the feed falls where the roots are."),
		sheet.When(share.AtLeast(s.Number(1)), "All of the feed falls where the roots are."),
		sheet.Otherwise("{share} of the feed falls where the roots are, and the rest beside them."))
	sayShare(s, share)
	s.Slip("widths-not-areas", "share", root.Over(half),
		"That compares the radii. Ground is an area: twice as wide is four times as much.")
	s.Slip("emitter-at-trunk", "share", root.Over(half).Power(2),
		"That has the emitter at the trunk. The farther off it is, the less the circles overlap.")
	s.Slip("width-for-radius", "share", root.Over(wetted).Power(2),
		"The wetted circle was taken twice as wide: its width was used where its radius belongs.")
	s.Slip("other-way-round", "share", overlap.Over(c.pi.Times(root.Power(2))),
		"That is the share of the root zone that is wetted, not the share of the water that roots can reach.")
	s.Slip("outside", "effective", rate.Minus(effective), "That is what falls outside the roots.")
	s.Slip("divided", "effective", rate.Over(share.Most(s.Number(0.001))),
		"Multiply the feed by the share. Dividing says what would have to go on, which must not be done: the rest leaches.")
}

func pi(s *sheet.Sheet) sheet.Term {
	return s.Constant("pi", "3.141592653589793", sheet.Fact{
		Label: "Area of a circle over the square of its radius", Reads: "π", Sources: []string{"geometry"},
	})
}

func sayShare(s *sheet.Sheet, share sheet.Term) {
	most := s.Constant("half", "50 %", sheet.Fact{
		Label: "Share below which most of a feed is out of reach", Sources: []string{"arithmetic"},
	})
	none := share.AtMost(s.Zero("%"))
	s.Warn("misses-roots", none,
		"No part of this feed falls where the roots are. Do not feed through this emitter.")
	s.Warn("misses-roots", share.Less(most).And(none.Not()),
		"Only {share} of this feed falls where the roots are.")
	s.Say(sheet.Note, sheet.Always,
		"This takes the feed to fall evenly over the wetted circle. It is common practice that roots reach about 6 in past "+
			"the drip line: dig and look.")
}

// circles are the wetted circle, of radius reach, and the root zone around the trunk, offset apart.
type circles struct {
	s                       *sheet.Sheet
	reach, root, offset, pi sheet.Term
	cross                   sheet.Term // a question: whether they cross
}

// overlap is the area that the circles share. They lie apart, one lies in the other, or they cross.
func (c *circles) overlap() sheet.Term {
	s := c.s
	nothing := s.Zero("ft")
	deep := c.reach.Plus(c.root).Minus(c.offset)
	// The difference of the radii is taken first, so that all four lengths are of one triangle to the last bit.
	bare, dry := c.offset.Plus(c.reach.Minus(c.root)), c.offset.Plus(c.root.Minus(c.reach))
	meet := deep.More(nothing)
	c.cross = meet.And(bare.More(nothing)).And(dry.More(nothing))

	narrow := s.Step("narrow", "ft", c.reach.Least(c.root),
		sheet.Says{Label: "The smaller radius", Work: "smaller radius", Also: "m"})
	inner := s.Step("inner", "ft2", c.pi.Times(narrow.Power(2)),
		sheet.Says{Label: "The smaller circle", Work: "smaller circle", Also: "m2"})
	lens := c.lens(
		s.Step("deep", "ft", deep, c.says("depth of overlap", "How deep the circles overlap", "m")),
		s.Step("bare", "ft", bare, c.says("wet without roots", "Wet crescent without roots, at its widest", "m")),
		s.Step("dry", "ft", dry, c.says("roots left dry", "Crescent of roots left dry, at its widest", "m")))
	overlap := s.Step("overlap", "ft2",
		sheet.If(c.cross, s.Zero("ft2").Most(lens).Least(inner), sheet.If(meet, inner, s.Zero("ft2"))),
		sheet.Says{Label: "Wetted ground with roots in it", Work: "wet ground with roots", Also: "m2"})
	s.Trend(overlap, []sheet.Term{c.reach, c.root}, []sheet.Term{c.offset})
	return overlap
}

// lens is the area that two crossing circles share: two sectors without the kite between the centers and the points
// where the circles cross.
func (c *circles) lens(deep, bare, dry sheet.Term) sheet.Term {
	s := c.s
	around := s.Step("around", "ft", c.reach.Plus(c.root).Plus(c.offset),
		c.says("all three lengths", "All three lengths together", "m"))
	wet := c.angle("wet-angle", "emitter", deep.Times(dry), bare.Times(around), c.reach)
	roots := c.angle("root-angle", "trunk", deep.Times(bare), dry.Times(around), c.root)
	kite := s.Step("kite", "ft2", deep.Times(bare).Times(dry).Times(around).SquareRoot().Over(s.Number(2)),
		c.says("kite", "Kite between the centers and the crossings", "m2"))
	return s.Step("lens", "ft2",
		c.reach.Power(2).Times(wet).Plus(c.root.Power(2).Times(roots)).Minus(kite),
		c.says("lens", "Lens where the circles cross", "m2"))
}

// angle is twice the angle whose sine squared is sine over four times the sides, and whose cosine squared is cosine
// over the same. The smaller of the two is at most a half, so the arccosine takes nothing above 0.71.
func (c *circles) angle(name, from string, sine, cosine, radius sheet.Term) sheet.Term {
	s := c.s
	part := func(of sheet.Term) sheet.Term {
		return s.Number(2).Times(of.Over(s.Number(4).Times(c.offset).Times(radius)).SquareRoot().Arccosine())
	}
	return s.Step(name, "", sheet.If(sine.Less(cosine), c.pi.Minus(part(sine)), part(cosine)),
		c.says("half angle at the "+from, "Half the angle of the lens, seen from the "+from+", in radians", ""))
}

// says labels a step that is there when the circles cross.
func (c *circles) says(work, label, also string) sheet.Says {
	return sheet.Says{Label: label, Work: work, Also: also, When: c.cross}
}
