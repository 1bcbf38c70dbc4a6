package calc_test

import (
	"slices"
	"testing"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
)

func TestCatalogueWithMoreLeavesTheFirstAsItWas(t *testing.T) {
	c := calc.Standard()
	own, err := sheet.Build("own", func(s *sheet.Sheet) { s.Answer("answer", "in", s.Zero("in"), sheet.Says{}) })
	if err != nil {
		t.Fatal(err)
	}
	more := c.With([]*sheet.Sheet{own}, []string{"broken", "tree-rate"})
	if more.Find("own") != own || !slices.Equal(more.Names(), append(c.Names(), "own")) {
		t.Errorf("with one more: %q", more.Names())
	}
	if more.Find("tree-rate") == nil || more.Faulty("tree-rate") || !more.Faulty("broken") || more.Faulty("other") {
		t.Error("what is faulty is a calculation that there is not, and that was said to be")
	}
	if c.Find("own") != nil || c.Faulty("broken") {
		t.Error("the first catalogue was changed")
	}
}
