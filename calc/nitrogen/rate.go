package nitrogen

import "acreleaf/calc/sheet"

// TreeRate turns ounces of nitrogen a tree into pounds an acre.
var TreeRate = sheet.New("tree-rate", treeRate)

// AcreRate turns pounds of nitrogen an acre into ounces a tree; it is TreeRate the other way round.
var AcreRate = sheet.New("acre-rate", acreRate)

func treeRate(s *sheet.Sheet) {
	rate := s.Given("rate", "oz N/tree fed", sheet.Field{
		Typical: 3, Low: 0, High: 80, Units: []string{"lb N/tree fed", "g N/tree fed", "kg N/tree fed"},
	})
	trees := treesGiven(s)
	leaf := youngLeaf(s)
	ounces := ouncesInPound(s)
	nitrogen := s.Answer("nitrogen", "lb N/ac fed", rate.Times(trees).Over(ounces), sheet.Says{Also: "kg N/ha fed"})

	s.InWords("nitrogen",
		sheet.When(rate.IsNothing(), "none-put-on"),
		sheet.Otherwise("rate"))
	warnOfFeed(s, rate.Term, leaf)
	s.Slip("ounces-for-pounds", "nitrogen", nitrogen.Times(s.Number(16)))
	s.Slip("one-tree", "nitrogen", rate.Over(ounces))
	s.Slip("divided", "nitrogen", trees.Over(rate).Over(ounces))
}

func acreRate(s *sheet.Sheet) {
	nitrogen := s.Given("nitrogen", "lb N/ac fed", sheet.Field{
		Typical: 30, Low: 0, High: 500, Units: []string{"kg N/ha fed"},
	})
	trees := treesGiven(s)
	leaf := youngLeaf(s)
	ounces := ouncesInPound(s)
	rate := s.Answer("rate", "oz N/tree fed", nitrogen.Times(ounces).Over(trees), sheet.Says{Also: "g N/tree fed"})

	s.InWords("rate",
		sheet.When(nitrogen.IsNothing(), "none-put-on"),
		sheet.Otherwise("rate"))
	warnOfFeed(s, rate, leaf)
	s.Slip("pounds-for-ounces", "rate", rate.Over(s.Number(16)))
	s.Slip("multiplied", "rate", nitrogen.Times(trees).Over(ounces))
}

func treesGiven(s *sheet.Sheet) *sheet.Given {
	return s.Given("trees", "trees/ac", sheet.Field{Typical: 110, Low: 1, High: 3000, Units: []string{"trees/ha"}})
}

func ouncesInPound(s *sheet.Sheet) sheet.Term {
	return s.Constant("ounces-in-pound", "16 oz/lb", sheet.Fact{Sources: []string{"nist-44"}})
}

// youngLeaf asks for the leaf of trees that may be young.
func youngLeaf(s *sheet.Sheet) *sheet.Given {
	field := leafField(1)
	field.Optional = true
	return s.Given("leaf", "", field)
}

// warnOfFeed cautions when a rate for a tree is more than one feed may hold, or a season of a young tree. leaf may be
// nil: then the trees are read as the youngest.
func warnOfFeed(s *sheet.Sheet, rate sheet.Term, leaf *sheet.Given) {
	most := feedAYear(s)
	over := rate.More(most)
	if leaf != nil {
		known := s.Stated(leaf)
		refuseLeaf(s, known.And(notALeaf(s, leaf)))
		sayOfSeason(s, leaf, known, rate, "rate")
		over = over.And(known.Not().Or(rate.More(fedYears(s, leaf).Times(most))))
	}
	s.Warn("feed-burns", over, "one-feed-most")
}
