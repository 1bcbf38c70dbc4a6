package nitrogen

import (
	"strings"

	"acreleaf/calc/sheet"
)

// leafCrops are the crops of a leaf analysis, with when to sample and where the levels are from.
func leafCrops() []sheet.Option {
	return []sheet.Option{
		{Name: "almond", Label: "Almond",
			Note: "Sample in July, from spurs without nuts. Potassium has no upper end."},
		{Name: "walnut", Label: "Walnut",
			Note: "Sample in July. The nitrogen level is from memory of the UC production manual. No upper ends."},
		{Name: "pistachio", Label: "Pistachio",
			Note: "Sample in August, from branches without nuts. The nitrogen levels are from memory of the UC manual."},
		{Name: "pecan", Label: "Pecan",
			Note: "Sample in July, to the first week of August. The ranges are for the Southeast."},
		{Name: "hazelnut", Label: "Hazelnut",
			Note: "Sample in August. From 1.80 to 2.20 % nitrogen is below normal."},
	}
}

// A leafTable is what a laboratory's number is held against, for one nutrient. 0 means that there is none.
type leafTable struct {
	low, high, deficient, excess sheet.Term
}

func leafNitrogen(s *sheet.Sheet, crop *sheet.Given) leafTable {
	column := leafColumns(s, crop, "Nitrogen", sheet.Fact{
		Source: almondLeaf + "; " + hazelnutLeaf + "; " + pecanLeaf,
		Note:   "Walnut and pistachio are from memory of the UC production manuals, and are marked so in the answer.",
	})
	return leafTable{
		low:       column("range from", 2.2, 2.3, 2.2, 2.5, 2.21),
		high:      column("range to", 2.5, sheet.None, 2.5, 2.9, 2.5),
		deficient: column("deficient below", 2.0, sheet.None, 1.8, sheet.None, 1.8),
		excess:    column("excessive above", 2.7, sheet.None, sheet.None, sheet.None, 3.0),
	}
}

func leafPotassium(s *sheet.Sheet, crop *sheet.Given) leafTable {
	column := leafColumns(s, crop, "Potassium", sheet.Fact{
		Source: almondLeaf + "; " + walnutLeaf + "; " + hazelnutLeaf + "; " + pecanLeaf,
		Note:   "No published figure was found for pistachio.",
	})
	return leafTable{
		low:       column("range from", 1.4, 1.2, sheet.None, 1.3, 0.81),
		high:      column("range to", sheet.None, sheet.None, sheet.None, 1.5, 2.0),
		deficient: column("deficient below", 1.0, 0.9, sheet.None, sheet.None, 0.5),
		excess:    column("excessive above", sheet.None, sheet.None, sheet.None, sheet.None, 3.0),
	}
}

// leafColumns makes the columns of a nutrient's table. The figures of each are in the order of the crops. The first
// column has the note of all, since a guide lists them one after the other.
func leafColumns(s *sheet.Sheet, crop *sheet.Given, nutrient string, f sheet.Fact) func(string, ...float64) sheet.Term {
	f.Reads, f.Sureness = "listed for this crop", sheet.Handbook
	return func(what string, figures ...float64) sheet.Term {
		f.Label = nutrient + ", " + what
		table := map[string]float64{}
		for i, option := range crop.Choices {
			table[option.Name] = figures[i]
		}
		column := s.Listed(strings.ToLower(nutrient)+"-"+strings.ReplaceAll(what, " ", "-"), "%", crop, table, f)
		f.Note = ""
		return column
	}
}
