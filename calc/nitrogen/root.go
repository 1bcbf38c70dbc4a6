package nitrogen

import "acreleaf/calc/sheet"

// RootShare is the part of a feed that falls where the roots are: the overlap of two circles, the ground that the
// emitter wets and the root zone, by Weisstein's formula for the area in which two circles meet.
//
// The two angles of the formula are worked from their halves, by the sine or the cosine, whichever is the smaller. That
// is the same angle, and it loses no digits where the circles barely touch.
var RootShare = sheet.New("root-share", rootShare)

func rootShare(s *sheet.Sheet) {
	wetted := s.Given("wetted", "ft", sheet.Field{Typical: 6, Low: 0.5, High: 60, Units: []string{"m", "cm", "in"}})
	root := s.Given("root", "ft", sheet.Field{Typical: 2, Low: 0.25, High: 40, Units: []string{"m", "cm", "in"}})
	offset := s.Given("offset", "ft", sheet.Field{Typical: 2, Low: 0, High: 60, Units: []string{"m", "cm", "in"}})
	rate := s.Given("rate", "oz N/tree fed", sheet.Field{
		Typical: 0.8, Low: 0, High: 80, Units: []string{"lb N/tree fed", "g N/tree fed"},
	})
	half := s.Step("reach", "ft", wetted.Over(s.Number(2)), sheet.Says{Also: "m"})
	c := circles{s: s, reach: half, root: root.Term, offset: offset.Term, pi: pi(s)}
	whole := s.Step("wetted-area", "ft2", c.pi.Times(half.Power(2)), sheet.Says{Also: "m2"})
	overlap := c.overlap()
	share := s.Answer("share", "%", s.Number(1).Least(overlap.Over(whole)), sheet.Says{})
	effective := s.Answer("effective", "oz N/tree fed", rate.Times(share), sheet.Says{Also: "g N/tree fed"})

	s.InWords("share",
		sheet.When(share.IsNothing(), "none"),
		sheet.When(share.AtLeast(s.Number(1)), "all"),
		sheet.Otherwise("share"))
	sayShare(s, share)
	s.Slip("widths-not-areas", "share", root.Over(half))
	s.SlipWhen(root.Plus(offset).More(half), "emitter-at-trunk", "share", root.Over(half).Power(2))
	s.Slip("width-for-radius", "share", root.Over(wetted).Power(2))
	s.Slip("other-way-round", "share", overlap.Over(c.pi.Times(root.Power(2))))
	s.Slip("outside", "effective", rate.Minus(effective))
	s.SlipWhen(share.Less(s.Number(1)), "divided", "effective", rate.Over(share.Most(s.Number(0.001))))
}

func pi(s *sheet.Sheet) sheet.Term {
	return s.Constant("pi", "3.141592653589793", sheet.Fact{Reads: "π", Sources: []string{"geometry"}})
}

func sayShare(s *sheet.Sheet, share sheet.Term) {
	most := s.Constant("half", "50 %", sheet.Fact{Sources: []string{"arithmetic"}})
	none := share.AtMost(s.Zero("%"))
	s.Warn("misses-roots", none, "no-roots")
	s.Warn("misses-roots", share.Less(most).And(none.Not()), "few-roots")
	s.Say(sheet.Note, sheet.Always, "evenly")
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

	narrow := s.Step("narrow", "ft", c.reach.Least(c.root), sheet.Says{Also: "m"})
	inner := s.Step("inner", "ft2", c.pi.Times(narrow.Power(2)), sheet.Says{Also: "m2"})
	lens := c.lens(
		s.Step("deep", "ft", deep, c.says("m")),
		s.Step("bare", "ft", bare, c.says("m")),
		s.Step("dry", "ft", dry, c.says("m")))
	overlap := s.Step("overlap", "ft2",
		sheet.If(c.cross, s.Zero("ft2").Most(lens).Least(inner), sheet.If(meet, inner, s.Zero("ft2"))),
		sheet.Says{Also: "m2"})
	s.Trend(overlap, []sheet.Term{c.reach, c.root}, []sheet.Term{c.offset})
	return overlap
}

// lens is the area that two crossing circles share: two sectors without the kite between the centers and the points
// where the circles cross.
func (c *circles) lens(deep, bare, dry sheet.Term) sheet.Term {
	s := c.s
	around := s.Step("around", "ft", c.reach.Plus(c.root).Plus(c.offset),
		c.says("m"))
	wet := c.angle("wet-angle", deep.Times(dry), bare.Times(around), c.reach)
	roots := c.angle("root-angle", deep.Times(bare), dry.Times(around), c.root)
	kite := s.Step("kite", "ft2", deep.Times(bare).Times(dry).Times(around).SquareRoot().Over(s.Number(2)),
		c.says("m2"))
	return s.Step("lens", "ft2",
		c.reach.Power(2).Times(wet).Plus(c.root.Power(2).Times(roots)).Minus(kite),
		c.says("m2"))
}

// angle is twice the angle whose sine squared is sine over four times the sides, and whose cosine squared is cosine
// over the same. The smaller of the two is at most a half, so the arccosine takes nothing above 0.71.
func (c *circles) angle(name string, sine, cosine, radius sheet.Term) sheet.Term {
	s := c.s
	part := func(of sheet.Term) sheet.Term {
		return s.Number(2).Times(of.Over(s.Number(4).Times(c.offset).Times(radius)).SquareRoot().Arccosine())
	}
	return s.Step(name, "", sheet.If(sine.Less(cosine), c.pi.Minus(part(sine)), part(cosine)),
		c.says(""))
}

// says is for a step that is there when the circles cross.
func (c *circles) says(also string) sheet.Says { return sheet.Says{Also: also, When: c.cross} }
