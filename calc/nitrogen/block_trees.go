package nitrogen

import "acreleaf/calc/sheet"

// BlockTrees is how many trees an acre of a block has: those that were counted on it, and else those of the spacing.
var BlockTrees = sheet.New("block-trees", blockTrees)

func blockTrees(s *sheet.Sheet) {
	spaced := s.Given("spaced", "trees/ac", sheet.Field{Typical: 110, Low: 1, High: 50_000, Units: []string{"trees/ha"}})
	count := s.Given("count", "trees", sheet.Field{Typical: 1500, Low: 1, High: 1_000_000, Optional: true})
	acres := s.Given("acres", "ac", sheet.Field{Typical: 20, Low: 0.1, High: 1000, Units: []string{"ha"}})
	counted := s.Stated(count)
	trees := s.Answer("trees", "trees/ac", sheet.If(counted, count.Over(acres), spaced.Term), sheet.Says{Also: "trees/ha"})

	s.InWords("trees", sheet.When(counted, "counted"), sheet.Otherwise("spaced"))

	missing := s.Constant("missing", "50 %", sheet.Fact{Sources: []string{"common-practice"}})
	s.Warn("check-numbers", counted.And(trees.More(spaced.Over(missing)).Or(trees.Less(spaced.Times(missing)))), "apart")
	s.Say(sheet.Note, counted.Not(), "count-them")

	s.SlipWhen(counted, "not-divided", "trees", count.Over(s.Amount(1, "ac")))
	s.SlipWhen(counted, "multiplied", "trees", count.Times(acres).Over(s.Amount(1, "ac2")))
}
