package render_test

import (
	"bytes"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/render"
)

// materials is a table of two rows with every kind of part.
func materials() *render.ReferenceTable {
	one := func(words render.ReferenceWord, text string) render.ReferenceCell {
		return render.ReferenceCell{Parts: []render.ReferencePart{{Words: words, Text: text}}}
	}
	return &render.ReferenceTable{
		Index: 3, Table: "material", Columns: []string{"grade", "forms", "weight", "lime", "apart"},
		Rows: []render.ReferenceRow{
			{Name: "UAN-32", Cells: []render.ReferenceCell{
				{Parts: []render.ReferencePart{{Words: render.Nitrate, Text: "25 %"}, {Words: render.Urea, Text: "50 %"}},
					Sources: []int{2}},
				one(render.Plain, "11.06 lb"), one(render.LowersPH, "1.78 lb"),
				{Parts: []render.ReferencePart{{Signal: "WARNING", Text: "strong acid"}, {Signal: "NOTICE", Text: "calcium"}},
					Sources: []int{4, 1}},
			}},
			{Name: "15-15-15", Cells: []render.ReferenceCell{
				one(render.OnLabel, ""), one(render.Dry, ""), one(render.RaisesPH, "2 lb"), one(render.NothingListed, ""),
			}},
		},
	}
}

// Each sentence and each column has words in each language, and a part shows its text in them.
func TestReferenceWords(t *testing.T) {
	for _, language := range []string{"en", "es"} {
		facts := site()
		facts.Language = language
		r, err := render.New(themeFiles, facts)
		if err != nil {
			t.Fatal(err)
		}
		for words := render.Plain; words <= render.NothingListed; words++ {
			var w bytes.Buffer
			r.ReferenceTable(&w, &render.ReferenceTable{Columns: []string{"grade", "apart"},
				Rows: []render.ReferenceRow{{Name: "x", Cells: []render.ReferenceCell{
					{Parts: []render.ReferencePart{{Words: words, Text: "7 lb"}}}}}}})
			_, cell, _ := strings.Cut(w.String(), "</b><span>")
			cell, _, _ = strings.Cut(cell, "<")
			if cell == "" || words == render.Plain && cell != "7 lb" {
				t.Errorf("%s: words %d show %q", language, words, cell)
			}
		}
	}
}
