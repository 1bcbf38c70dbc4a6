package nitrogen

import "acreleaf/calc/sheet"

// askRun asks for the run of the water and for the clean water before and after the feed.
func askRun(s *sheet.Sheet) *run {
	water := func(name string) *sheet.Given {
		return s.Given(name, "min", sheet.Field{Typical: 120, Low: 0, High: 10_080, Units: []string{"h"}})
	}
	return &run{
		whole: s.Given("run", "h", sheet.Field{Typical: 6, Low: 0.1, High: 168, Units: []string{"min"}}),
		clean: water("clean"),
		flush: water("flush"),
	}
}

// check says whether the parts of the run are long enough.
func (r *run) check(s *sheet.Sheet) {
	third := s.Step("third", "min", r.whole.Over(s.Number(3)), sheet.Says{Also: "h"})
	travel := s.Constant("travel", "20 min", sheet.Fact{Sources: []string{"ufifas-fertigation"}})
	least := s.Constant("least-flush", "30 min", sheet.Fact{Sources: []string{"ufifas-fertigation"}})
	shortest := s.Constant("least-window", "30 min", sheet.Fact{Sources: []string{"ufifas-fertigation"}})
	s.Refuse(r.window.Less(s.Constant("no-window", "5 min", sheet.Fact{Sources: []string{"common-practice"}})),
		"no-window")
	s.Warn("short-flush", r.flush.Less(least), "short-flush")
	s.Warn("uneven-feed", r.window.Less(shortest), "short-window")
	s.Warn("uneven-feed", r.clean.Less(travel), "short-clean")
	s.Warn("leaching", r.flush.More(third), "long-flush")
	s.Say(sheet.Note, sheet.Always, "thirds")
	sayWaterlogged(s)
}

// slips are the wrong ways to part the run.
func (r *run) slips(s *sheet.Sheet, volume sheet.Term) {
	s.Slip("whole-run", "rate", volume.Over(r.whole))
	s.Slip("no-flush-in-rate", "rate", volume.Over(r.whole.Minus(r.clean)))
	s.Slip("no-flush", "window", r.whole.Minus(r.clean))
}
