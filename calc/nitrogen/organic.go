package nitrogen

import "acreleaf/calc/sheet"

// OrganicCredit is the nitrogen that manure or compost lets go in one season. A season's budget takes it.
var OrganicCredit = sheet.New("organic-credit", organicCredit)

func organicCredit(s *sheet.Sheet) {
	material := s.Choice("material", []sheet.Option{
		{Name: "manure", Sources: []string{"cornell-manure", "oklahoma-manure"}},
		{Name: "manure-last-year", Sources: []string{"oklahoma-manure"}},
		{Name: "manure-before", Sources: []string{"oklahoma-manure"}},
		{Name: "compost"},
	}, sheet.Field{})
	amount := s.Given("amount", "tons product/ac", sheet.Field{
		Written: "tons/ac", Typical: 10, Low: 0, High: 100, Units: []string{"lb product/ac", "t product/ha"},
	})
	content := s.Given("content", "lb N/ton product", sheet.Field{
		Written: "lb N/ton", Typical: 5, Low: 0, High: 200, Units: []string{"% N of product", "kg N/t product"},
		For: []*sheet.Given{material},
	})
	release := s.Given("release", "%", sheet.Field{
		Typical: 35, Low: 0, High: 100, Optional: true, For: []*sheet.Given{material},
	})
	share := s.Step("share", "%", sheet.If(s.Stated(release), release, released(s, material)), sheet.Says{})
	whole := s.Step("whole", "lb N/ac", amount.Times(content), sheet.Says{Also: "kg N/ha"})
	nitrogen := s.Answer("nitrogen", "lb N/ac fed", whole.Times(share).Times(s.Constant("as-fed", "100 % fed", sheet.Fact{
		Reads: "100 %", Sources: []string{"common-practice"},
	})), sheet.Says{Also: "kg N/ha fed"})

	s.InWords("nitrogen",
		sheet.When(nitrogen.IsNothing(), "nothing"),
		sheet.Otherwise("available"))

	s.Say(sheet.Note, s.Stated(release).Not(), "local-table")
	s.Say(sheet.Note, material.Is("manure"), "ammonium-extra")
	s.Warn("raw-manure", material.Is("manure"), "")
	s.Slip("all-of-it", "nitrogen", whole)
	s.Slip("ton-only", "nitrogen", nitrogen.Over(amount).Times(s.Constant("one-ton", "1 ton product/ac", sheet.Fact{
		Sources: []string{"arithmetic"},
	})))
	s.Slip("kept-for-released", "nitrogen", whole.Minus(whole.Times(share)))
}

// released is the share of the organic nitrogen that comes free in a season.
func released(s *sheet.Sheet, material *sheet.Given) sheet.Term {
	return s.Listed("released", "%", material, map[string]sheet.Cell{
		"manure":           {Value: 35, Sources: []string{"cornell-manure"}},
		"manure-last-year": {Value: 12, Sources: []string{"cornell-manure"}},
		"manure-before":    {Value: 5, Sources: []string{"cornell-manure"}},
		"compost":          {Value: 7.5, Sources: []string{"common-practice", "amlinger-2003"}},
	}, sheet.Fact{})
}
