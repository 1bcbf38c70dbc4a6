package nitrogen

import "acreleaf/calc/sheet"

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
		Label: "Least time for water to reach the farthest emitter", Sources: []string{"ufifas-fertigation"},
		Note: "20 to 30 min in most micro-irrigation. Put dye or soap in once, and time yours.",
	})
	least := s.Constant("least-flush", "30 min", sheet.Fact{
		Label: "Least flush after a feed", Sources: []string{"ufifas-fertigation"},
		Note: "It is the longest that water commonly takes to the farthest emitter.",
	})
	shortest := s.Constant("least-window", "30 min", sheet.Fact{
		Label: "Least time to inject a feed", Sources: []string{"ufifas-fertigation"},
		Note: "30 to 45 min, so that near and far trees get the same.",
	})
	s.Refuse(r.window.Less(s.Constant("no-window", "5 min", sheet.Fact{
		Label: "Time in which no injector puts a feed in evenly", Sources: []string{"common-practice"},
	})),
		"The flush does not fit in the run: {clean} of clean water and {flush} of flush leave less than 5 minutes of {run} "+
			"to inject in. Run the water longer, or take less clean water before the feed.")
	s.Warn("short-flush", r.flush.Less(least), "The flush is too short: {flush}.")
	s.Warn("uneven-feed", r.window.Less(shortest), "The time to inject is too short: {window}.")
	s.Warn("uneven-feed", r.clean.Less(travel),
		"The clean water before the feed is short: {clean}. Wait until the lines are full and at pressure, which takes 20 "+
			"to 30 minutes.")
	s.Warn("leaching", r.flush.More(third),
		"The flush is more than a third of the run. A flush that is longer than it need be takes nitrate below the roots.")
	s.Say(sheet.Note, sheet.Always,
		"A common plan is thirds: {third} of clean water, {third} to inject, {third} to flush.")
	sayWaterlogged(s)
}

// slips are the wrong ways to part the run.
func (r *run) slips(s *sheet.Sheet, volume sheet.Term) {
	s.Slip("whole-run", "rate", volume.Over(r.whole),
		"That spreads the feed over the whole run. Inject only between the clean water and the flush.")
	s.Slip("no-flush-in-rate", "rate", volume.Over(r.whole.Minus(r.clean)),
		"That leaves no time to flush. Take the flush off the run too.")
	s.Slip("no-flush", "window", r.whole.Minus(r.clean), "Take the flush off the run too.")
}
