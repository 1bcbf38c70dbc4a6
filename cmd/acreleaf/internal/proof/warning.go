package proof

import (
	"slices"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
)

// Warnings gives the signal blocks that a page needs by its title and by what its calculations say of their usual
// numbers, ready to be in its text.
func Warnings(language, title string, calculations []string) []string {
	var usual []sheet.Outcome
	for _, name := range calculations {
		if s := calc.Standard().Find(name); s != nil {
			usual = append(usual, usually(s)...)
		}
	}
	var blocks []string
	for _, h := range hazardsOf(language) {
		tells := func(o sheet.Outcome) bool { return o.Tells(h.ID) }
		if h.talk.MatchString(title) || slices.ContainsFunc(usual, tells) {
			blocks = append(blocks, h.example)
		}
	}
	return blocks
}

// usually works a calculation with the usual value of each given. There is none where that has no answer.
func usually(s *sheet.Sheet) []sheet.Outcome {
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
	return []sheet.Outcome{o}
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
