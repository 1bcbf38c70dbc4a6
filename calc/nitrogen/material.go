package nitrogen

import "acreleaf/calc/sheet"

// A material is a fertilizer by its generic grade. Its figures are of the product as it is sold.
type material struct {
	name, label             string
	nitrogen                float64 // % of the product
	nitrate, ammonium, urea float64 // % of the nitrogen
	gallon                  float64 // lb of product; 0 for a dry material, which has none
	lime                    float64 // lb CaCO3 that undo what a pound of its nitrogen does; below 0 if it is like lime
	traits                  trait
	note                    string // its ranges, and why these figures
}

// A trait is what a material must be handled for.
type trait uint

const (
	acid       trait = 1 << iota // a strong acid
	ammonia                      // gives off ammonia gas
	pressure                     // a gas that is kept under pressure
	calcium                      // sets with sulfate and phosphate
	sulfate                      // sets with calcium
	phosphate                    // sets with calcium
	remembered                   // the weight of its gallon is from memory
	disputed                     // sources disagree on the weight of its gallon
	unlisted                     // the forms of its nitrogen are from memory, or differ from maker to maker
)

// materialOptions are the materials to choose from.
func materialOptions() []sheet.Option {
	var options []sheet.Option
	for _, m := range materials {
		options = append(options, sheet.Option{Name: m.name, Label: m.label, Note: m.note})
	}
	return options
}

// figuresOf gives one figure of each material that can be chosen. What is no material has none of it.
func figuresOf(choice *sheet.Given, figure func(m *material) float64) map[string]float64 {
	figures := map[string]float64{}
	for _, option := range choice.Choices {
		figures[option.Name] = 0
	}
	for i := range materials {
		figures[materials[i].name] = figure(&materials[i])
	}
	return figures
}

// weight is the weight of a gallon, which a dry material has not.
func (m *material) weight() float64 {
	if m.gallon == 0 {
		return sheet.None
	}
	return m.gallon
}

// has asks whether the material that is chosen has one of the traits.
func has(s *sheet.Sheet, choice *sheet.Given, any trait) sheet.Term {
	found := s.Lookup("trait", "", choice, figuresOf(choice, func(m *material) float64 {
		if m.traits&any != 0 {
			return 1
		}
		return 0
	}))
	return found.Same(s.Number(1))
}

const (
	universityTable = "a university table of nitrogen fertilizers (San Joaquin County record 517758, page 79)"
	gradeTables     = universityTable + "; Alabama Cooperative Extension ANR-0174; USDA-NRCS New Mexico, Agronomy " +
		"Technical Note 76"
	gallonTables = universityTable + "; Purdue Extension; University of Nebraska-Lincoln, Soils part 8; some from " +
		"memory, see the note"
	limeTables = universityTable + "; Alabama Cooperative Extension ANR-0174; the others worked from the grade, see " +
		"the note"
	formTables = "IPNI, Nutrient Source Specifics: urea-ammonium nitrate; chemistry; some from memory, see the note"
)

const forMaterial = "listed for this material"

// listedStrength is the nitrogen in the material, in the lists.
func listedStrength(s *sheet.Sheet, choice *sheet.Given) sheet.Term {
	return s.Listed("listed-strength", "% N of product", choice,
		figuresOf(choice, func(m *material) float64 { return m.nitrogen }), sheet.Fact{
			Label: "Nitrogen in the material", Reads: forMaterial, Source: gradeTables, Sureness: sheet.Handbook,
			Note: "The first number of a grade is its nitrogen. If your label has another, use the label.",
		})
}

// listedGallon is the weight of a gallon of the material, in the lists.
func listedGallon(s *sheet.Sheet, choice *sheet.Given) sheet.Term {
	return s.Listed("listed-gallon", "lb product/gal", choice,
		figuresOf(choice, (*material).weight), sheet.Fact{
			Label: "Weight of a gallon", Reads: forMaterial, Source: gallonTables,
			Sureness: sheet.Handbook,
			Note: "Dry materials have none. Near 60 °F; a warm gallon weighs a little less. UAN-32, 10-34-0 and " +
				"15-0-0-16S are from memory, and 12-0-0-26S is disputed. The delivery ticket has the density.",
		})
}

// listedLime is the lime that undoes what a pound of nitrogen of the material does to the soil, in the lists.
func listedLime(s *sheet.Sheet, choice *sheet.Given) sheet.Term {
	return s.Listed("listed-lime", "lb CaCO3/lb N", choice,
		figuresOf(choice, func(m *material) float64 { return m.lime }), sheet.Fact{
			Label: "Lime for a pound of its nitrogen", Reads: forMaterial, Source: limeTables, Sureness: sheet.Handbook,
			Note: "Pure lime, by the official method: half an acid for each nitrogen, all that the sulfur makes, a third " +
				"of the phosphate's, less the calcium and potash. Theory alone is twice that for nitrogen. Below " +
				"nothing means that the material works like lime.",
		})
}

// listedShare is the share of the nitrogen that is in one form, in the lists.
func listedShare(s *sheet.Sheet, choice *sheet.Given, form string) sheet.Term {
	figure := map[string]func(m *material) float64{
		"nitrate":  func(m *material) float64 { return m.nitrate },
		"ammonium": func(m *material) float64 { return m.ammonium },
		"urea":     func(m *material) float64 { return m.urea },
	}[form]
	return s.Listed("listed-"+form, "%", choice, figuresOf(choice, figure), sheet.Fact{
		Label: "Nitrogen that is " + form, Reads: forMaterial, Source: formTables, Sureness: sheet.Handbook,
		Note: "The label prints the forms. CAN-17, 15.5-0-0-19Ca and 15-15-15 are from memory.",
	})
}
