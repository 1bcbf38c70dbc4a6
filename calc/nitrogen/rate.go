package nitrogen

import "acreleaf/calc/sheet"

// TreeRate turns ounces of nitrogen a tree into pounds an acre.
var TreeRate = sheet.New("tree-rate", treeRate)

// AcreRate turns pounds of nitrogen an acre into ounces a tree; it is TreeRate the other way round.
var AcreRate = sheet.New("acre-rate", acreRate)

func treeRate(s *sheet.Sheet) {
	s.Head("Ounces a tree to pounds an acre", "Turns a rate for one tree into a rate for an acre.")
	rate := s.Given("rate", "oz N/tree fed", sheet.Field{
		Label: "Nitrogen for one tree", Hint: "Ounces of nitrogen, not of fertilizer.",
		Typical: 3, Low: 0, High: 80, Units: []string{"lb N/tree fed", "g N/tree fed", "kg N/tree fed"},
	})
	trees := treesGiven(s)
	leaf := youngLeaf(s)
	ounces := ouncesInPound(s)
	nitrogen := s.Answer("nitrogen", "lb N/ac fed", rate.Times(trees).Over(ounces),
		sheet.Says{Label: "Nitrogen for an acre", Also: "kg N/ha fed"})

	s.InWords("nitrogen",
		sheet.When(rate.IsNothing(), "Nothing is put on."),
		sheet.Otherwise("{rate} is {nitrogen}."))
	warnOfFeed(s, rate.Term, leaf)
	s.Slip("ounces-for-pounds", "nitrogen", nitrogen.Times(s.Number(16)),
		"That is ounces an acre. Divide by 16 for pounds.")
	s.Slip("one-tree", "nitrogen", rate.Over(ounces),
		"That is pounds for one tree. Multiply by the trees on an acre.")
	s.Slip("divided", "nitrogen", trees.Over(rate).Over(ounces),
		"The trees were divided by the ounces. Multiply them.")
}

func acreRate(s *sheet.Sheet) {
	s.Head("Pounds an acre to ounces a tree", "Turns a rate for an acre into a rate for one tree.")
	nitrogen := s.Given("nitrogen", "lb N/ac fed", sheet.Field{
		Label: "Nitrogen for an acre", Hint: "Pounds of nitrogen, not of fertilizer.",
		Typical: 30, Low: 0, High: 500, Units: []string{"kg N/ha fed"},
	})
	trees := treesGiven(s)
	leaf := youngLeaf(s)
	ounces := ouncesInPound(s)
	rate := s.Answer("rate", "oz N/tree fed", nitrogen.Times(ounces).Over(trees),
		sheet.Says{Label: "Nitrogen for one tree", Also: "g N/tree fed"})

	s.InWords("rate",
		sheet.When(nitrogen.IsNothing(), "Nothing is put on."),
		sheet.Otherwise("{nitrogen} is {rate}."))
	warnOfFeed(s, rate, leaf)
	s.Slip("pounds-for-ounces", "rate", rate.Over(s.Number(16)),
		"That is pounds a tree. Multiply by 16 for ounces.")
	s.Slip("multiplied", "rate", nitrogen.Times(trees).Over(ounces),
		"The pounds were multiplied by the trees. Share them out: divide.")
}

func treesGiven(s *sheet.Sheet) *sheet.Given {
	return s.Given("trees", "trees/ac", sheet.Field{
		Label: "Trees on an acre", Hint: "From the spacing, or counted.",
		Typical: 110, Low: 1, High: 3000, Units: []string{"trees/ha"},
	})
}

func ouncesInPound(s *sheet.Sheet) sheet.Term {
	return s.Constant("ounces-in-pound", "16 oz/lb", sheet.Fact{
		Label: "Ounces in a pound", Sources: []string{"nist-44"},
	})
}

// youngLeaf asks for the leaf of trees that may be young.
func youngLeaf(s *sheet.Sheet) *sheet.Given {
	field := leafField(1)
	field.Optional = true
	field.Hint = "1 for the first season of growth. Empty: trees of any age."
	return s.Given("leaf", "", field)
}

// warnOfFeed cautions when a rate for a tree is more than one feed may hold, or a season of a young tree. leaf may be
// nil: then the trees are taken for the youngest.
func warnOfFeed(s *sheet.Sheet, rate sheet.Term, leaf *sheet.Given) {
	most := feedAYear(s)
	over := rate.More(most)
	if leaf != nil {
		known := s.Stated(leaf)
		refuseLeaf(s, known.And(notALeaf(s, leaf)))
		sayOfSeason(s, leaf, known, rate, "rate")
		over = over.And(known.Not().Or(rate.More(fedYears(s, leaf).Times(most))))
	}
	s.Warn("feed-burns", over,
		"If {rate bare} oz of nitrogen a tree is a whole season's rate, split it: give at most 1 oz of nitrogen a "+
			"tree in one feed for each year of "+
			"its age, 1 oz in the first and 2 oz in the second.")
}
