package nitrogen

import "acreleaf/calc/sheet"

// crops are the options of a crop, with what the trade weighs. The notes have the ranges of the sources, and why one
// figure was taken.
func crops() []sheet.Option {
	return []sheet.Option{
		{Name: "almond", Label: "Almond (yield in kernels)",
			Note: "68 lb of nitrogen leave with the kernels, hulls and shells of 1,000 lb of kernels: the mean at full " +
				"yield. Sources print from 50 to 87.",
			Sources: []string{"west-coast-nut-almond", "boost-almond", "cdfa-almond"}},
		{Name: "walnut", Label: "Walnut (yield dry, in shell)",
			Note: "29 lb a ton is what harvested nuts in the shell held, the mean of three seasons in six orchards; two of " +
				"the seasons gave 27. The state's guidelines count hulls too: 27.5 in recent trials, 31.9 with old ones, from " +
				"24 to 46.4. Hulls and leaves that you take away come on top.",
			Sources: []string{"walnut-board", "growing-produce-walnut", "cdfa-walnut"}},
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

// A cropForm is the form that the trade weighs some crops in, which their figures are for.
type cropForm struct {
	crops            []string
	form, said, told string
	step             string // the name of the yield in this form
}

var formsOfCrops = []cropForm{
	{[]string{"almond"}, "kernels", "the weight of kernels", "kernels", "weight-of-kernels"},
	{[]string{"walnut", "pecan", "hazelnut"}, "in-shell", "dry nuts in the shell", "dry nuts in the shell",
		"weight-in-shell"},
	{[]string{"pistachio"}, "CPC", "the CPC weight on the processor's report", "CPC weight", "weight-as-cpc"},
}

// of asks whether a crop is weighed in the form.
func (f cropForm) of(crop *sheet.Given) sheet.Term {
	is := crop.Is(f.crops[0])
	for _, other := range f.crops[1:] {
		is = is.Or(crop.Is(other))
	}
	return is
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
	most = s.Listed("removal-most", unit, crop, ofCrops(cell(87, "cdfa-almond"),
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

// growthTable is the nitrogen that wood, roots and leaves keep in a year after the first.
func growthTable(s *sheet.Sheet, crop *sheet.Given) sheet.Term {
	return s.Listed("growth-later", "lb N/ac taken up", crop, ofCrops(cell(30, "common-practice"),
		cell(30, "common-practice"), cell(25, "west-coast-nut-pistachio")), sheet.Fact{
		Label: "Growth after first leaf", Reads: "listed for this crop",
		Note: "Common practice is 25 to 35 lb an acre a year, whatever the leaf. No trial at hand has it by leaf for " +
			"almonds, and the Walnut Board is still measuring it. The figure for pistachio is of mature trees.",
	})
}
