package render_test

import (
	"bytes"
	"maps"
	"slices"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/drawing"
	"acreleaf/cmd/acreleaf/internal/render"
)

// drawn is a picture of what water brings: 10 in at 2 lb an inch.
func drawn() *render.Drawing {
	rule := drawing.Of("water-nitrogen")
	value := func(cell int, label, number, unit string) *render.DrawnValue {
		shown := render.Shown{Cell: cell, Text: number, After: unit}
		said := shown
		said.After += " of N"
		return &render.DrawnValue{Label: label, There: -1, Shown: shown, Said: said}
	}
	return &render.Drawing{Index: 1, Sheet: 0, Rule: rule, Cells: " 4 5 6/7",
		Places: rule.Work([]drawing.Number{{Low: 10, High: 10, There: true, Sure: true},
			{Low: 2, High: 2, There: true, Sure: true}, {Low: 20, High: 20, There: true, Sure: true}}),
		Values: map[string]*render.DrawnValue{"water": value(4, "Water put on", "10", " in"),
			"per-inch": value(5, "Each inch", "2", " lb"), "nitrogen": value(6, "In all", "20", " lb")}}
}

// writeDrawing writes it with a text in the place of each that comes from an author or a calculation. The rule is ours.
func writeDrawing(text string) []byte {
	d := drawn()
	d.Title = text
	for _, v := range d.Values {
		v.Label, v.Lang = text, text
		v.Shown.Text, v.Shown.Before, v.Shown.After = text, text, text
		v.Said = v.Shown
	}
	r, err := render.New(themeFiles, site())
	if err != nil {
		panic(err)
	}
	var w bytes.Buffer
	r.Drawing(&w, d)
	return w.Bytes()
}

func TestDrawing(t *testing.T) {
	var w bytes.Buffer
	renderer(t, site()).Drawing(&w, drawn())
	for _, want := range []string{
		`<figure class="drawing" data-sheet="0">`, `<figcaption>Nitrogen by depth of water</figcaption>`,
		`aria-hidden="true"`, `<g data-drawn="water-nitrogen 4 5 6/7">`,
		`<circle class="spot" cx="178" cy="143.2" r="5"/>`,
		`The water brings <span data-show="5">2</span>` +
			`<span class="none">no number</span><span class="of"> lb of N</span>. That is `,
		`<tspan data-unit="mm of water">inches of water</tspan>`,
		`<th scope="row">Water put on</th><td><span data-show="4">10</span><span class="of"> in</span></td>`,
	} {
		if !strings.Contains(w.String(), want) {
			t.Errorf("the picture lacks %s", want)
		}
	}
}

// Of a number that is not there the style shows no unit, and the description has a word.
func TestDrawingWithoutANumber(t *testing.T) {
	d := drawn()
	d.Values["nitrogen"].Shown.Text, d.Values["nitrogen"].Said.Text = render.Absent, render.Absent
	var w bytes.Buffer
	renderer(t, site()).Drawing(&w, d)
	for _, want := range []string{
		`<tspan class="void" data-show="6">–</tspan><tspan class="of"> lb</tspan></text>`,
		`That is <span class="void" data-show="6">–</span>` +
			`<span class="none">no number</span><span class="of"> lb of N</span> in`,
		`<td><span class="void" data-show="6">–</span><span class="of"> lb</span></td>`,
		`<td><span data-show="4">10</span><span class="of"> in</span></td>`,
	} {
		if !strings.Contains(w.String(), want) {
			t.Errorf("the picture lacks %s", want)
		}
	}
}

// Each word of a rule is in the words of each language, and each of those is of a rule.
func TestWordsOfDrawings(t *testing.T) {
	asked := map[string]bool{}
	for _, name := range drawing.Calculations() {
		rule := drawing.Of(name)
		for _, label := range rule.Labels {
			asked[label.Word] = true
		}
		for _, s := range slices.Concat(rule.Shapes, rule.Fixed) {
			asked[s.Word] = true
		}
		if len(rule.Groups) > 0 {
			for _, row := range rule.Rows {
				asked[row] = true
			}
		}
	}
	delete(asked, "")
	for _, language := range []string{"en", "es"} {
		words, err := render.LoadWords(themeFiles, language)
		if err != nil {
			t.Fatal(err)
		}
		maps.DeleteFunc(words.Drawing.Labels, func(key, _ string) bool { // of a word that is another in metric units
			usual, second := strings.CutSuffix(key, "-metric")
			return second && asked[usual]
		})
		got, want := slices.Sorted(maps.Keys(words.Drawing.Labels)), slices.Sorted(maps.Keys(asked))
		if !slices.Equal(got, want) {
			t.Errorf("%s has the labels %v, the rules ask for %v", language, got, want)
		}
	}
}
