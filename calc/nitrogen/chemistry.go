package nitrogen

import "acreleaf/calc/sheet"

// nitrogenWeight and nitrateWeight are the shares of nitrogen in nitrate: 14.007 parts of nitrogen in 62.004 of NO3,
// 0.2259 of it. The two stand apart so that converting there and back gives the number that was put in.
func nitrogenWeight(s *sheet.Sheet) sheet.Term {
	return s.ConstantOnce("nitrogen-weight", "14.007 lb NO3-N", sheet.Fact{
		Reads: "14.007", Sources: []string{"iupac-weights"},
	})
}

func nitrateWeight(s *sheet.Sheet) sheet.Term {
	return s.ConstantOnce("nitrate-weight", "62.004 lb NO3", sheet.Fact{
		Reads: "62.004", Sources: []string{"iupac-weights"},
	})
}
