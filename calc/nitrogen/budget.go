package nitrogen

import "acreleaf/calc/sheet"

// SeasonBudget sets what the trees need against every credit, and says what is left to apply.
//
// A credit counts as nitrogen that the trees take up, so it comes off the demand first, and only the shortfall is
// divided by the efficiency.
var SeasonBudget = sheet.New("season-budget", seasonBudget)

func seasonBudget(s *sheet.Sheet) {
	s.Head("The season's budget", "Sets what the trees need against what soil, water and the rest bring.")
	demand := s.Given("demand", "lb N/ac", sheet.Field{
		Label: "What the trees will take up", Hint: "In the season, on an acre.",
		Typical: 30, Low: 0, High: 500, Units: []string{"kg N/ha"},
	})
	sum, brought := creditsOf(s)
	efficiency := s.Given("efficiency", "%", sheet.Field{
		Label:   "Share of the feed that trees take up",
		Hint:    "Well managed: near 70 %. In small feeds through drip lines: up to 80 %. Broadcast: near 50 %.",
		Typical: 70, Low: 10, High: 100,
	})
	credits := s.Answer("credits", "lb N/ac", sum, sheet.Says{Label: "Credits in all", Also: "kg N/ha"})
	short := s.Answer("short", "lb N/ac", s.Zero("lb N/ac").Most(demand.Minus(credits)),
		sheet.Says{Label: "Still short", Also: "kg N/ha"})
	s.Answer("apply", "lb N/ac", short.Over(efficiency),
		sheet.Says{Label: "Nitrogen to apply", Also: "kg N/ha"})
	surplus := s.Answer("surplus", "lb N/ac", s.Zero("lb N/ac").Most(credits.Minus(demand)),
		sheet.Says{Label: "Credit left over", Also: "kg N/ha"})

	nothing := s.Zero("lb N/ac")
	s.Say(sheet.Note, short.AtMost(nothing),
		"The credits cover the need: no nitrogen need be bought now. Watch shoot growth, and sample leaves in July.")
	s.Warn("leaching", surplus.More(nothing), "{surplus} more is there than the trees will take up.")
	s.Say(sheet.Note, short.More(nothing),
		"Split it into small feeds, and stop early enough for the wood to ripen before frost. The credits came off "+
			"first, since they count as nitrogen taken up; only what is short was divided by the share.")
	s.Say(sheet.Note, brought,
		"Count each credit once, and only what comes free this season. What manure or old roots let go before the soil "+
			"was sampled is in the soil report already.")

	s.Slip("efficiency-multiplied", "apply", short.Times(efficiency),
		"Divide by the share that is taken up: part of each feed is lost, so more must go on, not less.")
	s.Slip("no-credits", "apply", demand.Over(efficiency),
		"The credits from soil and water were left out.")
	s.Slip("no-efficiency", "apply", short,
		"That is what the trees lack. More must go on, since they do not take up all of a feed.")
	s.Slip("credits-after", "apply", nothing.Most(demand.Over(efficiency).Minus(credits)),
		"A credit here is nitrogen that the trees take up, so take it off first, then divide by the share.")
}

// creditsOf asks for every credit and gives their sum, and whether there is one besides those of soil and water. Those
// others are summed in a step of their own, which is left out when none of them was filled in.
func creditsOf(s *sheet.Sheet) (sum, brought sheet.Term) {
	soil := creditGiven(s, "soil", "Credit from the soil", "From a soil report. Count only what the roots reach.")
	water := creditGiven(s, "water", "Credit from the water",
		"From a water test. Count only water that stays by the roots.")
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
	more := s.Step("organic", "lb N/ac", cover.Plus(compost).Plus(manure).Plus(matter).Plus(other),
		sheet.Says{Label: "Credits besides soil and water", Also: "kg N/ha", When: brought})
	usual := s.Constant("usual-release", "40 lb N/ac", sheet.Fact{
		Label:   "Most that a soil's organic matter lets go in a year",
		Sources: []string{"nrcs-nm"},
		Note:    "It gives 20 to 40 lb an acre a year for all soils. A sandy young orchard may have less.",
	})
	s.Warn("check-numbers", matter.More(usual),
		"{organic-matter} is a good deal from organic matter: one guide gives 20 to 40 lb an acre a year.")
	both := soil.Plus(water)
	return sheet.If(brought, both.Plus(more), both), brought
}

func creditGiven(s *sheet.Sheet, name, label, hint string) *sheet.Given {
	return s.Given(name, "lb N/ac", sheet.Field{
		Label: label, Hint: hint, Typical: 10, Low: 0, High: 1500, Units: []string{"kg N/ha"},
	})
}

// otherCredit asks for a credit that a block may not have.
func otherCredit(s *sheet.Sheet, name, label string, most float64, hint string) *sheet.Given {
	return s.Given(name, "lb N/ac", sheet.Field{
		Label: label, Hint: hint, Typical: 10, Low: 0, High: most, Units: []string{"kg N/ha"}, Optional: true,
	})
}
