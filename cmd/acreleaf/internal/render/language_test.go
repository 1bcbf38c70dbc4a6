package render_test

import (
	"bytes"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/render"
)

// What only a calculation of the catalogue has is marked too, where it is not in the language of the page: the options
// of a choice, and the figures that it is chosen among.
func TestTextsOfChoicesAreMarked(t *testing.T) {
	r := renderer(t, site())
	sheet := soil()
	sheet.Givens = append(sheet.Givens, render.Given{ID: "soil-form", Label: "Zz form", Lang: "fr",
		Kind: render.KindChoice, Choices: []render.Choice{{Text: "Zz solution"}, {Text: "Zz dry"}}})
	page := calculationPage()
	zz := render.Told{Text: "Zz text", Lang: "fr"}
	page.Slips = []render.Told{zz}
	page.Tables = []render.Figures{{ID: "f", Caption: zz, Columns: []render.Told{zz},
		Rows: []render.FigureRow{{Name: "a", Label: zz, Note: zz, Cells: []render.FigureCell{{Text: "1"}}}}}}
	var w bytes.Buffer
	r.Worksheet(&w, sheet)
	r.Calculation(&w, page)
	const texts = 3 + 5
	html := w.String()
	if n := strings.Count(html, "Zz "); n != texts || strings.Count(html, ` lang="fr">Zz `) != n {
		t.Errorf("of %d texts in another language some are not marked:\n%s", n, html)
	}
}
