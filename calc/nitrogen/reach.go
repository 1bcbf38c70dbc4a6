package nitrogen

import "acreleaf/calc/sheet"

// NitrateReach says how deep water beyond need may carry nitrate: the depth of soil that this water fills.
var NitrateReach = sheet.New("nitrate-reach", nitrateReach)

func nitrateReach(s *sheet.Sheet) {
	excess := s.Given("excess", "in", sheet.Field{Typical: 3, Low: 0, High: 60, Units: []string{"ft", "mm", "cm"}})
	texture := s.Choice("texture", textures(), sheet.Field{Typical: 2})
	capacity := s.Given("capacity", "%", sheet.Field{
		Typical: 18, Low: 2, High: 60, Units: []string{"in/ft"}, Optional: true, For: []*sheet.Given{texture},
	})
	nitrate := s.Given("nitrate", "ppm NO3-N", sheet.Field{
		Typical: 20, Low: 0, High: 500, Of: "water", Units: []string{"mg/L NO3-N", "ppm NO3", "mg/L NO3"},
		Optional: true, Lab: true,
	})
	held := s.Step("holds", "%", sheet.If(s.Stated(capacity), capacity, fieldCapacity(s, texture)),
		sheet.Says{Also: "in/ft"})
	depth := s.Answer("depth", "in", excess.Over(held), sheet.Says{Also: "ft"})
	leached := s.Answer("leached", "lb N/ac", nitrate.Times(excess).Times(inchOfWater(s, "lb N/ac")),
		sheet.Says{Also: "kg N/ha", When: s.Stated(nitrate)})

	s.InWords("depth",
		sheet.When(depth.IsNothing(), "stays"),
		sheet.When(s.Stated(nitrate).And(leached.More(s.Zero("lb N/ac"))), "sinks-with"),
		sheet.Otherwise("sinks"))

	root := rootDepth(s)
	s.Warn("nitrate-to-wells", depth.More(root), "past-roots")
	s.Say(sheet.Note, depth.AtMost(root).And(excess.More(s.Zero("in"))), "lowest-roots")
	s.Say(sheet.Note, sheet.Always, "middle-of-front")

	s.Slip("multiplied", "depth", excess.Times(held))
	s.Slip("feet-for-inches", "depth", depth.Over(s.Number(12)))
	s.Slip("air-for-water", "depth", excess.Over(s.Number(1).Minus(held)))
	s.Slip("one-inch", "leached", leached.Over(excess))
	s.Slip("soil-rule", "leached", nitrate.Times(excess).Times(s.Number(2)).Over(s.Number(6)))
}
