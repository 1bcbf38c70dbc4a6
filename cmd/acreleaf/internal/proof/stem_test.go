package proof

import (
	"strings"
	"testing"
)

// A text that only the pattern finds, and not one of the stems that are looked for first, would be passed over.
func TestStemsAreInWhatTalksOfBackflow(t *testing.T) {
	for language, words := range map[string][]string{
		"en": {"Inject", "injects", "injected", "injecting", "injection", "INJECTORS", "chemigate", "fertigation"},
		"es": {"Inyecte", "inyectores", "inyección", "INYECCIONES", "quimigación", "fertirriego"},
	} {
		for i := range hazardsOf(language) {
			h := &hazardsOf(language)[i]
			if h.ID != "backflow" {
				continue
			}
			for _, word := range words {
				if small := strings.ToLower(word); !h.talk.MatchString(word) || !anyIn(small, h.talks) || !h.mayBeIn(small) {
					t.Errorf("%s: %q is passed over", language, word)
				}
			}
		}
	}
}
