package proof

import "slices"

// Warnings gives the signal blocks that a page needs by its title and its calculations, ready to stand in its text.
func Warnings(language, title string, calculations []string) []string {
	var blocks []string
	for _, h := range hazardsOf(language) {
		works := func(name string) bool { return slices.Contains(h.calculations, name) }
		if h.talk.MatchString(title) || slices.ContainsFunc(calculations, works) {
			blocks = append(blocks, h.example)
		}
	}
	return blocks
}

// warnsInAnyLanguage says whether a text that is still to be translated warns of a hazard in the words it has now.
func (h *hazard) warnsInAnyLanguage(text string) bool {
	for _, language := range [][]hazard{englishHazards(), spanishHazards()} {
		for _, other := range language {
			if other.name == h.name && other.warn.MatchString(text) {
				return true
			}
		}
	}
	return false
}
