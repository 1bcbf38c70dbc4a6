package nitrogen

import "acreleaf/calc/sheet"

// Sources of the figures of crops that stand behind more than one of them.
const (
	almondLeaf   = "UC ANR publication 3364, Almond Production Manual, as printed in a grower column (2023)"
	hazelnutLeaf = "Olsen, Oregon State University EM 8786 (2001)"
	pecanLeaf    = "Wells and Wood 2007, HortTechnology 17:473"
	walnutLeaf   = "UC Cooperative Extension, in Western Farm Press"
)

// crops are the options of a crop, with what the trade weighs. The notes have the ranges of the sources, and why one
// figure was taken.
func crops() []sheet.Option {
	return []sheet.Option{
		{Name: "almond", Label: "Almond (yield in kernels)",
			Note: "68 lb of nitrogen leave with the kernels, hulls and shells of 1,000 lb of kernels: the mean at full " +
				"yield. Trials run from 50 to 75; older advice says 60 to 65, with about 85 lb applied."},
		{Name: "walnut", Label: "Walnut (yield dry, in shell)",
			Note: "29 lb a ton is the mean of three seasons in six orchards of today. Two of the seasons gave 27. " +
				"31.9 is a mean with old trials; single trials run from 24 to 46.4."},
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
	source := "UC Davis nutrient budgets (almond: West Coast Nut 2021-11; pistachio: West Coast Nut 2024-06); " +
		"California Walnut Board research update (walnut)"
	removal = s.Listed("removal-of-crop", unit, crop, map[string]float64{
		"almond": 68, "walnut": 14.5, "pistachio": 28, "pecan": sheet.None, "hazelnut": sheet.None,
	}, sheet.Fact{
		Label: "Nitrogen in the crop", Reads: "listed for this crop", Source: source, Sureness: sheet.Handbook,
		Note: "It counts all that leaves the orchard: kernels, shells and hulls. It is no rate to apply.",
	})
	end := sheet.Fact{Reads: "listed for this crop", Sureness: sheet.Handbook,
		Source: "Growing Produce, Boost almond output; CDFA and UC Davis, California Crop Fertilization Guidelines"}
	end.Label = "Least that sources give"
	least = s.Listed("removal-least", unit, crop, map[string]float64{
		"almond": 50, "walnut": 12, "pistachio": 27.05, "pecan": sheet.None, "hazelnut": sheet.None,
	}, end)
	end.Label = "Most that sources give"
	most = s.Listed("removal-most", unit, crop, map[string]float64{
		"almond": 75, "walnut": 23.2, "pistachio": 28.8, "pecan": sheet.None, "hazelnut": sheet.None,
	}, end)
	return removal, least, most
}

// growthTables are the nitrogen that wood, roots and leaves keep in a year: in first leaf and after it.
func growthTables(s *sheet.Sheet, crop *sheet.Given) (first, later sheet.Term) {
	first = s.Listed("growth-first-leaf", "lb N/ac", crop, map[string]float64{
		"almond": 30, "walnut": 30, "pistachio": sheet.None, "pecan": sheet.None, "hazelnut": sheet.None,
	}, sheet.Fact{
		Label: "Growth in first leaf", Reads: "listed for this crop in first leaf",
		Source: "common practice", Sureness: sheet.CommonPractice,
		Note: "The middle of 25 to 35 lb an acre, which is 3 to 4 oz a tree on common spacings.",
	})
	later = s.Listed("growth-later", "lb N/ac", crop, map[string]float64{
		"almond": 30, "walnut": 30, "pistachio": 25, "pecan": sheet.None, "hazelnut": sheet.None,
	}, sheet.Fact{
		Label: "Growth after first leaf", Reads: "listed for this crop",
		Source: "UC Cooperative Extension, 2013 almond budget; UC Davis trials, West Coast Nut 2024-06 (pistachio); " +
			"common practice (walnut)",
		Sureness: sheet.CommonPractice,
		Note: "Common practice is 25 to 35 lb an acre a year. For growing almonds UC Cooperative Extension gives 20 to " +
			"50. The figure for pistachio is of mature trees.",
	})
	return first, later
}
