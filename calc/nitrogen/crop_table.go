package nitrogen

import "acreleaf/calc/sheet"

// crops are the options of a crop, with what the trade weighs. The notes have the ranges of the sources, and why one
// figure was taken.
func crops() []sheet.Option {
	return []sheet.Option{
		{Name: "almond", Sources: []string{"west-coast-nut-almond", "boost-almond", "cdfa-almond"}},
		{Name: "walnut", Sources: []string{"walnut-board", "growing-produce-walnut", "cdfa-walnut"}},
		{Name: "pistachio"},
		{Name: "pecan"},
		{Name: "hazelnut"},
	}
}

// cropForms are the forms that a crop is weighed in.
var cropForms = []string{"kernels", "in-shell", "CPC"}

// A cropForm is the form that the trade weighs some crops in, which their figures are for.
type cropForm struct {
	crops []string
	form  string
	step  string // the name of the yield in this form
}

var formsOfCrops = []cropForm{
	{[]string{"almond"}, "kernels", "weight-of-kernels"},
	{[]string{"walnut", "pecan", "hazelnut"}, "in-shell", "weight-in-shell"},
	{[]string{"pistachio"}, "CPC", "weight-as-cpc"},
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
	removal = removalOfCrop(s, crop)
	least = s.Listed("removal-least", unit, crop, ofCrops(cell(50, "boost-almond"),
		cell(12, "cdfa-walnut"), cell(27.05, "cdfa-pistachio")), sheet.Fact{})
	most = s.Listed("removal-most", unit, crop, ofCrops(cell(87, "cdfa-almond"),
		cell(23.2, "cdfa-walnut"), cell(28.8, "cdfa-pistachio")), sheet.Fact{})
	return removal, least, most
}

// removalOfCrop is the nitrogen that leaves with the crop.
func removalOfCrop(s *sheet.Sheet, crop *sheet.Given) sheet.Term {
	return s.Listed("removal-of-crop", "lb N per 1000 lb crop", crop, ofCrops(cell(68, "west-coast-nut-almond"),
		cell(14.5, "walnut-board"), cell(28, "west-coast-nut-pistachio")), sheet.Fact{})
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
		cell(30, "common-practice"), cell(25, "west-coast-nut-pistachio")), sheet.Fact{})
}
