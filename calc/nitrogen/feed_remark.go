package nitrogen

import (
	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
)

// refuse says what cannot be a season, and that a leaf is a whole number.
func (f *feedPlan) refuse() {
	s := f.s
	noLeaf := notALeaf(s, f.leaf)
	refuseLeaf(s, noLeaf)
	backward := f.span.Less(s.Zero("days"))
	s.Refuse(backward, "The last feed, {last}, is before the first, {first}. Change one of the two days.")
	s.Refuse(f.span.More(s.Amount(366, "days")),
		"From {first} to {last} is more than a year. Check the years: this is for one season.")
	day := s.Amount(1, "days")
	s.Refuse(f.count.Minus(s.Number(1)).Times(day).More(f.span).And(backward.Or(noLeaf).Not()),
		"{feeds} feeds do not fit between {first} and {last}: that is more than one a day. Feed over more days, or put "+
			"on less nitrogen.")
}

// refuseGas refuses a gas under pressure: it does not drip.
func (f *feedPlan) refuseGas(t *tank) {
	f.s.Refuse(t.has(fact.Pressure),
		"82-0-0 is a gas under pressure. It is not for small feeds of young trees, and it does not go through drip lines. "+
			"Choose a liquid or a dry material.")
}

// caution speaks of feeds that are too big or too close.
func (f *feedPlan) caution() {
	s := f.s
	s.Warn("feed-burns", f.over,
		"Each feed of {each bare} oz of nitrogen a tree is over {usual bare} oz, which is the most for this leaf. "+
			"Take your own limit out.")
	s.Warn("feed-burns", f.some.And(f.above).And(f.over.Not()),
		"You set {cap bare} oz of nitrogen a tree as the most in one feed, and {usual bare} oz is the most for this leaf. "+
			"These feeds of {each bare} oz stay within it.")
	sayOfSeason(s, f.leaf, f.some, f.season, "season")
	closeYoung, close := s.Constant("close-young", "21 days", sheet.Fact{
		Label: "Fewest days between feeds of young trees", Sources: []string{"common-practice"},
		Note: "Common practice is three to six weeks.",
	}), s.Constant("close", "10 days", sheet.Fact{
		Label: "Fewest days between feeds of older trees", Sources: []string{"common-practice"},
		Note: "Advisors say one to two weeks; this is between.",
	})
	s.Warn("close-feeds", f.several.And(young(s, f.leaf)).And(f.every.Less(closeYoung)),
		"These feeds are only {every} apart. Common practice for young trees is three to six weeks.")
	s.Warn("close-feeds", f.several.And(young(s, f.leaf).Not()).And(f.every.Less(close)),
		"These feeds are only {every} apart. Trees take one to two weeks to use a feed up.")
}

// burnsYoung asks whether a material is one of the liquids that have burned first-leaf trees.
func burnsYoung(grade *sheet.Given) sheet.Term {
	return grade.Is("UAN-32").Or(grade.Is("UAN-28")).Or(grade.Is("CAN-17"))
}

// burn cautions against liquids that have burned first-leaf trees.
func (f *feedPlan) burn(t *tank) {
	first := f.some.And(f.leaf.AtMost(f.s.Number(1)))
	burns := burnsYoung(t.grade)
	f.s.Warn("liquid-first-leaf", first.And(burns), "")
	f.s.Warn("liquid-drips", first.And(t.poured).And(burns.Not()), "")
	f.s.Warn("near-trunk", first.And(t.poured.Not()), "")
}

// outOfLeaf tells of feeds in the season in which trees are bare.
func (f *feedPlan) outOfLeaf() {
	s := f.s
	year := s.Constant("year", "365.2425 days", sheet.Fact{
		Label: "Days in a year", Sources: []string{"calendar"},
	})
	bare := s.Constant("bare", "304 days", sheet.Fact{
		Label: "Day of the year on which trees begin to be bare, in the north", Reads: "November 1",
		Sources: []string{"common-practice"}, Note: "Walnuts are bare from about November to March.",
	})
	long := s.Constant("bare-for", "120 days", sheet.Fact{
		Label: "How long trees are bare", Sources: []string{"common-practice"},
		Note: "To about the first of March.",
	})
	since := f.first.Minus(bare).Over(year)
	until := f.last.Minus(bare).Over(year)
	winter := since.Minus(since.RoundDown()).Less(long.Over(year)).Or(until.RoundDown().More(since.RoundDown()))
	s.Warn("out-of-leaf", f.some.And(winter),
		"Some of this season lies between November and March. North of the equator the trees are bare then.")
	f.late(year, bare, winter)
}

// late tells of a last feed that comes before trees are bare, and too late in the year.
func (f *feedPlan) late(year, bare, winter sheet.Term) {
	s := f.s
	midsummer := s.Constant("late-young", "227 days", sheet.Fact{
		Label: "Day of the year from which a feed of a young tree is late, in the north", Reads: "August 16",
		Sources: []string{"common-practice"}, Note: "Common practice is to end in midsummer, so that the wood ripens.",
	})
	fall := s.Constant("late", "273 days", sheet.Fact{
		Label: "Day of the year from which a feed of an older tree is late, in the north", Reads: "October 1",
		Sources: []string{"common-practice"}, Note: "After harvest trees take up little, and soon they drop their leaves.",
	})
	between := func(day, from sheet.Term) sheet.Term {
		since := day.Minus(from).Over(year)
		return since.Minus(since.RoundDown()).Less(bare.Minus(from).Over(year))
	}
	youth := young(s, f.leaf)
	s.Warn("out-of-leaf", f.some.And(youth).And(between(f.ends, midsummer)),
		"The last feed, {last-date}, is late for young trees north of the equator: common practice is to end in "+
			"midsummer.")
	s.Warn("out-of-leaf", f.some.And(youth.Not()).And(between(f.ends, fall)),
		"The last feed, {last-date}, is late north of the equator: the trees will soon be bare.")
	f.unfit = winter.Or(youth.And(between(f.last.Term, midsummer))).Or(youth.Not().And(between(f.last.Term, fall)))
}

// note says what else there is to know of the feeds.
func (f *feedPlan) note(dry sheet.Term) {
	s := f.s
	one := f.count.Same(s.Number(1)).And(f.span.More(s.Zero("days"))).And(f.over.Not())
	s.Say(sheet.Note, one.And(f.unfit.Not()),
		"One feed is enough. It is set for {first}; any day to {last} will do.")
	s.Say(sheet.Note, one.And(f.unfit), "One feed is enough. It is set for {first}.")
	s.Say(sheet.Note, f.count.More(s.Number(datesShown)),
		"There are {feeds} feeds, and only the first eight are listed. Go on every {every}; the last is on {last}.")
	s.Warn("cap-beyond-source", f.some.And(f.leaf.More(s.Number(5))), "")
	first := f.leaf.AtMost(s.Number(1))
	s.Say(sheet.Note, f.some.And(first),
		"Common practice: wait with the first feed until there are 8 to 12 in of new growth. Stop early enough for the "+
			"wood to ripen before frost.")
	s.Say(sheet.Note, f.some.And(first.Not()),
		"Stop early enough for the wood to ripen before frost.")
	s.Say(sheet.Note, f.some.And(dry).And(f.leaf.More(s.Number(1))),
		"Spread dry material over the wetted ground, keep it off the trunk, and water it in.")
	sayWaterlogged(s)
}

// slips are the wrong ways to split a season.
func (f *feedPlan) slips() {
	s := f.s
	s.Slip("rounded-down", "feeds", f.parts.RoundDown(),
		"Round up. With one feed fewer, each is over the limit.")
	s.Slip("not-rounded", "feeds", f.parts, "There is no part of a feed. Round up to a whole number.")
	s.Slip("pounds-for-ounces", "feeds", f.parts.Over(s.Number(16)).RoundUp(),
		"Pounds a tree were divided by ounces. Multiply the pounds by 16 first.")
	s.Slip("acre-for-tree", "feeds", f.nitrogen.Over(f.limit),
		"Pounds an acre were divided by ounces a tree. Turn the pounds into ounces a tree first.")
	s.Slip("all-at-once", "each", f.season, "That is the whole season for one tree. Divide it by the number of feeds.")
	s.Slip("limit-for-share", "each", f.limit,
		"That is the most that a feed may hold. Share the season out evenly: divide it by the number of feeds.")
	s.Slip("tree-pounds", "each", f.each.Over(s.Number(16)), "Those are pounds a tree. Multiply by 16 for ounces.")
	s.Slip("season-an-acre", "each-acre", f.nitrogen.Term,
		"That is the whole season. Divide it by the number of feeds.")
	s.Slip("ounces-an-acre", "each-acre", f.acre.Times(s.Number(16)),
		"Those are ounces an acre. Divide by 16 for pounds.")
	s.Slip("nitrogen-for-product", "product", f.acre,
		"That is the nitrogen of a feed. The material is only partly nitrogen: divide by its share.")
	s.Slip("season-of-product", "product", f.product.Times(f.count),
		"That is the material for the whole season. Divide it by the number of feeds.")
	s.Slip("pounds-for-gallons", "volume", f.product.Over(s.Number(1)),
		"Those are pounds of material. Divide by the weight of a gallon.")
	s.Slip("feeds-for-gaps", "every", f.span.Over(f.count.Most(s.Number(1))),
		"The days were divided by the feeds. There is one gap fewer than there are feeds.")
}
