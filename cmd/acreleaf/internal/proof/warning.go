package proof

import (
	"slices"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
)

// Warnings gives the signal blocks that a page needs by its title and by what its calculations say of their usual
// numbers, ready to be in its text.
func Warnings(language, title string, calculations []string) []string {
	var brought []string
	for _, name := range calculations {
		if s := calc.Standard().Find(name); s != nil {
			brought = append(brought, usual(s)...)
		}
	}
	var blocks []string
	for _, h := range hazardsOf(language) {
		if h.talk.MatchString(title) || slices.Contains(brought, h.ID) {
			blocks = append(blocks, h.example)
		}
	}
	return blocks
}

// usual gives the hazards that a calculation tells of with the usual value of each given.
func usual(s *sheet.Sheet) []string {
	values := map[string]float64{}
	for _, g := range s.Givens {
		if !g.Optional {
			values[g.Name] = g.Typical
		}
	}
	o, err := s.Evaluate(values)
	if err != nil {
		return nil
	}
	return told(o)
}

// told gives the hazards that an outcome tells of.
func told(o sheet.Outcome) []string {
	var ids []string
	for _, said := range o.Said() {
		if said.Hazard != "" {
			ids = append(ids, said.Hazard)
		}
	}
	return ids
}

// warnsInAnyLanguage says whether a text that is still to be translated warns of a hazard in the words it has now.
func (h *hazard) warnsInAnyLanguage(text string) bool {
	for _, language := range [][]hazard{inEnglish(), inSpanish()} {
		for _, other := range language {
			if other.ID == h.ID && other.warn.MatchString(text) {
				return true
			}
		}
	}
	return false
}
