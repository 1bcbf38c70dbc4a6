package nitrogen

import (
	"slices"
	"strings"
	"sync"

	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
)

// MaterialFacts is what the table has of a material, for a page that prints it.
type MaterialFacts struct {
	Name, Label string // "UAN-32", "urea-ammonium nitrate solution"
	Note        string
	NoteSources []string
	Liquid      bool
	Nitrogen    sheet.Cell // % of the product
	Gallon      sheet.Cell // lb of product; sheet.None where there is none
	Lime        sheet.Cell // lb CaCO3 that undo what a pound of its nitrogen does; below 0 if it is like lime

	Nitrate, Ammonium, Urea float64 // % of the nitrogen; sheet.None where makers differ
	FormSources             []string

	Apart []fact.Meeting // what it must not meet
}

// Sources are the ids of all that is known of a material, some of them more than once.
func (m MaterialFacts) Sources() []string {
	ids := slices.Concat(m.NoteSources, m.FormSources, m.Nitrogen.Sources, m.Gallon.Sources, m.Lime.Sources)
	for _, meeting := range m.Apart {
		ids = append(ids, meeting.Sources...)
	}
	return ids
}

// Materials lists the materials in the order of the table, with their texts in a language. The list is the same for
// all who ask, and not to be changed.
func Materials(language string) []MaterialFacts {
	s := MaterialAmount.In(language)
	if known, ok := materialFacts.Load(s); ok {
		return known.([]MaterialFacts)
	}
	known, _ := materialFacts.LoadOrStore(s, listMaterials(s))
	return known.([]MaterialFacts)
}

var materialFacts sync.Map // of []MaterialFacts by the *sheet.Sheet that has the texts

func listMaterials(s *sheet.Sheet) []MaterialFacts {
	var all []MaterialFacts
	options := s.FindGiven("material").Choices
	for i, m := range materials {
		label := strings.TrimSuffix(strings.TrimPrefix(options[i].Label, m.name+", "), ", "+m.name)
		all = append(all, MaterialFacts{
			Name: m.name, Label: strings.ToUpper(label[:1]) + label[1:],
			Note: options[i].Note, NoteSources: slices.Clone(noteSources[m.name]),
			Liquid: m.liquid, Nitrogen: m.nitrogen, Gallon: m.gallon, Lime: m.lime,
			Nitrate: m.forms.nitrate, Ammonium: m.forms.ammonium, Urea: m.forms.urea, FormSources: m.forms.sources,
			Apart: fact.Apart(m.traits, s.Texts.Language),
		})
	}
	return all
}
