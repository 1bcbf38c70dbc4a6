package nitrogen

import "acreleaf/calc/sheet"

// nitrogenWeight and nitrateWeight are the shares of nitrogen in nitrate: 14.007 parts of nitrogen in 62.004 of NO3,
// 0.2259 of it. The two stand apart so that converting there and back gives the number that was put in.
func nitrogenWeight(s *sheet.Sheet) sheet.Term {
	return s.ConstantOnce("nitrogen-weight", "14.007 lb NO3-N", sheet.Fact{
		Label: "Weight of nitrogen in nitrate", Reads: "14.007", Sources: []string{"iupac-weights"},
		Note: "14.007 ÷ 62.004 is 0.2259.",
	})
}

func nitrateWeight(s *sheet.Sheet) sheet.Term {
	return s.ConstantOnce("nitrate-weight", "62.004 lb NO3", sheet.Fact{
		Label: "Weight of nitrate", Reads: "62.004", Sources: []string{"iupac-weights"},
	})
}
