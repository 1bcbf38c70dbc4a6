package worksheet

import (
	"slices"
	"strings"
	"testing"

	"acreleaf/calc"
	"acreleaf/cmd/acreleaf/internal/drawing"
)

// Each rule draws a calculation that there is, and takes values that it has.
func TestRulesDrawCalculations(t *testing.T) {
	for _, name := range drawing.Calculations() {
		s, r := calc.Standard().Find(name), drawing.Of(name)
		if s == nil {
			t.Errorf("there is no calculation %q to draw", name)
			continue
		}
		for _, label := range r.Labels {
			if label.Value != "" && !slices.Contains(slices.Concat(r.Takes, r.Groups), label.Value) {
				t.Errorf("the picture of %s has a label of %q, which it does not take", name, label.Value)
			}
		}
		for _, value := range slices.Concat(r.Takes, r.Groups) {
			if !slices.Contains(s.Names(), value) {
				t.Errorf("the picture of %s takes %q, which the calculation does not have", name, value)
			}
		}
		for _, row := range r.Rows {
			if len(r.Groups) == 0 && !slices.Contains(r.Takes, row) {
				t.Errorf("the table of the picture of %s has %q, which it does not take", name, row)
			}
		}
	}
}

const well = "```worksheet well\ncalculation: water-nitrogen\nnitrate: 7 ppm NO3-N\nwater: 6 in\n```\n\n"

func TestDrawings(t *testing.T) {
	p, said := bind(t, "```drawing\nof: well\n```\n\n"+well+"```drawing\nof: well\ntitle: Water\n```\n")
	if len(said) > 0 || len(p.drawings) != 2 {
		t.Fatalf("%d drawings are bound, with %v", len(p.drawings), said)
	}
	for block, index := range map[int]int{0: 1, 2: 2} {
		d := p.drawings[block]
		if d == nil || d.Of.Block.Name != "well" || d.Rule.Of != "water-nitrogen" || d.Index != index {
			t.Errorf("block %d is the drawing %+v", block, d)
		}
	}
	if d := p.drawings[2]; d.Title != "Water" {
		t.Errorf("the title is %q", d.Title)
	}
}

func TestDrawingsThatAreNone(t *testing.T) {
	for text, want := range map[string]string{
		"of: wel":            "drawing-of",
		"title: Water":       "drawing-of",
		"off: well":          "key-unknown",
		"of: well\nsize: 3":  "key-unknown",
		"of: spacing":        "drawing-unfit",
		"of: well\nof: well": "key-twice",
		"of:":                "value-empty",
		"of: broken":         "calculation-unknown",
	} {
		page := well + "```worksheet spacing\ncalculation: tree-density\ntree: 18 ft\nrow: 22 ft\n```\n\n"
		if strings.Contains(text, "broken") {
			page += "```worksheet broken\ncalculation: water-nitrate\n```\n\n"
		}
		p, said := bind(t, page+"```drawing\n"+text+"\n```\n")
		if len(said) != 1 || said[0].ID != want {
			t.Errorf("%q: %v, %d drawings, want %q", text, said, len(p.drawings), want)
		}
	}
}
