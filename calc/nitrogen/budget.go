package nitrogen

import "acreleaf/calc/sheet"

// SeasonBudget sets what the trees need against what soil and water already bring, and says what is left to apply.
var SeasonBudget = sheet.New("season-budget", seasonBudget)

func seasonBudget(s *sheet.Sheet) {
	s.Head("The season's budget", "Sets what the trees need against what soil and water bring.")
	demand := s.Given("demand", "lb N/ac", sheet.Field{
		Label: "What the trees will take up", Hint: "In the season, on an acre.",
		Typical: 30, Low: 0, High: 500, Units: []string{"kg N/ha"},
	})
	soil := creditGiven(s, "soil", "Credit from the soil", "From a soil report. Count only what the roots reach.", false)
	water := creditGiven(s, "water", "Credit from the water",
		"From a water test. Count only water that stays by the roots.", false)
	other := creditGiven(s, "other", "Any other credit", "Compost, manure, cover crop. Leave it empty if none.", true)
	efficiency := s.Given("efficiency", "%", sheet.Field{
		Label: "Share of the feed that trees take up", Hint: "Small feeds through drip lines: near 70 %. Broadcast: less.",
		Typical: 70, Low: 10, High: 100,
	})
	credits := s.Answer("credits", "lb N/ac", soil.Plus(water).Plus(other),
		sheet.Says{Label: "Credits in all", Also: "kg N/ha"})
	short := s.Answer("short", "lb N/ac", s.Zero("lb N/ac").Most(demand.Minus(credits)),
		sheet.Says{Label: "Still short", Also: "kg N/ha"})
	s.Answer("apply", "lb N/ac", short.Over(efficiency),
		sheet.Says{Label: "Nitrogen to apply", Also: "kg N/ha"})
	surplus := s.Answer("surplus", "lb N/ac", s.Zero("lb N/ac").Most(credits.Minus(demand)),
		sheet.Says{Label: "Credit left over", Also: "kg N/ha"})

	nothing := s.Zero("lb N/ac")
	s.Say(sheet.Note, short.AtMost(nothing),
		"The credits cover the need: no nitrogen need be bought now. Watch shoot growth, and sample leaves in July.")
	s.Say(sheet.Notice, surplus.More(nothing),
		"{surplus} more is there than the trees will take up. Water it gently: what is left can leach to the well.")
	s.Say(sheet.Note, short.More(nothing),
		"Split it into small feeds, and stop early enough for the wood to ripen before frost.")

	s.Slip("efficiency-multiplied", "apply", short.Times(efficiency),
		"Divide by the share that is taken up: part of each feed is lost, so more must go on, not less.")
	s.Slip("no-credits", "apply", demand.Over(efficiency),
		"The credits from soil and water were left out.")
	s.Slip("no-efficiency", "apply", short,
		"That is what the trees lack. More must go on, since they do not take up all of a feed.")
	s.Slip("credits-after", "apply", nothing.Most(demand.Over(efficiency).Minus(credits)),
		"A credit here is nitrogen that the trees take up, so take it off first, then divide by the share.")
}

func creditGiven(s *sheet.Sheet, name, label, hint string, optional bool) *sheet.Given {
	return s.Given(name, "lb N/ac", sheet.Field{
		Label: label, Hint: hint, Typical: 10, Low: 0, High: 1500, Units: []string{"kg N/ha"}, Optional: optional,
	})
}
