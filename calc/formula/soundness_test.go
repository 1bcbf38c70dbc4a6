package formula_test

import (
	"errors"
	"math"
	"testing"

	"acreleaf/calc/formula"
	"acreleaf/calc/sheet"
)

// Where the ranges of the givens promise that nothing is divided by 0 and no root is taken of less, that is so: every
// answer is a number, or is withheld with a sentence.
func TestNoAnswerIsLostWithoutASentence(t *testing.T) {
	const seed = 5
	t.Logf("random formulas from seed %d", seed)
	w := newWriter(seed, "change", "count", "part", "none", "change", "count", "part", "none")
	answered, withheld := 0, 0
	for range 1500 {
		text := w.plain(1 + w.r.IntN(4))
		if w.r.IntN(3) == 0 {
			text = "sqrt(" + text + ")"
		}
		s := &script{}
		d := &formula.Definition{Name: s.text("random"), Title: "Random", Summary: "Random.",
			Givens: []formula.Given{s.given("change", "1", "-4 to 4"), s.given("count", "2", "1 to 9"),
				s.given("part", "20 %", "0 to 100"), s.given("none", "0.5", "0 to 2")},
			Work:    []formula.Text{s.text("answer = " + text), s.text("all = change + count + part + none")},
			Answers: []formula.Result{s.result("answer", formula.PlainNumber)}}
		made, faults := formula.Make(d)
		for _, f := range faults {
			if f.ID != "formula-zero" && f.ID != "formula-long" {
				t.Fatalf("%s: %s", s.at(f.Span), f.Text)
			}
		}
		if made == nil {
			continue
		}
		for range 8 {
			values := map[string]float64{}
			for _, g := range made.Givens {
				// whole numbers, so that differences are often 0
				values[g.Name] = math.Round(g.Low + w.r.Float64()*(g.High-g.Low))
			}
			_, err := made.Evaluate(values)
			var refused *sheet.Refused
			switch {
			case err == nil:
				answered++
			case errors.As(err, &refused):
				withheld++
			default:
				t.Fatalf("%s for %v: %v", text, values, err)
			}
		}
	}
	if answered < 5000 || withheld < 300 {
		t.Errorf("%d answered and %d withheld: too few to say much", answered, withheld)
	}
}
