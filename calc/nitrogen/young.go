package nitrogen

import "acreleaf/calc/sheet"

// What is known of feeding young trees, for the calculations that plan it.

// leafField asks for the leaf of the trees.
func leafField(typical float64) sheet.Field {
	return sheet.Field{
		Label: "Leaf", Hint: "Seasons of growth since planting. The first season is first leaf: write 1.",
		Typical: typical, Low: 0, High: 100,
	}
}

// notALeaf asks whether a number is no leaf.
func notALeaf(s *sheet.Sheet, leaf *sheet.Given) sheet.Term {
	return leaf.Less(s.Number(1)).Or(leaf.Same(leaf.RoundDown()).Not())
}

// refuseLeaf says that a leaf is a whole number.
func refuseLeaf(s *sheet.Sheet, when sheet.Term) {
	s.Refuse(when,
		"Leaf is one whole number, from 1: the first season of growth is 1, the next is 2. Write that number.")
}

// feedAYear is the most in one feed, for each year of a tree's age.
func feedAYear(s *sheet.Sheet) sheet.Term {
	return s.Constant("feed-a-year", "1 oz N/tree fed", sheet.Fact{
		Label:   "Most in one feed, for each year of age",
		Sources: []string{"growing-produce-babies"},
		Note:    "Given for almonds of 1 to 5 years. Common practice has the same for walnuts.",
	})
}

// fedYears are the years of age that count for the most in one feed: those of the tree, as far as the source goes.
func fedYears(s *sheet.Sheet, leaf sheet.Value) sheet.Term {
	return s.Constant("years-known", "5", sheet.Fact{
		Label:   "Years of age that the most in one feed is printed for",
		Sources: []string{"growing-produce-babies"},
		Note:    "For older trees it is not made larger.",
	}).Least(leaf)
}

// young asks whether trees are so young that the season's limit is for them.
func young(s *sheet.Sheet, leaf *sheet.Given) sheet.Term { return leaf.AtMost(s.Number(3)) }

// seasonMost is the most that a young tree is given in one season.
func seasonMost(s *sheet.Sheet, leaf *sheet.Given) sheet.Term {
	return leaf.Times(s.Constant("season-a-year", "4 oz N/tree fed", sheet.Fact{
		Label:   "Most in a season, for each leaf up to third",
		Sources: []string{"farm-progress-young", "common-practice"},
		Note: "Walnuts need about a quarter of a pound (4 oz) a tree in first leaf and a pound (16 oz) in fourth: 4 oz for " +
			"each leaf. Second and third leaf lie between. It counts what soil and water bring too. For almonds in first leaf " +
			"3 to 4 oz is common practice.",
	}))
}

// sayOfSeason cautions when a season's nitrogen is more than a young tree is given. asked is a question: whether the
// leaf is known.
func sayOfSeason(s *sheet.Sheet, leaf *sheet.Given, asked sheet.Term, season sheet.Term, name string) {
	over := asked.And(young(s, leaf)).And(season.More(seasonMost(s, leaf)))
	s.Warn("season-total", over,
		"For a whole season {"+name+" bare} oz of nitrogen a tree is more than young trees are given: 4 oz for "+
			"each leaf, that is 4 in first, 8 in second and 12 in third (common practice; no source prints second and "+
			"third leaf). Check the trees on an acre.")
	s.Say(sheet.Note, asked.And(leaf.AtMost(s.Number(1))).And(over.Not()).
		And(season.More(s.Constant("first-season", "1 oz N/tree fed", sheet.Fact{
			Label:   "What the University of California advises for the whole first season of an almond",
			Sources: []string{"growing-produce-babies"},
			Note:    "Many growers want faster growth, and common practice is 3 to 4 oz, in feeds of 1 oz at most.",
		}))),
		"For almonds the University of California advises 1 oz a tree for the whole first season. Growers feed 3 to 4 oz "+
			"(common practice). Walnuts need about 4 oz, with what soil and water bring.")
}

// sayWaterlogged says what a root zone without air does with a feed.
func sayWaterlogged(s *sheet.Sheet) {
	s.Mention("waterlogging", sheet.Always, "")
}
