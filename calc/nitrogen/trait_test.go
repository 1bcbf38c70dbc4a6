package nitrogen

import (
	"os"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/fact"
)

// The traits of each material are those that a person wrote down for it, so that a trait brings the hazards that are
// listed there, or the test of the catalogue fails.
func TestTraitsAreThoseOfThePersonWhoReadTheLabels(t *testing.T) {
	text, err := os.ReadFile("../testdata/hazards.txt")
	if err != nil {
		t.Fatal(err)
	}
	_, after, _ := strings.Cut(string(text), "\nholds:")
	list, _, _ := strings.Cut(after, "\nbrings:")
	holds := map[string][]string{}
	for line := range strings.Lines(list) {
		option, things, _ := strings.Cut(strings.TrimSpace(line), " ")
		for thing := range strings.SplitSeq(things, ",") {
			holds[option] = append(holds[option], strings.TrimSpace(thing))
		}
	}
	for _, m := range materials {
		for _, trait := range fact.Traits() {
			name := strings.TrimPrefix(fact.KeepID(trait), "keep-")
			if has, written := m.traits&trait != 0, slices.Contains(holds[m.name], name); has != written || name == "" {
				t.Errorf("%s has the trait %q: %v, and it is written down: %v", m.name, name, has, written)
			}
		}
	}
}
