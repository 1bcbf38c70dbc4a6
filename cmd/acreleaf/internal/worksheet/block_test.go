package worksheet

import (
	"testing"

	"acreleaf/cmd/acreleaf/internal/construct"
)

// Each kind of block has something that binds it. Two are bound elsewhere: see binders.
func TestEveryConstruct(t *testing.T) {
	for k := range construct.All() {
		if elsewhere := k == construct.Calculation || k == construct.Passage; (binders[k] == nil) != elsewhere {
			t.Errorf("nothing binds a %s: binders in block.go", k)
		}
	}
}

// Exercises have names of their own among those of the page, and a worksheet may have the name of one.
func TestExercisesOfOneName(t *testing.T) {
	const worksheet = "```worksheet season\ncalculation: water-nitrogen\nnitrate: 10 ppm NO3-N\nwater: 6 in\n```\n\n"
	for text, want := range map[string]int{worksheet + season: 0, season + "\n" + season: 1} {
		page, messages := bind(t, text)
		if len(messages) != want || len(page.Exercises) != 1 || want > 0 && messages[0].ID != "exercise-twice" {
			t.Errorf("%d exercises are bound, and said is %v: %s", len(page.Exercises), messages, text)
		}
	}
}
