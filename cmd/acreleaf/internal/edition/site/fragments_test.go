package site

import (
	"testing"

	"acreleaf/calc"
	"acreleaf/cmd/acreleaf/internal/construct"
)

// Each kind of block and each scheme of figures has something that writes it. Package markdown prints a calculation
// itself, and asks Passage for a passage.
func TestEveryConstruct(t *testing.T) {
	for k := range construct.All() {
		if elsewhere := k == construct.Calculation || k == construct.Passage; (blocks[k] == nil) != elsewhere {
			t.Errorf("nothing writes a %s: blocks in fragments.go", k)
		}
	}
	for s := range construct.AllSchemes() {
		if figures[s] == nil {
			t.Errorf("nothing writes a figure of %s: figures in fragments.go", s)
		}
	}
}

// Each column of a table that a page can print shows something.
func TestEveryColumn(t *testing.T) {
	for _, r := range calc.References() {
		for _, column := range r.Columns[1:] {
			if r.Name != "material" || materialCells[column] == nil {
				t.Errorf("nothing shows %s of table %s: referenceview.go", column, r.Name)
			}
		}
	}
}
