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
	s.Head("The season's budget", "Sets what the trees need against what soil, water and the rest bring.")
	b := &season{s: s}
	b.need = s.Given("need", "lb N/ac taken up", sheet.Field{
		Label:   "What the trees need",
		Hint:    "Fed: a rate from a guide or a trial. Taken up: what trees hold at the end, as crop-demand answers.",
		Typical: 30, Low: 0, High: 500, Units: []string{"kg N/ha taken up"},
		Else: sheet.Other{Unit: "lb N/ac fed", Low: 0, High: 1000},
	})
	b.efficiency = s.Given("efficiency", "% taken up/fed", sheet.Field{
		Written: "%", Label: "Share of a feed that trees take up",
		Hint: "For a need that is taken up. Well managed: near 70 %. In small feeds through drip: up to 80 %. Broadcast: " +
			"as low as 50 %.",
		Typical: 70, Low: 10, High: 100, Optional: true,
	})
	b.told = b.need.IsOther().Not()
	b.fedNeed = s.Step("fed-need", "lb N/ac fed",
		sheet.If(b.told, b.need.Over(b.efficiency), b.need.AsOther()),
		sheet.Says{Label: "The need, as nitrogen to be fed", Also: "kg N/ha fed"})
	sum, brought := b.creditsOf()
	nothing := s.Zero("lb N/ac fed")
	b.credits = s.Answer("credits", "lb N/ac fed", sum, sheet.Says{Label: "Credits in all", Also: "kg N/ha fed"})
	left := nothing.Most(b.fedNeed.Minus(b.credits))
	s.Answer("short", "lb N/ac fed", left, sheet.Says{Label: "Still short", Also: "kg N/ha fed", Twin: "apply"})
	b.apply = s.Answer("apply", "lb N/ac fed", left, sheet.Says{Label: "Nitrogen to apply", Also: "kg N/ha fed"})
	b.surplus = s.Answer("surplus", "lb N/ac fed", nothing.Most(b.credits.Minus(b.fedNeed)),
		sheet.Says{Label: "Credit left over", Also: "kg N/ha fed"})
	b.whole = wholeCredit(s)
	s.Answer("other-order", "lb N/ac fed",
		s.Zero("lb N/ac taken up").Most(b.need.Minus(b.credits.Times(b.whole))).Over(b.efficiency),
		sheet.Says{Label: "To apply by the walnut guide's order", Also: "kg N/ha fed", When: b.told})
	b.inWords(brought)
	b.say(brought)
	b.slips()
}

// wholeCredit is what the walnut guide takes of a credit: the credits come off what the trees take up, and only what is
// left is divided.
func wholeCredit(s *sheet.Sheet) sheet.Term {
	return s.Constant("all-taken-up", "100 % taken up/fed", sheet.Fact{
		Label: "Share of a credit that trees take up, in the other order", Reads: "100 %",
		Sources: []string{"walnut-guide-summary"}, Note: "The guide takes other sources off the need, and divides " +
			"what is left.",
	})
}

// inWords says what to put on, and what brings the rest of the need.
func (b *season) inWords(brought sheet.Term) {
	b.s.InWords("apply",
		sheet.When(b.fedNeed.IsNothing(), "The trees need none, so put on none."),
		sheet.When(b.apply.IsNothing(), "What is there covers the need of {fed-need}: put on none."),
		sheet.When(b.credits.IsNothing(), "Put on {apply}: nothing else brings any."),
		sheet.When(brought, "Put on {apply}; what is there already brings the other {credits bare}."),
		sheet.When(b.reached.IsNothing(), "Put on {apply}; the water brings the other {credits bare}."),
		sheet.When(b.water.IsNothing(), "Put on {apply}; the soil brings the other {credits bare}."),
		sheet.Otherwise("Put on {apply}; the soil and the water bring the other {credits bare}."))
}

func (b *season) say(brought sheet.Term) {
	s := b.s
	nothing := s.Zero("lb N/ac fed")
	s.Refuse(b.told.And(s.Stated(b.efficiency).Not()),
		"A need that is taken up is not yet what must go on. Put in efficiency, the share of a feed that trees take up; "+
			"or, if the rate was fed, write it as fed, such as 30 lb N/ac fed.")
	s.Say(sheet.Note, b.fedNeed.More(nothing).And(b.apply.AtMost(nothing)),
		"The credits cover the need: no nitrogen need be bought now. Watch shoot growth, and in bearing trees sample leaves "+
			"in July.")
	s.Warn("leaching", b.surplus.More(nothing), "{surplus bare} lb N/ac more is there than the trees need.")
	s.Say(sheet.Note, b.apply.More(nothing),
		"Split it into small feeds, and stop early enough for the wood to ripen before frost.")
	s.Say(sheet.Note, b.told,
		"The need was divided by the share first, and each credit then came off pound for pound: in trials nitrate in "+
			"water was taken up at least as well as that of fertilizer (Cahn and others 2017, on vegetables). The UC guide "+
			"for walnuts takes the credits off first and divides what is left: {other-order}.")
	s.Say(sheet.Note, b.told.Not(),
		"The need is a rate that was fed. What is lost of a feed is in such a rate already, so it was not divided by the "+
			"share that trees take up.")
	s.Say(sheet.Note, brought,
		"Count each credit once, and only what comes free this season. What manure or old roots let go before the soil "+
			"was sampled is in the soil report already.")
}

func (b *season) slips() {
	s := b.s
	nothing := s.Zero("lb N/ac")
	need, credits := b.need.Uncounted("lb N/ac"), b.credits.Uncounted("lb N/ac")
	share := b.efficiency.Over(b.whole)
	s.Slip("efficiency-multiplied", "apply", nothing.Most(need.Times(share).Minus(credits)),
		"Divide by the share that is taken up: part of each feed is lost, so more must go on, not less.")
	s.Slip("no-credits", "apply", b.fedNeed, "The credits from soil and water were left out.")
	s.Slip("no-efficiency", "apply", nothing.Most(need.Minus(credits)),
		"That takes what the trees take up for what must be fed. They do not take up all of a feed: divide by the share.")
	once := need.Over(share)
	s.Slip("divided-twice", "apply", sheet.If(s.Stated(b.efficiency),
		sheet.If(b.told, nothing.Most(once.Over(share).Minus(credits)), nothing.Most(once.Minus(credits))), nothing),
		"That divides by the share once too often. A need that is taken up is divided once, a rate that was fed never.")
	s.Slip("credits-added", "apply", b.fedNeed.Plus(b.credits),
		"The credits were added to the need. They are there already, so take them off.")
}

// creditsOf asks for every credit and gives their sum, and whether there is one besides those of soil and water. Those
// others are summed in a step of their own, which is left out when none of them was filled in.
func (b *season) creditsOf() (sum, brought sheet.Term) {
	s := b.s
	b.reached = soilCredit(s)
	b.water = s.Given("water", "lb N/ac fed", sheet.Field{
		Label: "Credit from the water", Hint: "From a water test. Count only water that stays by the roots.",
		Typical: 10, Low: 0, High: 1500, Units: []string{"kg N/ha fed"},
	})
	cover := otherCredit(s, "cover-crop", "Credit from a cover crop", 500,
		"What rots in time, not all that the cover crop holds. Leave it empty if none.")
	compost := otherCredit(s, "compost", "Credit from compost", 500,
		"What comes free this season: a small part of what is in it. Leave it empty if none.")
	manure := otherCredit(s, "manure", "Credit from manure", 500,
		"What comes free this season, from this year's manure and last year's. Leave it empty if none.")
	matter := otherCredit(s, "organic-matter", "Credit from the soil's organic matter", 500,
		"What it lets go after the soil was sampled. Leave it empty if unknown.")
	other := otherCredit(s, "other", "Any other credit", 1500,
		"What is in none of the lines above. Leave it empty if none.")

	brought = s.Stated(cover).Or(s.Stated(compost)).Or(s.Stated(manure)).Or(s.Stated(matter)).Or(s.Stated(other))
	more := s.Step("organic", "lb N/ac fed", cover.Plus(compost).Plus(manure).Plus(matter).Plus(other),
		sheet.Says{Label: "Credits besides soil and water", Also: "kg N/ha fed", When: brought})
	usual := s.Constant("usual-release", "40 lb N/ac fed", sheet.Fact{
		Label:   "Most that a soil's organic matter lets go in a year",
		Sources: []string{"nrcs-nm"},
		Note:    "It gives 20 to 40 lb an acre a year for all soils. A sandy young orchard may have less.",
	})
	s.Warn("check-numbers", matter.More(usual),
		"{organic-matter bare} lb N/ac is a good deal from organic matter: one guide gives 20 to 40 lb an acre a year.")
	both := b.reached.Plus(b.water)
	return sheet.If(brought, both.Plus(more), both), brought
}

// soilCredit asks for what is in the soil, and gives the part of it that roots reach.
func soilCredit(s *sheet.Sheet) sheet.Term {
	soil := s.Given("soil", "lb N/ac present", sheet.Field{
		Label: "Nitrogen in the soil", Hint: "From a soil report, over the whole acre.",
		Typical: 10, Low: 0, High: 1500, Units: []string{"kg N/ha present"},
	})
	reach := s.Given("reach", "% fed/present", sheet.Field{
		Written: "%", Label: "Share of it that the roots reach",
		Hint:    "Roots of young trees reach a small part of the acre. Empty: all of it is counted.",
		Typical: 25, Low: 0, High: 100, Optional: true,
	})
	all := s.Constant("all-in-reach", "100 % fed/present", sheet.Fact{
		Label: "Share of the soil's nitrogen that is counted, when none is told", Reads: "100 %",
		Sources: []string{"common-practice"},
		Note:    "Nitrate within reach of the roots counts as nitrogen fed, pound for pound.",
	})
	s.Warn("check-numbers", s.Stated(reach).Not().And(soil.More(s.Zero("lb N/ac present"))),
		"All {soil bare} lb N/ac in the soil were counted, as if roots were everywhere. Roots of a young tree "+
			"reach a small part of the "+
			"acre. Put in the share that they reach, or count on less.")
	return s.Step("in-reach", "lb N/ac fed", sheet.If(s.Stated(reach), soil.Times(reach), soil.Times(all)),
		sheet.Says{Label: "Soil nitrogen that the roots reach", Also: "kg N/ha fed"})
}

// otherCredit asks for a credit that a block may not have. It counts as nitrogen fed.
func otherCredit(s *sheet.Sheet, name, label string, most float64, hint string) *sheet.Given {
	return s.Given(name, "lb N/ac fed", sheet.Field{
		Label: label, Hint: hint, Typical: 10, Low: 0, High: most, Units: []string{"kg N/ha fed"}, Optional: true,
	})
}
