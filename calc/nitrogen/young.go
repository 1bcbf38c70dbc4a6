package nitrogen

import "acreleaf/calc/sheet"

// What is known of feeding young trees, for the calculations that plan it.

// leafField asks for the leaf of the trees.
func leafField(typical float64) sheet.Field {
	return sheet.Field{Typical: typical, Low: 0, High: 100}
}

// notALeaf asks whether a number is no leaf.
func notALeaf(s *sheet.Sheet, leaf *sheet.Given) sheet.Term {
	return leaf.Less(s.Number(1)).Or(leaf.Same(leaf.RoundDown()).Not())
}

// refuseLeaf says that a leaf is a whole number.
func refuseLeaf(s *sheet.Sheet, when sheet.Term) {
	s.Refuse(when, "leaf-whole")
}

// feedAYear is the most in one feed, for each year of a tree's age.
func feedAYear(s *sheet.Sheet) sheet.Term {
	return s.Constant("feed-a-year", "1 oz N/tree fed", sheet.Fact{Sources: []string{"growing-produce-babies"}})
}

// fedYears are the years of age that count for the most in one feed: those of the tree, as far as the source goes.
func fedYears(s *sheet.Sheet, leaf sheet.Value) sheet.Term {
	return s.Constant("years-known", "5", sheet.Fact{Sources: []string{"growing-produce-babies"}}).Least(leaf)
}

// young asks whether trees are so young that the season's limit is for them.
func young(s *sheet.Sheet, leaf *sheet.Given) sheet.Term { return leaf.AtMost(s.Number(3)) }

// seasonMost is the most that a young tree is given in one season.
func seasonMost(s *sheet.Sheet, leaf *sheet.Given) sheet.Term {
	return leaf.Times(s.ConstantOnce("season-a-year", "4 oz N/tree fed", sheet.Fact{
		Sources: []string{"farm-progress-young", "common-practice"},
	}))
}

// sayOfSeason cautions when a season's nitrogen is more than a young tree is given. asked is a question: whether the
// leaf is known.
func sayOfSeason(s *sheet.Sheet, leaf *sheet.Given, asked sheet.Term, season sheet.Term, name string) {
	over := asked.And(young(s, leaf)).And(season.More(seasonMost(s, leaf)))
	s.Warn("season-total", over, "more-in-"+name)
	s.Say(sheet.Note, asked.And(leaf.AtMost(s.Number(1))).And(over.Not()).
		And(season.More(s.Constant("first-season", "1 oz N/tree fed", sheet.Fact{
			Sources: []string{"growing-produce-babies"},
		}))), "first-season")
}

// sayWaterlogged says what a root zone without air does with a feed.
func sayWaterlogged(s *sheet.Sheet) {
	s.Mention("waterlogging", sheet.Always, "")
}
