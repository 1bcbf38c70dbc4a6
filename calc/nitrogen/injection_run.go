package nitrogen

import "acreleaf/calc/sheet"

const citrusFertigation = "Zekri and others, Fertigation for citrus trees, UF/IFAS, and its 2018 summary"

// askRun asks for the run of the water and for the clean water before and after the feed.
func askRun(s *sheet.Sheet) *run {
	water := func(name, label, hint string) *sheet.Given {
		return s.Given(name, "min", sheet.Field{
			Label: label, Hint: hint, Typical: 120, Low: 0, High: 10_080, Units: []string{"h"},
		})
	}
	return &run{
		whole: s.Given("run", "h", sheet.Field{
			Label: "How long the water runs", Hint: "From start to stop.",
			Typical: 6, Low: 0.1, High: 168, Units: []string{"min"},
		}),
		clean: water("clean", "Clean water before the feed", "Until the lines are full and at pressure."),
		flush: water("flush", "Clean water after the feed", "To wash the feed out of the lines."),
	}
}

// check says whether the parts of the run are long enough.
func (r *run) check(s *sheet.Sheet) {
	third := s.Step("third", "min", r.whole.Over(s.Number(3)),
		sheet.Says{Label: "A third of the run", Work: "a third of the run", Also: "h"})
	travel := s.Constant("travel", "20 min", sheet.Fact{
		Label: "Least time for water to reach the farthest emitter", Source: citrusFertigation,
		Sureness: sheet.Handbook, Note: "20 to 30 min in most micro-irrigation. Put dye or soap in once, and time yours.",
	})
	least := s.Constant("least-flush", "30 min", sheet.Fact{
		Label: "Least flush after a feed", Source: citrusFertigation, Sureness: sheet.Handbook,
		Note: "It is the longest that water commonly takes to the farthest emitter.",
	})
	shortest := s.Constant("least-window", "30 min", sheet.Fact{
		Label: "Least time to inject a feed", Source: citrusFertigation, Sureness: sheet.Handbook,
		Note: "30 to 45 min, so that near and far trees get the same.",
	})
	s.Refuse(r.window.Less(s.Constant("no-window", "5 min", sheet.Fact{
		Label: "Time in which no injector puts a feed in evenly", Source: "common practice", Sureness: sheet.CommonPractice,
	})),
		"The flush does not fit in the run: {clean} of clean water and {flush} of flush leave less than 5 minutes of "+
			"{run} to inject in. Run the water longer, or take less clean water before the feed.")
	s.Say(sheet.Caution, r.flush.Less(least),
		"The flush is too short: {flush}. Water takes 20 to 30 minutes to the farthest emitter, and feed that stays in the "+
			"lines feeds slime and misses the far trees. Flush for 30 minutes or more.")
	s.Say(sheet.Caution, r.window.Less(shortest),
		"The time to inject is too short. In less than 30 minutes near trees get more than far ones. Run the water longer.")
	s.Say(sheet.Notice, r.clean.Less(travel),
		"The clean water before the feed is short: {clean}. Wait until the lines are full and at pressure, which takes 20 "+
			"to 30 minutes.")
	s.Say(sheet.Notice, r.flush.More(third),
		"The flush is more than a third of the run. A flush that is longer than it need be takes nitrate below the roots.")
	s.Say(sheet.Note, sheet.Always,
		"A common plan is thirds: {third} of clean water, {third} to inject, {third} to flush.")
	sayWaterlogged(s)
}
