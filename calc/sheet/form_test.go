package sheet_test

import (
	"strings"
	"testing"

	"acreleaf/calc/sheet"
)

// harvest is a crop that may be told as kernels or in the shell.
var harvest = sheet.New("harvest", func(s *sheet.Sheet) {
	load := s.Given("load", "lb crop/ac", sheet.Field{
		Label: "Load", Typical: 1000, Low: 0, High: 9000, Forms: []string{"kernels", "in-shell"},
	})
	for _, form := range load.Forms {
		s.Answer(form, "", sheet.If(load.IsForm(form), s.Number(1), s.Number(0)), sheet.Says{})
	}
	s.Answer("load-again", "lb crop/ac", load, sheet.Says{})
})

// Each form is told apart from the others, and from a crop of no form.
func TestAGivenIsToldInOneForm(t *testing.T) {
	for i, text := range []string{"1000 lb crop/ac", "1000 lb kernels/ac", "1000 lb in-shell/ac"} {
		e, err := harvest.FindGiven("load").Read(text)
		if err != nil {
			t.Fatal(err)
		}
		if e.Form != i || e.Other || e.Value != 1000 {
			t.Errorf("%s is read as %+v, want form %d and 1000", text, e, i)
		}
		o := workedOut(t, harvest, "load="+text)
		kernels, shell := o.Value("kernels").Value == 1, o.Value("in-shell").Value == 1
		if kernels != (i == 1) || shell != (i == 2) {
			t.Errorf("%s: kernels %v, in the shell %v", text, kernels, shell)
		}
		if got := o.Range("load").Unit.String(); !strings.HasSuffix(text, got) {
			t.Errorf("%s is told in %s", text, got)
		}
	}
}

// A share of mass (lb per lb) that is given in ppm is shown times a million; the page has that factor in data-scale.
// A % is a hundredth everywhere, and what has no hidden power has no scale.
func TestAPageIsToldTheHiddenPower(t *testing.T) {
	s := sheet.New("parts", func(s *sheet.Sheet) {
		part := s.Given("part", "lb", sheet.Field{Label: "Part", Typical: 3, Low: 0, High: 9})
		whole := s.Given("whole", "lb", sheet.Field{Label: "Whole", Typical: 2000, Low: 1, High: 9000})
		s.Answer("millionths", "ppm", part.Over(whole), sheet.Says{})
		s.Answer("share", "%", part.Over(whole), sheet.Says{})
		s.Answer("twice", "lb", part.Times(s.Number(2)), sheet.Says{})
		s.Answer("same", "lb", part, sheet.Says{})
	})
	o := workedOut(t, s, "part=3 lb", "whole=2000 lb")
	want := map[string]string{"millionths": `<mrow data-scale="1e+06">`}
	for _, mark := range []sheet.Marker{nil, func(int) string { return "" }} {
		for _, line := range o.Lines(mark) {
			got, _, _ := strings.Cut(line.Numbers[0], "<mo")
			scale := want[line.Result.Name]
			if mark == nil || scale == "" {
				scale = "<mrow>"
			}
			if !strings.HasSuffix(got, scale) {
				t.Errorf("%s, marked %v, begins with %s, want %s", line.Result.Name, mark != nil, got, scale)
			}
		}
	}
}

// What is one value as it stands has one sign of equality before its number, and its digits: an answer that is a step,
// a figure of a table or a given of a second kind. Twice that has two.
func TestOneValueIsPrintedOnce(t *testing.T) {
	s := sheet.New("values", func(s *sheet.Sheet) {
		amount := s.Given("amount", "lb product/ac", sheet.Field{
			Label: "Amount", Typical: 100, Low: 0, High: 5000, Else: sheet.Other{Unit: "gal product/ac", Low: 0, High: 500},
		})
		kind := s.Choice("kind", oneOrOther, sheet.Field{Label: "Kind"})
		figure := s.Step("figure", "lb/gal", s.Lookup("listed", "lb/gal", kind, map[string]float64{"one": 11.06, "other": 2}),
			sheet.Says{})
		s.Answer("again", "lb/gal", figure, sheet.Says{})
		s.Answer("gallons", "gal product/ac", amount.AsOther(), sheet.Says{When: amount.IsOther()})
		s.Answer("twice", "gal product/ac", amount.AsOther().Times(s.Number(2)), sheet.Says{When: amount.IsOther()})
	})
	for amount, gallons := range map[string]string{
		"20.125 gal product/ac": "20.125", "20 to 30 gal product/ac": "20 to 30",
	} {
		o := workedOut(t, s, "amount="+amount, "kind=one")
		want := map[string]string{"figure": "11.06", "again": "11.06", "gallons": gallons}
		for _, line := range o.Lines(func(int) string { return "" }) {
			number, alone := want[line.Result.Name]
			if signs := strings.Count(line.Numbers[0], ">=<"); line.Taken && (signs == 1) != alone {
				t.Errorf("%s has %d signs of equality: %s", line.Result.Name, signs, line.Numbers[0])
			}
			if line.Taken && !strings.Contains(line.Numbers[0], "<mn>"+number) {
				t.Errorf("%s has no %s: %s", line.Result.Name, number, line.Numbers[0])
			}
		}
	}
}

// A remark for a part of a range tells what may be left out as it is where it is there: the lesser of n and 4, from 4.
func TestARemarkTellsNoValueThatIsLeftOut(t *testing.T) {
	s := sheet.New("capped", func(s *sheet.Sheet) {
		n := s.Given("n", "", sheet.Field{Label: "N", Typical: 1, Low: 0, High: 9})
		s.Answer("least", "", s.Number(4).Least(n), sheet.Says{When: n.AtLeast(s.Number(4))})
		s.Say(sheet.Note, n.AtMost(s.Number(5)), "It is {least}.")
	})
	said := workedOut(t, s, "n=2 to 6").Said()
	if want := "For some of these numbers: It is 4."; len(said) != 1 || said[0].Text != want {
		t.Errorf("said %q, want %q", said, want)
	}
}
