package nitrogen

import "acreleaf/calc/sheet"

// Balance compares the nitrogen that was put on with what left with the crop.
var Balance = sheet.New("balance", balance)

func balance(s *sheet.Sheet) {
	applied := s.Given("applied", "lb N/ac fed", sheet.Field{
		Typical: 214, Low: 0, High: 2000, Units: []string{"kg N/ha fed"},
	})
	removed := s.Given("removed", "lb N/ac taken up", sheet.Field{
		Typical: 170, Low: 0, High: 2000, Units: []string{"kg N/ha taken up"},
	})
	on, off := applied.Uncounted("lb N/ac"), removed.Uncounted("lb N/ac")
	s.Answer("ratio", "", on.Over(off), sheet.Says{})
	difference := s.Answer("difference", "lb N/ac", on.Minus(off), sheet.Says{Also: "kg N/ha"})

	nothing := s.Zero("lb N/ac")
	s.Refuse(off.Less(s.Constant("least-removed", "1 lb N/ac", sheet.Fact{Sources: []string{"common-practice"}})),
		"no-removal")
	s.Say(sheet.Note, difference.More(nothing), "stayed")
	s.Say(sheet.Note, difference.Less(nothing), "more-left")
	s.InWords("ratio",
		sheet.When(difference.More(nothing), "more"),
		sheet.When(difference.Less(nothing), "less"),
		sheet.Otherwise("same"))
	s.Say(sheet.Note, sheet.Always, "rules-differ")

	s.Slip("upside-down", "ratio", off.Over(on))
	s.Slip("difference-for-ratio", "ratio", difference.Over(off))
	s.Slip("wrong-way-round", "difference", off.Minus(on))
}
