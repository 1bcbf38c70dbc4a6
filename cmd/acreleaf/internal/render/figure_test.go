package render_test

import (
	"bytes"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/render"
)

// TestFigureOnOneLine asks which figures of the text may be broken at the end of a line: those that are phrases, since
// a narrow column has no room for one, and no number with its unit.
func TestFigureOnOneLine(t *testing.T) {
	r := renderer(t, site())
	for text, broken := range map[string]bool{
		"80 %": false, "10 mg/L NO3-N": false, "15 a 20 min": false, "83.8 árboles/ac": false,
		"1.59 lb/ac per in": true, "may harm pregnant women": true,
	} {
		for name, write := range map[string]func(*bytes.Buffer){
			"worked":  func(w *bytes.Buffer) { r.Worked(w, &render.Worked{Href: "#x", Text: text}) },
			"sourced": func(w *bytes.Buffer) { r.Sourced(w, &render.Sourced{Text: text}) },
			"record":  func(w *bytes.Buffer) { r.Recorded(w, &render.Recorded{Text: text}) },
		} {
			var w bytes.Buffer
			write(&w)
			if got := strings.Contains(w.String(), ` phrase"`); got != broken {
				t.Errorf("%s %q: may be broken: %t, want %t\n%s", name, text, got, broken, w.String())
			}
		}
	}
}
