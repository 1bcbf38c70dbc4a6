package nitrogen

import "acreleaf/calc/sheet"

// UptakeEfficiency gives the share of a feed that trees take up, by how the feed is put on. A season's budget takes it.
var UptakeEfficiency = sheet.New("uptake-efficiency", uptakeEfficiency)

func uptakeEfficiency(s *sheet.Sheet) {
	s.Head("Share of a feed that is taken up", "Gives the share of bought nitrogen that trees take up, by how it goes on.")
	system := s.Choice("system", []sheet.Option{
		{Name: "fertigation", Label: "In small feeds through drip or micro-sprinklers",
			Note: "80 % is what an advisor plans with in pistachio."},
		{Name: "general", Label: "Well managed, whatever the system",
			Note: "The almond board says that more than 70 % can be reached. Young trees with small roots take up less."},
		{Name: "furrow-or-broadcast", Label: "Broadcast, or in furrow or flood water",
			Note: "An advisor says that it can be as low as 50 % in pistachio. In hazelnut, tracer found 28 % of a broadcast " +
				"feed in the trees; a tracer misses what the tree takes up from elsewhere instead."},
	}, sheet.Field{Label: "How the feed goes on", Hint: "Choose the nearest.", Typical: 1})
	share := s.Listed("share", "% taken up/fed", system, map[string]sheet.Cell{
		"fertigation":         {Value: 80, Sources: []string{"agfax-pistachio"}},
		"general":             {Value: 70, Sources: []string{"almond-board"}},
		"furrow-or-broadcast": {Value: 50, Sources: []string{"agfax-pistachio"}},
	}, sheet.Fact{
		Label: "Share taken up", Reads: "listed for this system",
		Note: "A figure for planning, from bearing trees. Sources measure different things, from 28 to 80 %.",
	})
	efficiency := s.Answer("efficiency", "% taken up/fed", share, sheet.Says{Label: "Share taken up"})
	s.Answer("per-pound", "lb N/lb N fed/taken up", s.Number(1).Over(efficiency),
		sheet.Says{Label: "To apply for each pound taken up"})

	s.InWords("efficiency", sheet.Otherwise(
		"Trees take up {efficiency} of it: put on {per-pound bare} lb for each pound that they are to take up."))

	s.Say(sheet.Note, sheet.Always,
		"These are planning figures for bearing trees. Roots of a first-leaf tree reach less of the wetted soil, so expect "+
			"less there. Leaching by rain or too much water takes more.")
	all := s.Constant("all-of-it", "100 % taken up/fed", sheet.Fact{
		Label: "All of a feed", Reads: "100 %", Sources: []string{"arithmetic"},
	})
	s.Slip("share-for-ratio", "per-pound", efficiency.Over(all),
		"That is the share taken up. Divide 1 by it: more must go on than is taken up.")
	s.Slip("loss-added", "per-pound", s.Number(2).Minus(efficiency.Over(all)),
		"The part that is lost was added to the pound. Divide the pound by the share that is taken up.")
}
