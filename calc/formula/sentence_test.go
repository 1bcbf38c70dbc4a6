package formula_test

import (
	"slices"
	"testing"

	"acreleaf/calc/formula"
)

// The sentence of an author's calculation is said for the first answer, and a case of it where its question is a yes.
func TestSentenceOfACalculation(t *testing.T) {
	s := &script{}
	made, faults := formula.Make(&formula.Definition{
		Name: s.text("tanks"), Title: "Tanks", Summary: "Tanks.",
		Givens:   []formula.Given{s.given("load", "40 gal/ac", "0 to 90"), s.given("area", "3 ac", "0 to 100")},
		Work:     []formula.Text{s.text("all = load * area"), s.text("half = all / 2")},
		Answers:  []formula.Result{s.result("all", "gal"), s.result("half", "gal")},
		Sentence: s.text("Mix {all}, {load} on {area bare} acres."),
		Cases: []formula.Check{
			{When: s.text(`all <= "0 gal"`), Say: s.text("Mix none.")},
			{When: s.text(`all < "10 gal"`), Say: s.text("A hand sprayer will do for {all}.")},
		},
	})
	if faults != nil {
		t.Fatalf("%+v", faults)
	}
	for area, want := range map[float64]string{
		3: "Mix 120 gal, 40 gal an acre on 3 acres.", 0.2: "A hand sprayer will do for 8 gal.", 0: "Mix none.",
	} {
		o, err := made.Evaluate(map[string]float64{"load": 40, "area": area})
		if err != nil || !slices.Equal(o.Words(), []string{want}) {
			t.Errorf("on %v ac: %q, %v; want %q", area, o.Words(), err, want)
		}
	}
	if made.Headline.Answer != "all" {
		t.Errorf("the answer in words is %q", made.Headline.Answer)
	}
}

func TestFaultsOfASentence(t *testing.T) {
	for _, c := range []struct {
		sentence, when, say, id string
	}{
		{"It is {c}.", "", "", "remark-name"},
		{"It is {a bare}.", "a > 2", "It is {c bare}.", "remark-name"},
		{"It is {a}.", "a + 2", "It is much.", "formula-question"},
		{"It is {a}.", "c > 2", "It is much.", "formula-name"},
		{"", "a > 2", "It is much.", "calculation-sentence"},
	} {
		s := &script{}
		d := &formula.Definition{Name: s.text("one"), Title: "One", Summary: "One.",
			Givens: []formula.Given{s.given("a", "1", "0 to 9")}, Work: []formula.Text{s.text("b = a + 1")},
			Answers: []formula.Result{s.result("b", formula.PlainNumber)}, Sentence: s.text(c.sentence)}
		if c.say != "" {
			d.Cases = []formula.Check{{When: s.text(c.when), Say: s.text(c.say)}}
		}
		made, faults := formula.Make(d)
		if made != nil || len(faults) != 1 || faults[0].ID != c.id {
			t.Errorf("%+v gives %+v, want %s", c, faults, c.id)
		}
	}
}
