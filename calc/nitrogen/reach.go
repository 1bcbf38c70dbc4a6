package nitrogen

import "acreleaf/calc/sheet"

// NitrateReach says how deep water beyond need may carry nitrate: the depth of soil that this water fills.
var NitrateReach = sheet.New("nitrate-reach", nitrateReach)

func nitrateReach(s *sheet.Sheet) {
	s.Head("How far nitrate may sink", "Turns water beyond need into the depth that nitrate may move with it.")
	excess := s.Given("excess", "in", sheet.Field{
		Label: "Water beyond need", Hint: "Irrigation and rain, less what the root zone had room for.",
		Typical: 3, Low: 0, High: 60, Units: []string{"ft", "mm", "cm"},
	})
	texture := s.Choice("texture", textures(), sheet.Field{
		Label: "Soil texture", Hint: "From a soil report or a soil map.", Typical: 2,
	})
	capacity := s.Given("capacity", "%", sheet.Field{
		Label: "Field capacity, if you know it", Hint: "Water in the drained soil, by volume. Empty: the usual figure.",
		Typical: 18, Low: 2, High: 60, Units: []string{"in/ft"}, Optional: true,
		For: []*sheet.Given{texture},
	})
	nitrate := s.Given("nitrate", "ppm NO3-N", sheet.Field{
		Label: "Nitrate in that water, if you know it", Hint: "In the water that leaves the root zone. Empty: not worked.",
		Typical: 20, Low: 0, High: 500, Of: "water", Units: []string{"mg/L NO3-N", "ppm NO3", "mg/L NO3"},
		Optional: true, Lab: true,
	})
	held := s.Step("holds", "%", sheet.If(s.Stated(capacity), capacity, fieldCapacity(s, texture)),
		sheet.Says{Label: "Water that the soil holds", Work: "water that the soil holds", Also: "in/ft"})
	depth := s.Answer("depth", "in", excess.Over(held), sheet.Says{Label: "Nitrate may move by", Also: "ft"})
	leached := s.Answer("leached", "lb N/ac", nitrate.Times(excess).Times(inchOfWater(s, "lb N/ac")),
		sheet.Says{Label: "Nitrogen in that water", Also: "kg N/ha", When: s.Stated(nitrate)})

	s.InWords("depth",
		sheet.When(depth.IsNothing(), "No water is beyond need, so nitrate stays where it is."),
		sheet.When(s.Stated(nitrate).And(leached.More(s.Zero("lb N/ac"))),
			"Nitrate may sink by {depth}, and {leached} may go with that water."),
		sheet.Otherwise("Nitrate may sink by {depth}."))

	root := rootDepth(s)
	s.Warn("nitrate-to-wells", depth.More(root),
		"Nitrate at the surface may move {depth}, past most roots of a young tree.")
	s.Say(sheet.Note, depth.AtMost(root).And(excess.More(s.Zero("in"))),
		"Nitrate in the lowest {depth} of the root zone may pass below it.")
	s.Say(sheet.Note, sheet.Always,
		"This is the middle of the front. Some water runs ahead through cracks, root holes and sand, and rain adds to it. "+
			"Dry soil below holds the front back.")

	s.Slip("multiplied", "depth", excess.Times(held),
		"Divide the water by the share that the soil holds. An inch of water fills several inches of soil.")
	s.Slip("feet-for-inches", "depth", depth.Over(s.Number(12)),
		"That is in feet: inches of water were divided by inches in a foot of soil. Multiply by 12.")
	s.Slip("air-for-water", "depth", excess.Over(s.Number(1).Minus(held)),
		"Divide by the part that holds water, not by the rest.")
	s.Slip("one-inch", "leached", leached.Over(excess),
		"That is the nitrogen in one inch of water; multiply by the inches.")
	s.Slip("soil-rule", "leached", nitrate.Times(excess).Times(s.Number(2)).Over(s.Number(6)),
		"2 lb/ac for each ppm and 6 in is the rule for soil. Water is lighter: 0.2266 for each ppm and inch.")
}
