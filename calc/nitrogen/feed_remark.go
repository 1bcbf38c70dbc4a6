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
	s.Refuse(backward, "backward")
	s.Refuse(f.span.More(s.Amount(366, "days")), "long")
	day := s.Amount(1, "days")
	s.Refuse(f.count.Minus(s.Number(1)).Times(day).More(f.span).And(backward.Or(noLeaf).Not()), "crowded")
}

// refuseGas refuses a gas under pressure: it does not drip.
func (f *feedPlan) refuseGas(t *tank) {
	f.s.Refuse(t.has(fact.Pressure), "gas")
}

// caution speaks of feeds that are too big or too close.
func (f *feedPlan) caution() {
	s := f.s
	s.Warn("feed-burns", f.over, "over-usual")
	s.Warn("feed-burns", f.some.And(f.above).And(f.over.Not()), "own-limit-over")
	sayOfSeason(s, f.leaf, f.some, f.season, "season")
	closeYoung, close := s.Constant("close-young", "21 days", sheet.Fact{
		Sources: []string{"common-practice"},
	}), s.Constant("close", "10 days", sheet.Fact{Sources: []string{"common-practice"}})
	s.Warn("close-feeds", f.several.And(young(s, f.leaf)).And(f.every.Less(closeYoung)), "close-young")
	s.Warn("close-feeds", f.several.And(young(s, f.leaf).Not()).And(f.every.Less(close)), "close")
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
	year := s.Constant("year", "365.2425 days", sheet.Fact{Sources: []string{"calendar"}})
	bare := s.Constant("bare", "304 days", sheet.Fact{Sources: []string{"common-practice"}})
	long := s.Constant("bare-for", "120 days", sheet.Fact{Sources: []string{"common-practice"}})
	since := f.first.Minus(bare).Over(year)
	until := f.last.Minus(bare).Over(year)
	winter := since.Minus(since.RoundDown()).Less(long.Over(year)).Or(until.RoundDown().More(since.RoundDown()))
	s.Warn("out-of-leaf", f.some.And(winter), "bare-trees")
	f.late(year, bare, winter)
}

// late tells of a last feed that comes before trees are bare, and too late in the year.
func (f *feedPlan) late(year, bare, winter sheet.Term) {
	s := f.s
	midsummer := s.Constant("late-young", "227 days", sheet.Fact{Sources: []string{"common-practice"}})
	fall := s.Constant("late", "273 days", sheet.Fact{Sources: []string{"common-practice"}})
	between := func(day, from sheet.Term) sheet.Term {
		since := day.Minus(from).Over(year)
		return since.Minus(since.RoundDown()).Less(bare.Minus(from).Over(year))
	}
	youth := young(s, f.leaf)
	s.Warn("out-of-leaf", f.some.And(youth).And(between(f.ends, midsummer)), "late-young")
	s.Warn("out-of-leaf", f.some.And(youth.Not()).And(between(f.ends, fall)), "late")
	f.unfit = winter.Or(youth.And(between(f.last.Term, midsummer))).Or(youth.Not().And(between(f.last.Term, fall)))
}

// note says what else there is to know of the feeds.
func (f *feedPlan) note(dry sheet.Term) {
	s := f.s
	one := f.count.Same(s.Number(1)).And(f.span.More(s.Zero("days"))).And(f.over.Not())
	s.Say(sheet.Note, one.And(f.unfit.Not()), "one-any-day")
	s.Say(sheet.Note, one.And(f.unfit), "one-day")
	s.Say(sheet.Note, f.count.More(s.Number(datesShown)), "eight-listed")
	s.Warn("cap-beyond-source", f.some.And(f.leaf.More(s.Number(5))), "")
	first := f.leaf.AtMost(s.Number(1))
	s.Say(sheet.Note, f.some.And(first), "first-leaf-days")
	s.Say(sheet.Note, f.some.And(first.Not()), "wood-ripens")
	s.Say(sheet.Note, f.some.And(dry).And(f.leaf.More(s.Number(1))), "dry-spread")
	sayWaterlogged(s)
}

// slips are the wrong ways to split a season.
func (f *feedPlan) slips() {
	s := f.s
	s.Slip("rounded-down", "feeds", f.parts.RoundDown())
	s.Slip("not-rounded", "feeds", f.parts)
	s.Slip("pounds-for-ounces", "feeds", f.parts.Over(s.Number(16)).RoundUp())
	s.Slip("acre-for-tree", "feeds", f.nitrogen.Over(f.limit))
	most := seasonMost(s, f.leaf) // within it, this way is one feed, as several are
	s.SlipWhen(young(s, f.leaf).And(f.season.More(most)), "season-limit", "feeds", f.season.Over(most).RoundUp())
	s.Slip("all-at-once", "each", f.season)
	s.Slip("limit-for-share", "each", f.limit)
	s.Slip("tree-pounds", "each", f.each.Over(s.Number(16)))
	s.Slip("season-an-acre", "each-acre", f.nitrogen.Term)
	s.Slip("ounces-an-acre", "each-acre", f.acre.Times(s.Number(16)))
	s.Slip("nitrogen-for-product", "product", f.acre)
	s.Slip("season-of-product", "product", f.product.Times(f.count))
	s.Slip("pounds-for-gallons", "volume", f.product.Over(s.Number(1)))
	s.Slip("feeds-for-gaps", "every", f.span.Over(f.count.Most(s.Number(1))))
}
