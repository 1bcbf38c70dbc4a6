package nitrogen

import (
	"math"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/sheet"
)

// sameCell compares two figures, of which both may be unknown, and their sources.
func sameCell(a, b sheet.Cell) bool {
	return math.Float64bits(a.Value) == math.Float64bits(b.Value) && slices.Equal(a.Sources, b.Sources)
}

// A page prints what the calculations use: each figure of the table, and each of its sources.
func TestMaterialFacts(t *testing.T) {
	all := Materials("en")
	if len(all) != len(materials) {
		t.Fatalf("%d materials, and %d are in the table", len(all), len(materials))
	}
	for i, f := range all {
		m := materials[i]
		option := MaterialAmount.FindGiven("material").Choices[i]
		inLabel := strings.Contains(strings.ToLower(option.Label), strings.ToLower(f.Label))
		if f.Name != m.name || option.Name != m.name || strings.Contains(f.Label, f.Name) || !inLabel {
			t.Errorf("%s is called %q, as a choice %q", f.Name, f.Label, option.Label)
		}
		if !sameCell(f.Nitrogen, m.nitrogen) || !sameCell(f.Gallon, m.gallon) || !sameCell(f.Lime, m.lime) {
			t.Errorf("%s has other figures than the table: %+v", f.Name, f)
		}
		if sum := f.Nitrate + f.Ammonium + f.Urea; sum < 99.5 || sum > 100.5 {
			t.Errorf("%s: its forms come to %g %%", f.Name, sum)
		}
		if m.traits == 0 && len(f.Apart) > 0 {
			t.Errorf("%s has no trait, and is kept from %v", f.Name, f.Apart)
		}
	}
	// by hand, from calc/testdata/pairs.txt: what a grower must know of acid first
	acid := all[len(all)-1]
	if acid.Name != "15-0-0-16S" || acid.Apart[0].With != "ammonia" || acid.Apart[0].Signal.String() != "DANGER" {
		t.Errorf("%s is kept from %v", acid.Name, acid.Apart)
	}
}
