package nitrogen

import "acreleaf/calc/sheet"

// WaterApplied turns the flow of the emitters and the hours they ran into a depth of water, which WaterNitrogen takes.
// A depth that is known counts in their place.
var WaterApplied = sheet.New("water-applied", waterApplied)

func waterApplied(s *sheet.Sheet) {
	flow := s.Given("flow", "gal/h per emitter", sheet.Field{
		Typical: 1, Low: 0.05, High: 2000, Units: []string{"L/h per emitter", "gal/min per emitter"},
	})
	emitters := s.Given("emitters", "emitters/tree", sheet.Field{Typical: 2, Low: 0.1, High: 50})
	trees := treesGiven(s)
	hours := s.Given("hours", "h", sheet.Field{Typical: 12, Low: 0, High: 5000, Units: []string{"min", "days"}})
	known := s.Given("known", "in", sheet.Field{
		Typical: 6, Low: 0, High: 120, Units: []string{"ft", "ac-ft/ac", "gal/ac", "mm", "cm"}, Optional: true,
	})
	told := s.Stated(known)
	inch := s.Constant("acre-inch", "27154.285714285714 gal/ac per in", sheet.Fact{Sources: []string{"nist-44"}})
	tree := s.Answer("tree-volume", "gal/tree", sheet.If(told, known.Times(inch).Over(trees),
		flow.Times(emitters).Times(hours)), sheet.Says{Also: "L/tree"})
	volume := s.Answer("volume", "gal/ac", tree.Times(trees), sheet.Says{Also: "m3/ha"})
	depth := s.Answer("depth", "in", sheet.If(told, known.Term, volume.Over(inch)), sheet.Says{Also: "mm"})

	s.InWords("depth",
		sheet.When(depth.IsNothing(), "none"),
		sheet.Otherwise("depth"))

	s.Say(sheet.Note, sheet.Always, "whole-acre")
	s.Say(sheet.Note, told, "emitters-unused")
	s.Say(sheet.Note, told.Not(), "leaves-emitters")
	s.Warn("check-numbers", depth.More(s.Constant("much", "60 in", sheet.Fact{
		Sources: []string{"common-practice"},
	})), "much")
	sayWaterlogged(s)

	s.SlipWhen(told.Not(), "one-emitter", "tree-volume", flow.Times(hours))
	s.SlipWhen(told.Not(), "one-hour", "tree-volume", flow.Times(emitters))
	s.Slip("one-tree", "volume", tree)
	s.SlipWhen(told.Not(), "emitters-left-out", "volume", volume.Over(emitters))
	s.Slip("feet-for-inches", "depth", depth.Over(s.Number(12)))
	s.Slip("one-tree-for-acre", "depth", tree.Over(inch))
}
