package nitrogen

import "acreleaf/calc/sheet"

// SeasonBudget takes every credit off what the trees need, and says what is left to apply.
//
// A need that is taken up is turned into nitrogen fed first, and each credit then comes off pound for pound: in trials
// on vegetables nitrate in water was taken up as well as that of fertilizer. The order of the walnut guide is worked
// beside it.
var SeasonBudget = sheet.New("season-budget", seasonBudget)

// A season is what a budget is made from.
type season struct {
	s                *sheet.Sheet
	need, efficiency *sheet.Given
	told             sheet.Term // a question: whether the need is told as taken up
	whole            sheet.Term // every pound of a credit is taken up, as the walnut guide has it

	fedNeed, credits, apply, surplus sheet.Term
	reached                          sheet.Term // of the soil's nitrogen, what roots reach
	water                            *sheet.Given
}

func seasonBudget(s *sheet.Sheet) {
	b := &season{s: s}
	b.need = s.Given("need", "lb N/ac taken up", sheet.Field{
		Typical: 30, Low: 0, High: 500, Units: []string{"kg N/ha taken up"},
		Else: sheet.Other{Unit: "lb N/ac fed", Low: 0, High: 1000},
	})
	b.efficiency = s.Given("efficiency", "% taken up/fed", sheet.Field{
		Written: "%", Typical: 70, Low: 10, High: 100, Optional: true,
	})
	b.told = b.need.IsOther().Not()
	b.fedNeed = s.Step("fed-need", "lb N/ac fed",
		sheet.If(b.told, b.need.Over(b.efficiency), b.need.AsOther()), sheet.Says{Also: "kg N/ha fed"})
	sum, brought := b.creditsOf()
	nothing := s.Zero("lb N/ac fed")
	b.credits = s.Answer("credits", "lb N/ac fed", sum, sheet.Says{Also: "kg N/ha fed"})
	left := nothing.Most(b.fedNeed.Minus(b.credits))
	s.Answer("short", "lb N/ac fed", left, sheet.Says{Also: "kg N/ha fed", Twin: "apply"})
	b.apply = s.Answer("apply", "lb N/ac fed", left, sheet.Says{Also: "kg N/ha fed"})
	b.surplus = s.Answer("surplus", "lb N/ac fed", nothing.Most(b.credits.Minus(b.fedNeed)),
		sheet.Says{Also: "kg N/ha fed"})
	b.whole = wholeCredit(s)
	s.Answer("other-order", "lb N/ac fed",
		s.Zero("lb N/ac taken up").Most(b.need.Minus(b.credits.Times(b.whole))).Over(b.efficiency),
		sheet.Says{Also: "kg N/ha fed", When: b.told})
	b.inWords(brought)
	b.say(brought)
	b.slips()
}

// wholeCredit is what the walnut guide takes of a credit: the credits come off what the trees take up, and only what is
// left is divided.
func wholeCredit(s *sheet.Sheet) sheet.Term {
	return s.Constant("all-taken-up", "100 % taken up/fed", sheet.Fact{
		Reads: "100 %", Sources: []string{"walnut-guide-summary"},
	})
}

// inWords says what to put on, and what brings the rest of the need.
func (b *season) inWords(brought sheet.Term) {
	b.s.InWords("apply",
		sheet.When(b.fedNeed.IsNothing(), "no-need"),
		sheet.When(b.apply.IsNothing(), "covered"),
		sheet.When(b.credits.IsNothing(), "nothing-else"),
		sheet.When(brought, "with-others"),
		sheet.When(b.reached.IsNothing(), "with-water"),
		sheet.When(b.water.IsNothing(), "with-soil"),
		sheet.Otherwise("with-both"))
}

func (b *season) say(brought sheet.Term) {
	s := b.s
	nothing := s.Zero("lb N/ac fed")
	s.Refuse(b.told.And(s.Stated(b.efficiency).Not()), "no-efficiency")
	s.Say(sheet.Note, b.fedNeed.More(nothing).And(b.apply.AtMost(nothing)), "covered")
	s.Warn("leaching", b.surplus.More(nothing), "surplus")
	s.Say(sheet.Note, b.apply.More(nothing), "split-it")
	s.Say(sheet.Note, b.told, "divided-first")
	s.Say(sheet.Note, b.told.Not(), "was-fed")
	s.Say(sheet.Note, brought, "count-once")
}

func (b *season) slips() {
	s := b.s
	nothing := s.Zero("lb N/ac")
	need, credits := b.need.Uncounted("lb N/ac"), b.credits.Uncounted("lb N/ac")
	share := b.efficiency.Over(b.whole)
	// Who leaves out a loss or credits that are not there comes out right. Where the credits come up to the need, several
	// ways leave nothing, and no-efficiency tells of it.
	lost := s.Stated(b.efficiency).And(b.efficiency.Less(b.whole))
	some, left := b.credits.IsNothing().Not(), lost.And(need.More(credits))
	once := need.Over(share)
	twice := once.Over(share)
	s.SlipWhen(left, "efficiency-multiplied", "apply", nothing.Most(need.Times(share).Minus(credits)))
	s.SlipWhen(some, "no-credits", "apply", b.fedNeed)
	s.SlipWhen(b.told.And(lost).And(b.apply.IsNothing().Not()), "no-efficiency", "apply",
		nothing.Most(need.Minus(credits)))
	s.SlipWhen(lost.And(b.told.And(twice.More(credits)).Or(b.told.Not().And(once.More(credits)))),
		"divided-twice", "apply", sheet.If(b.told, twice.Minus(credits), once.Minus(credits)))
	s.SlipWhen(some, "credits-added", "apply", b.fedNeed.Plus(b.credits))
	// Where 30 % is lost, who adds the loss takes 130 % of the need; 1 over 70 % is 143 %.
	added := s.Number(2).Minus(share)
	s.SlipWhen(b.told.And(left), "loss-added", "apply", need.Times(added).Minus(credits))
	s.SlipWhen(b.told.And(left), "loss-added-last", "apply", need.Minus(credits).Times(added))
	s.SlipWhen(b.told, "share-as-percent", "apply", once.Times(s.Number(100)).Minus(credits))
}

// creditsOf asks for every credit and gives their sum, and whether there is one besides those of soil and water. Those
// others are summed in a step of their own, which is left out when none of them was filled in.
func (b *season) creditsOf() (sum, brought sheet.Term) {
	s := b.s
	b.reached = soilCredit(s)
	b.water = s.Given("water", "lb N/ac fed", sheet.Field{
		Typical: 10, Low: 0, High: 1500, Units: []string{"kg N/ha fed"},
	})
	cover := otherCredit(s, "cover-crop", 500)
	compost := otherCredit(s, "compost", 500)
	manure := otherCredit(s, "manure", 500)
	matter := otherCredit(s, "organic-matter", 500)
	other := otherCredit(s, "other", 1500)

	brought = s.Stated(cover).Or(s.Stated(compost)).Or(s.Stated(manure)).Or(s.Stated(matter)).Or(s.Stated(other))
	more := s.Step("organic", "lb N/ac fed", cover.Plus(compost).Plus(manure).Plus(matter).Plus(other),
		sheet.Says{Also: "kg N/ha fed", When: brought})
	usual := s.Constant("usual-release", "40 lb N/ac fed", sheet.Fact{Sources: []string{"nrcs-nm"}})
	s.Warn("check-numbers", matter.More(usual), "much-matter")
	both := b.reached.Plus(b.water)
	return sheet.If(brought, both.Plus(more), both), brought
}

// soilCredit asks for what is in the soil, and gives the part of it that roots reach.
func soilCredit(s *sheet.Sheet) sheet.Term {
	soil := s.Given("soil", "lb N/ac present", sheet.Field{
		Typical: 10, Low: 0, High: 1500, Units: []string{"kg N/ha present"},
	})
	reach := s.Given("reach", "% fed/present", sheet.Field{
		Written: "%", Typical: 25, Low: 0, High: 100, Optional: true,
	})
	all := s.Constant("all-in-reach", "100 % fed/present", sheet.Fact{
		Reads: "100 %", Sources: []string{"common-practice"},
	})
	s.Warn("check-numbers", s.Stated(reach).Not().And(soil.More(s.Zero("lb N/ac present"))), "all-counted")
	return s.Step("in-reach", "lb N/ac fed", sheet.If(s.Stated(reach), soil.Times(reach), soil.Times(all)),
		sheet.Says{Also: "kg N/ha fed"})
}

// otherCredit asks for a credit that a block may not have. It counts as nitrogen fed.
func otherCredit(s *sheet.Sheet, name string, most float64) *sheet.Given {
	return s.Given(name, "lb N/ac fed", sheet.Field{
		Typical: 10, Low: 0, High: most, Units: []string{"kg N/ha fed"}, Optional: true,
	})
}
