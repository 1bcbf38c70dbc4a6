package nitrogen

import "acreleaf/calc/sheet"

// UptakeEfficiency gives the share of a feed that trees take up, by how the feed is put on. A season's budget takes it.
var UptakeEfficiency = sheet.New("uptake-efficiency", uptakeEfficiency)

func uptakeEfficiency(s *sheet.Sheet) {
	system := s.Choice("system", []sheet.Option{
		{Name: "fertigation"},
		{Name: "general"},
		{Name: "furrow-or-broadcast"},
	}, sheet.Field{Typical: 1})
	share := s.Listed("share", "% taken up/fed", system, map[string]sheet.Cell{
		"fertigation":         {Value: 80, Sources: []string{"agfax-pistachio"}},
		"general":             {Value: 70, Sources: []string{"almond-board"}},
		"furrow-or-broadcast": {Value: 50, Sources: []string{"agfax-pistachio"}},
	}, sheet.Fact{})
	efficiency := s.Answer("efficiency", "% taken up/fed", share, sheet.Says{})
	s.Answer("per-pound", "lb N/lb N fed/taken up", s.Number(1).Over(efficiency), sheet.Says{})

	s.InWords("efficiency", sheet.Otherwise("per-pound"))

	s.Say(sheet.Note, sheet.Always, "for-planning")
	all := s.Constant("all-of-it", "100 % taken up/fed", sheet.Fact{Reads: "100 %", Sources: []string{"arithmetic"}})
	s.Slip("share-for-ratio", "per-pound", efficiency.Over(all))
	s.Slip("loss-added", "per-pound", s.Number(2).Minus(efficiency.Over(all)))
}
