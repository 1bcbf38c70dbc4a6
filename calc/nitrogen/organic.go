package nitrogen

import "acreleaf/calc/sheet"

// OrganicCredit is the nitrogen that manure or compost lets go in one season. A season's budget takes it.
var OrganicCredit = sheet.New("organic-credit", organicCredit)

func organicCredit(s *sheet.Sheet) {
	s.Head("Nitrogen from manure or compost", "Turns tons spread on an acre into the nitrogen that comes free.")
	material := s.Choice("material", []sheet.Option{
		{Name: "manure", Label: "Cow manure, first season", Sources: []string{"cornell-manure", "oklahoma-manure"},
			Note: "35 % is for wet manure, under 18 % dry matter. Oklahoma State University gives 50 %."},
		{Name: "manure-last-year", Label: "Cow manure, second season", Sources: []string{"oklahoma-manure"},
			Note: "12 % of what was in it when it was spread. Oklahoma State University gives 15 %."},
		{Name: "manure-before", Label: "Cow manure, third season", Sources: []string{"oklahoma-manure"},
			Note: "5 % of what was in it when it was spread. Oklahoma State University gives 6 %."},
		{Name: "compost", Label: "Compost, first season",
			Note: "Common practice is 5 to 10 %; 7.5 % is the middle. A review of trials (Amlinger and others 2003) has 5 to " +
				"15 % in the first year, and 2 to 8 % a year after it."},
	}, sheet.Field{Label: "Material", Hint: "Work each season's load by itself, and add the answers."})
	amount := s.Given("amount", "tons product/ac", sheet.Field{
		Written: "tons/ac",
		Label:   "Spread on an acre", Hint: "As it was weighed, water and all.",
		Typical: 10, Low: 0, High: 100, Units: []string{"lb product/ac", "t product/ha"},
	})
	content := s.Given("content", "lb N/ton product", sheet.Field{
		Written: "lb N/ton",
		Label:   "Organic nitrogen in it", Hint: "From a test of the load, on its wet weight. For compost: all nitrogen.",
		Typical: 5, Low: 0, High: 200, Units: []string{"% N of product", "kg N/t product"},
		For: []*sheet.Given{material},
	})
	release := s.Given("release", "%", sheet.Field{
		Label:   "Share that comes free, if you know it",
		Hint:    "From a local table. Empty: the share listed for this material.",
		Typical: 35, Low: 0, High: 100, Optional: true, For: []*sheet.Given{material},
	})
	share := s.Step("share", "%", sheet.If(s.Stated(release), release, released(s, material)),
		sheet.Says{Label: "Share that comes free this season", Work: "share that comes free"})
	whole := s.Step("whole", "lb N/ac", amount.Times(content),
		sheet.Says{Label: "All the nitrogen in it", Work: "all its nitrogen", Also: "kg N/ha"})
	nitrogen := s.Answer("nitrogen", "lb N/ac fed", whole.Times(share).Times(s.Constant("as-fed", "100 % fed", sheet.Fact{
		Label: "Share of what comes free that counts as fed", Reads: "100 %", Sources: []string{"common-practice"},
		Note: "Budgets take a pound that comes free for a pound put on. What comes free when trees are bare is lost.",
	})), sheet.Says{Label: "Comes free this season", Also: "kg N/ha fed"})

	s.InWords("nitrogen",
		sheet.When(nitrogen.IsNothing(), "Nothing comes free this season."),
		sheet.Otherwise("{nitrogen} comes free this season, {share} of what you counted in it."))

	s.Say(sheet.Note, s.Stated(release).Not(),
		"Tables differ a good deal by region. If your advisor has a local one, put its share in.")
	s.Say(sheet.Note, material.Is("manure"),
		"Ammonium in fresh manure is not in this. It comes on top if the manure was worked in at once, and is mostly lost "+
			"to the air if not. Ask the laboratory for both.")
	s.Warn("raw-manure", material.Is("manure"), "")
	s.Slip("all-of-it", "nitrogen", whole, "That is all the nitrogen in it. Only a share comes free in one season.")
	s.Slip("ton-only", "nitrogen", nitrogen.Over(amount).Times(s.Constant("one-ton", "1 ton product/ac", sheet.Fact{
		Label: "A ton on an acre", Sources: []string{"arithmetic"},
	})), "That is from one ton. Multiply by the tons on an acre.")
	s.Slip("kept-for-released", "nitrogen", whole.Minus(whole.Times(share)),
		"That is what stays bound for later. Take the share that comes free.")
}

// released is the share of the organic nitrogen that comes free in a season.
func released(s *sheet.Sheet, material *sheet.Given) sheet.Term {
	return s.Listed("released", "%", material, map[string]sheet.Cell{
		"manure":           {Value: 35, Sources: []string{"cornell-manure"}},
		"manure-last-year": {Value: 12, Sources: []string{"cornell-manure"}},
		"manure-before":    {Value: 5, Sources: []string{"cornell-manure"}},
		"compost":          {Value: 7.5, Sources: []string{"common-practice", "amlinger-2003"}},
	}, sheet.Fact{Label: "Share that comes free", Reads: "listed for this material"})
}
