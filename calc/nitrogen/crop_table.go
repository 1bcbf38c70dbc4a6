package nitrogen

import "acreleaf/calc/sheet"

// crops are the options of a crop, with what the trade weighs. The notes have the ranges of the sources, and why one
// figure was taken.
func crops() []sheet.Option {
	return []sheet.Option{
		{Name: "almond", Label: "Almond (yield in kernels)",
			Note: "68 lb of nitrogen leave with the kernels, hulls and shells of 1,000 lb of kernels: the mean at full " +
				"yield. Trials run from 50 to 75; older advice says 60 to 65, with about 85 lb applied."},
		{Name: "walnut", Label: "Walnut (yield dry, in shell)",
			Note: "29 lb a ton is the mean of three seasons in six orchards of today, in the nuts with their shells. Two of " +
				"the seasons gave 27. Hulls take some away too: 31.9 counts them, a mean with old trials. Single trials run " +
				"from 24 to 46.4."},
		{Name: "pistachio", Label: "Pistachio (yield as CPC weight)",
			Note: "CPC is the assessed weight on the processor's report. Trials agree: 27 to 29 lb. " +
				"The old flat rate of 220 to 250 lb an acre in heavy years is history."},
		{Name: "pecan", Label: "Pecan (yield in shell)",
			Note: "No published figure for removal or growth was found, so put in your own."},
		{Name: "hazelnut", Label: "Hazelnut (yield in shell)",
			Note: "No published figure for removal or growth was found, so put in your own."},
	}
}

// cropForms are the forms that a crop is weighed in.
var cropForms = []string{"kernels", "in-shell", "CPC"}

// formsOfCrops are the forms that the trade weighs each crop in, which its figures are for.
var formsOfCrops = []struct {
	crops      []string
	form, said string
}{
	{[]string{"almond"}, "kernels", "the weight of kernels"},
	{[]string{"walnut", "pecan", "hazelnut"}, "in-shell", "dry nuts in the shell"},
	{[]string{"pistachio"}, "CPC", "the CPC weight on the processor's report"},
}

// removalTable is the nitrogen that leaves with the crop, and the least and the most that sources give.
func removalTable(s *sheet.Sheet, crop *sheet.Given) (removal, least, most sheet.Term) {
	const unit = "lb N per 1000 lb crop"
	removal = s.Listed("removal-of-crop", unit, crop, ofCrops(cell(68, "west-coast-nut-almond"),
		cell(14.5, "walnut-board"), cell(28, "west-coast-nut-pistachio")), sheet.Fact{
		Label: "Nitrogen in the crop", Reads: "listed for this crop",
		Note: "For almonds it counts kernels, shells and hulls; for walnuts the nuts in the shell, without hulls. It is no " +
			"rate to apply.",
	})
	end := sheet.Fact{Reads: "listed for this crop", Label: "Least that sources give"}
	least = s.Listed("removal-least", unit, crop, ofCrops(cell(50, "boost-almond"),
		cell(12, "cdfa-walnut"), cell(27.05, "cdfa-pistachio")), end)
	end.Label = "Most that sources give"
	most = s.Listed("removal-most", unit, crop, ofCrops(cell(75, "boost-almond"),
		cell(23.2, "cdfa-walnut"), cell(28.8, "cdfa-pistachio")), end)
	return removal, least, most
}

// ofCrops are the cells of the crops that something is published of, each with its source. Of pecan and hazelnut
// nothing is.
func ofCrops(almond, walnut, pistachio sheet.Cell) map[string]sheet.Cell {
	nothing := sheet.Cell{Value: sheet.None}
	return map[string]sheet.Cell{
		"almond": almond, "walnut": walnut, "pistachio": pistachio, "pecan": nothing, "hazelnut": nothing,
	}
}

func cell(value float64, source string) sheet.Cell {
	return sheet.Cell{Value: value, Sources: []string{source}}
}

// growthTables are the nitrogen that wood, roots and leaves keep in a year: in first leaf and after it.
func growthTables(s *sheet.Sheet, crop *sheet.Given) (first, later sheet.Term) {
	first = s.Listed("growth-first-leaf", "lb N/ac", crop, sheet.Cells(map[string]float64{
		"almond": 30, "walnut": 30, "pistachio": sheet.None, "pecan": sheet.None, "hazelnut": sheet.None,
	}), sheet.Fact{
		Label: "Growth in first leaf", Reads: "listed for this crop in first leaf",
		Sources: []string{"common-practice"},
		Note:    "The middle of 25 to 35 lb an acre, which is 3 to 4 oz a tree on common spacings.",
	})
	later = s.Listed("growth-later", "lb N/ac", crop, ofCrops(cell(30, "common-practice"),
		cell(30, "common-practice"), cell(25, "west-coast-nut-pistachio")), sheet.Fact{
		Label: "Growth after first leaf", Reads: "listed for this crop",
		Note: "Common practice is 25 to 35 lb an acre a year. The figure for pistachio is of mature trees.",
	})
	return first, later
}
