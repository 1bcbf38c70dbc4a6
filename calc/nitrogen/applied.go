package nitrogen

import "acreleaf/calc/sheet"

// WaterApplied turns the flow of the emitters and the hours they ran into a depth of water, which WaterNitrogen takes.
var WaterApplied = sheet.New("water-applied", waterApplied)

func waterApplied(s *sheet.Sheet) {
	s.Head("Water put on", "Turns emitters and hours into gallons a tree, gallons an acre and inches.")
	flow := s.Given("flow", "gal/h per emitter", sheet.Field{
		Label: "Flow of one emitter", Hint: "Dripper or sprinkler. Catch it for a minute, since old ones drift.",
		Typical: 1, Low: 0.05, High: 2000, Units: []string{"L/h per emitter", "gal/min per emitter"},
	})
	emitters := s.Given("emitters", "emitters/tree", sheet.Field{
		Label: "Emitters at one tree", Hint: "Drippers or sprinklers. Two trees that share one have half each: 0.5.",
		Typical: 2, Low: 0.1, High: 50,
	})
	trees := treesGiven(s)
	hours := s.Given("hours", "h", sheet.Field{
		Label: "Time that the water ran", Hint: "One irrigation, or all of them added up.",
		Typical: 12, Low: 0, High: 5000, Units: []string{"min", "days"},
	})
	inch := s.Constant("acre-inch", "27154.285714285714 gal/ac per in", sheet.Fact{
		Label: "Gallons on an acre in each inch", Reads: "27,154 gal/ac per in",
		Sources: []string{"nist-44"},
		Note:    "It is 43,560 ft2 times a twelfth of a foot, at 231 in3 to the gallon.",
	})
	tree := s.Answer("tree-volume", "gal/tree", flow.Times(emitters).Times(hours),
		sheet.Says{Label: "Water at one tree", Also: "L/tree"})
	volume := s.Answer("volume", "gal/ac", tree.Times(trees), sheet.Says{Label: "Water on an acre", Also: "m3/ha"})
	depth := s.Answer("depth", "in", volume.Over(inch), sheet.Says{Label: "Depth over the whole acre", Also: "mm"})

	s.InWords("depth",
		sheet.When(depth.IsNothing(), "No water was put on."),
		sheet.Otherwise("That is {tree-volume}, or {depth} over the whole acre."))

	s.Say(sheet.Note, sheet.Always,
		"The depth is as if the water were spread over the whole acre. Under the emitters it goes deeper.")
	s.Say(sheet.Note, sheet.Always,
		"This is what leaves the emitters. To count its nitrogen, take off what runs away or sinks past the roots.")
	s.Warn("check-numbers", depth.More(s.Constant("much", "60 in", sheet.Fact{
		Label: "More than an orchard is given in most seasons", Sources: []string{"common-practice"},
	})), "{depth} is more than a grown orchard is given in most seasons. Is it the flow of one emitter, and are the "+
		"hours right?")
	sayWaterlogged(s)

	s.Slip("one-emitter", "tree-volume", flow.Times(hours),
		"That is the water of one emitter. Multiply by the emitters at a tree.")
	s.Slip("one-hour", "tree-volume", flow.Times(emitters),
		"That is the water of one hour. Multiply by the hours.")
	s.Slip("one-tree", "volume", tree,
		"That is the water at one tree. Multiply by the trees on an acre.")
	s.Slip("emitters-left-out", "volume", volume.Over(emitters),
		"The emitters at a tree were left out: that is one emitter a tree.")
	s.Slip("feet-for-inches", "depth", depth.Over(s.Number(12)),
		"That is feet of water: 325,851 gal is an acre-foot. An acre-inch is 27,154 gal.")
	s.Slip("one-tree-for-acre", "depth", tree.Over(inch),
		"That spreads the water of one tree over the acre. Multiply by the trees first.")
}
