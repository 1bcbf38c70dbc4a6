package nitrogen

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
)

// A material is a fertilizer by its generic grade. Its figures are of the product as it is sold, each with its sources;
// its note, in calc/words, has the ranges and why these figures were taken.
type material struct {
	name     string
	nitrogen sheet.Cell // % of the product
	forms    forms
	liquid   bool       // it is counted in gallons
	gallon   sheet.Cell // lb of product; noWeight for a dry material, and where no source gives it
	lime     sheet.Cell // lb CaCO3 that undo what a pound of its nitrogen does; below 0 if it is like lime
	traits   fact.Trait
}

// forms are the shares of the nitrogen that are in each form, in %. They are sheet.None where makers differ.
type forms struct {
	nitrate, ammonium, urea float64
	sources                 []string
}

// from is a figure with its sources.
func from(value float64, sources ...string) sheet.Cell {
	return sheet.Cell{Value: value, Sources: sources}
}

// noWeight is the weight of a gallon that is not there.
var noWeight = sheet.Cell{Value: sheet.None}

// materialOptions are the materials to choose from.
func materialOptions() []sheet.Option {
	var options []sheet.Option
	for _, m := range materials {
		options = append(options, sheet.Option{Name: m.name, Sources: noteSources[m.name]})
	}
	return options
}

// cellsOf gives one figure of each material that can be chosen. What is no material has none of it.
func cellsOf(choice *sheet.Given, cell func(m *material) sheet.Cell) map[string]sheet.Cell {
	cells := map[string]sheet.Cell{}
	for _, option := range choice.Choices {
		cells[option.Name] = sheet.Cell{Value: sheet.None}
	}
	for i := range materials {
		cells[materials[i].name] = cell(&materials[i])
	}
	return cells
}

// figuresOf is cellsOf, for what is no figure of the trade.
func figuresOf(choice *sheet.Given, figure func(m *material) float64) map[string]float64 {
	figures := map[string]float64{}
	for option, cell := range cellsOf(choice, func(m *material) sheet.Cell { return sheet.Cell{Value: figure(m)} }) {
		figures[option] = cell.Value
	}
	return figures
}

// gradeNumber is a number of a grade, with what it is of after it where that is told: "24S".
var gradeNumber = regexp.MustCompile(`^([0-9.]+)[A-Z]?[a-z]?$`)

// otherNumbers are the second number of the grade and the last one, as they are printed: of 13-0-46, 0 and 46. One that
// is the same as a number before it is given as 0, and so are those of a name that is no grade, such as UAN-32.
func (m *material) otherNumbers() [2]float64 {
	var numbers []float64
	for _, part := range strings.Split(m.name, "-") {
		found := gradeNumber.FindStringSubmatch(part)
		if found == nil {
			return [2]float64{}
		}
		number, _ := strconv.ParseFloat(found[1], 64)
		if slices.Contains(numbers, number) {
			number = 0
		}
		numbers = append(numbers, number)
	}
	return [2]float64{numbers[1], numbers[len(numbers)-1]}
}

// weight is the weight of a gallon; sheet.None where there is none.
func (m *material) weight() float64 { return m.gallon.Value }

// asks asks something of the material that is chosen.
func asks(s *sheet.Sheet, choice *sheet.Given, what func(m *material) bool) sheet.Term {
	found := s.Lookup("trait", "", choice, figuresOf(choice, func(m *material) float64 {
		if what(m) {
			return 1
		}
		return 0
	}))
	return found.Same(s.Number(1))
}

// has asks whether the material that is chosen has one of the traits.
func has(s *sheet.Sheet, choice *sheet.Given, any fact.Trait) sheet.Term {
	return asks(s, choice, func(m *material) bool { return m.traits&any != 0 })
}

// listedStrength is the nitrogen in the material, in the lists.
func listedStrength(s *sheet.Sheet, choice *sheet.Given) sheet.Term {
	return s.Listed("listed-strength", "% N of product", choice,
		cellsOf(choice, func(m *material) sheet.Cell { return m.nitrogen }), sheet.Fact{})
}

// listedGallon is the weight of a gallon of the material, in the lists.
func listedGallon(s *sheet.Sheet, choice *sheet.Given) sheet.Term {
	return s.Listed("listed-gallon", "lb product/gal", choice,
		cellsOf(choice, func(m *material) sheet.Cell { return m.gallon }), sheet.Fact{})
}

// listedLime is the lime that undoes what a pound of nitrogen of the material does to the soil, in the lists. What
// works like lime itself needs none.
func listedLime(s *sheet.Sheet, choice *sheet.Given) sheet.Term {
	needs := func(m *material) sheet.Cell { return from(max(0, m.lime.Value), m.lime.Sources...) }
	return s.Listed("listed-lime", "lb CaCO3/lb N", choice, cellsOf(choice, needs), sheet.Fact{})
}

// listedLiming is the lime that a pound of nitrogen of the material does the work of, in the lists.
func listedLiming(s *sheet.Sheet, choice *sheet.Given) sheet.Term {
	does := func(m *material) sheet.Cell {
		if !m.limes() {
			return sheet.Cell{Value: sheet.None}
		}
		return from(-m.lime.Value, m.lime.Sources...)
	}
	return s.Listed("listed-liming", "lb CaCO3/lb N", choice, cellsOf(choice, does), sheet.Fact{})
}

// limes says whether the material works against acidity, as lime does.
func (m *material) limes() bool { return m.lime.Value < 0 }

// listedShare is the share of the nitrogen that is in one form, in the lists.
func listedShare(s *sheet.Sheet, choice *sheet.Given, form string) sheet.Term {
	figure := map[string]func(m *material) float64{
		"nitrate":  func(m *material) float64 { return m.forms.nitrate },
		"ammonium": func(m *material) float64 { return m.forms.ammonium },
		"urea":     func(m *material) float64 { return m.forms.urea },
	}[form]
	cell := func(m *material) sheet.Cell { return sheet.Cell{Value: figure(m), Sources: m.forms.sources} }
	return s.Listed("listed-"+form, "%", choice, cellsOf(choice, cell), sheet.Fact{})
}
