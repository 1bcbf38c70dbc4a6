package nitrogen

import "acreleaf/calc/sheet"

// Balance compares the nitrogen that was put on with what left with the crop.
var Balance = sheet.New("balance", balance)

func balance(s *sheet.Sheet) {
	s.Head("The year's balance", "Sets the nitrogen that you put on against what left with the crop.")
	applied := s.Given("applied", "lb N/ac fed", sheet.Field{
		Label: "Nitrogen put on", Hint: "Over the year: fertilizer, and whatever else your reporting rule counts.",
		Typical: 214, Low: 0, High: 2000, Units: []string{"kg N/ha fed"},
	})
	removed := s.Given("removed", "lb N/ac taken up", sheet.Field{
		Label: "Nitrogen that left with the crop", Hint: "Yield times the nitrogen in it. Prunings count if they left.",
		Typical: 170, Low: 0, High: 2000, Units: []string{"kg N/ha taken up"},
	})
	on, off := applied.Uncounted("lb N/ac"), removed.Uncounted("lb N/ac")
	s.Answer("ratio", "", on.Over(off), sheet.Says{Label: "Put on for each pound removed (A/R)"})
	difference := s.Answer("difference", "lb N/ac", on.Minus(off),
		sheet.Says{Label: "Put on less removed (A − R)", Also: "kg N/ha"})

	nothing := s.Zero("lb N/ac")
	s.Refuse(off.Less(s.Constant("least-removed", "1 lb N/ac", sheet.Fact{
		Label: "Least removal that a ratio is worked for", Sources: []string{"common-practice"},
		Note: "A ratio to less than this is a large number that means nothing.",
	})),
		"Next to nothing was removed, so there is no ratio: young trees keep what they take up. Put in what left with the "+
			"crop; until there is one, ask your coalition how to report the block.")
	s.Say(sheet.Note, difference.More(nothing),
		"{difference} did not leave with the crop. Growing wood holds some of it, soil holds some, and the rest can reach "+
			"groundwater.")
	s.Say(sheet.Note, difference.Less(nothing),
		"More left with the crop than was put on. Soil, water or the trees' own store gave the rest. A few such years "+
			"can run the trees low: sample leaves.")
	s.InWords("ratio",
		sheet.When(difference.More(nothing),
			"More was put on than left with the crop: {ratio} lb for each pound that left."),
		sheet.When(difference.Less(nothing),
			"Less was put on than left with the crop: {ratio} lb for each pound that left."),
		sheet.Otherwise("Just as much was put on as left with the crop."))
	s.Say(sheet.Note, sheet.Always,
		"Rules differ in what counts as put on (water, compost) and as removed. For a report, use the form and the "+
			"figures of your coalition or your water board. They come before this page.")

	s.Slip("upside-down", "ratio", off.Over(on),
		"That is removed over put on. The reporting ratio has what was put on above.")
	s.Slip("difference-for-ratio", "ratio", difference.Over(off),
		"That is what stayed behind for each pound removed. Divide all that was put on by what left.")
	s.Slip("wrong-way-round", "difference", off.Minus(on),
		"Take what left from what was put on.")
}
