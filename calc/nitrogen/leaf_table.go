package nitrogen

import "acreleaf/calc/sheet"

// leafCrops are the crops of a leaf analysis, with when to sample and where the levels are from.
func leafCrops() []sheet.Option {
	return []sheet.Option{
		{Name: "almond"},
		{Name: "walnut"},
		{Name: "pistachio"},
		{Name: "pecan"},
		{Name: "hazelnut"},
	}
}

// leafSources are the sources of the levels, by crop. Walnut and pistachio have levels of potassium only.
var leafSources = map[string]string{
	"almond": "almond-3364", "walnut": "western-farm-walnut", "pistachio": "zeng-2001", "pecan": "pecan-wells",
	"hazelnut": "hazelnut-8786",
}

// A leafTable has the levels of one nutrient that a laboratory's number is compared with, in % of dry weight. 0 means
// that no level is known.
type leafTable struct {
	low, high, deficient, excess sheet.Term
}

func leafNitrogen(s *sheet.Sheet, crop *sheet.Given) leafTable {
	column := leafColumns(s, crop, "nitrogen")
	return leafTable{
		low:       column("range-from", 2.2, sheet.None, sheet.None, 2.5, 2.21),
		high:      column("range-to", 2.5, sheet.None, sheet.None, 2.9, 2.5),
		deficient: column("deficient-below", 2.0, sheet.None, sheet.None, sheet.None, 1.8),
		excess:    column("excessive-above", 2.7, sheet.None, sheet.None, sheet.None, 3.0),
	}
}

func leafPotassium(s *sheet.Sheet, crop *sheet.Given) leafTable {
	column := leafColumns(s, crop, "potassium")
	return leafTable{
		low:       column("range-from", 1.4, 1.2, 1.69, 1.3, 0.81),
		high:      column("range-to", sheet.None, sheet.None, sheet.None, 1.5, 2.0),
		deficient: column("deficient-below", 1.0, 0.9, sheet.None, sheet.None, 0.5),
		excess:    column("excessive-above", sheet.None, sheet.None, sheet.None, sheet.None, 3.0),
	}
}

// leafColumns makes the columns of a nutrient's table. The figures of each are in the order of the crops.
func leafColumns(s *sheet.Sheet, crop *sheet.Given, nutrient string) func(string, ...float64) sheet.Term {
	return func(what string, figures ...float64) sheet.Term {
		cells := map[string]sheet.Cell{}
		for i, option := range crop.Choices {
			cells[option.Name] = sheet.Cell{Value: figures[i], Sources: []string{leafSources[option.Name]}}
		}
		return s.Listed(nutrient+"-"+what, "%", crop, cells, sheet.Fact{})
	}
}
