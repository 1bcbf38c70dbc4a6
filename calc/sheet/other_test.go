package sheet_test

import (
	"slices"
	"testing"

	"acreleaf/calc/sheet"
)

// spread takes pounds or gallons of a product of 10 lb/gal.
var spread = sheet.New("spread", func(s *sheet.Sheet) {
	amount := s.Given("amount", "lb product/ac", sheet.Field{
		Written: "lb/ac", Label: "Amount", Typical: 100, Low: 0, High: 5000,
		Else: sheet.Other{Unit: "gal product/ac", Written: "gal/ac", Low: 0, High: 500},
	})
	density := s.Constant("density", "10 lb product/gal product", known)
	s.Answer("weight", "lb product/ac", sheet.If(amount.IsOther(), amount.AsOther().Times(density), amount),
		sheet.Says{})
})

func TestAGivenMayBeOfTwoKinds(t *testing.T) {
	for _, c := range []struct {
		text, weight, amount string
		work                 []string
	}{
		{"100 lb/ac", "100 lb product/ac", "100 lb/ac", []string{"weight = amount = 100 lb/ac = 100 lb product/ac"}},
		{"20 gal/ac", "200 lb product/ac", "20 gal/ac",
			[]string{"weight = amount × 10 lb product/gal product = 20 gal/ac × 10 lb product/gal product = 200 lb product/ac"}},
	} {
		o := workedOut(t, spread, "amount="+c.text)
		if got := o.Text("weight"); got != c.weight {
			t.Errorf("%s is %s, want %s", c.text, got, c.weight)
		}
		if got := o.Text("amount"); got != c.amount {
			t.Errorf("the amount is %s, want %s", got, c.amount)
		}
		if got := o.Work(); !slices.Equal(got, c.work) {
			t.Errorf("the work is %q, want %q", got, c.work)
		}
	}
	g := &sheet.Graph{}
	g.Add("a", spread, nil)
	if err := g.CheckLink(weighed, "amount", sheet.Link{Use: "a", Name: "amount"}); err == nil ||
		err.Error() != "a.amount may be lb/ac or gal/ac, so nothing can take it" {
		t.Errorf("a link from a given of two kinds: %v", err)
	}
	for text, want := range map[string]string{
		"-1 gal/ac":  "-1 gal/ac is outside what this calculation takes: 0 to 500 gal/ac",
		"501 gal/ac": "501 gal/ac is outside what this calculation takes: 0 to 500 gal/ac",
		"3 oz/tree":  "3 oz/tree is a mass for each tree; this needs lb/ac, or gal/ac; write for example 100 lb/ac",
	} {
		if _, err := spread.FindGiven("amount").Read(text); err == nil || err.Error() != want {
			t.Errorf("%q gives %v, want %s", text, err, want)
		}
	}
}

// price is by the ton or by the gallon of 10 lb, and may be left empty.
var price = sheet.New("price", func(s *sheet.Sheet) {
	price := s.Given("price", "$/ton product", sheet.Field{
		Written: "$/ton", Label: "Price", Typical: 400, Low: 0, High: 5000, Optional: true,
		Else: sheet.Other{Unit: "$/gal", Low: 0, High: 50},
	})
	density := s.Constant("density", "10 lb product/gal", known)
	s.Answer("cost", "$/lb product", sheet.If(price.IsOther(), price.AsOther().Over(density), price),
		sheet.Says{When: s.Stated(price)})
	s.Answer("asked", "", sheet.If(s.Stated(price), s.Number(1), s.Number(0)), sheet.Says{})
})

func TestAGivenOfTwoKindsMayBeLeftEmpty(t *testing.T) {
	for _, c := range []struct {
		givens []string
		cost   float64
		asked  float64
	}{
		{nil, 0, 0}, {[]string{"price=400 $/ton"}, 0.2, 1}, {[]string{"price=3 $/gal"}, 0.3, 1},
	} {
		o := workedOut(t, price, c.givens...)
		if there := o.There("cost"); there != (c.asked == 1) {
			t.Errorf("%q: a cost is there: %v", c.givens, there)
		}
		if cost, asked := o.Value("cost").Value, o.Value("asked").Value; cost != c.cost || asked != c.asked {
			t.Errorf("%q: the cost is %v and asked is %v, want %v and %v", c.givens, cost, asked, c.cost, c.asked)
		}
	}
}

// weighed takes pounds alone.
var weighed = sheet.New("weighed", func(s *sheet.Sheet) {
	amount := s.Given("amount", "lb product/ac", sheet.Field{Label: "Amount", Typical: 100, Low: 0, High: 5000})
	s.Answer("twice", "lb product/ac", amount.Times(s.Number(2)), sheet.Says{})
})

// A given of two kinds follows one that takes the same two, whichever of them that is.
func TestAGivenOfTwoKindsFollowsItsLike(t *testing.T) {
	g := &sheet.Graph{}
	g.Add("first", spread, nil)
	g.Add("second", spread, map[string]sheet.Link{"amount": {Use: "first", Name: "amount"}})
	g.Add("third", spread, map[string]sheet.Link{"amount": {Use: "second", Name: "amount"}})
	if err := g.Close(); err != nil {
		t.Fatal(err)
	}
	low, high := make([]float64, g.Program.Cells), make([]float64, g.Program.Cells)
	for text, want := range map[string]string{"100 lb/ac": "100 lb product/ac", "20 gal/ac": "200 lb product/ac"} {
		entry, err := spread.FindGiven("amount").Read(text)
		if err != nil {
			t.Fatal(err)
		}
		clear(low)
		clear(high)
		g.Find("first").Enter(low, high, "amount", entry)
		g.Program.Spread(low, high)
		for _, use := range []string{"second", "third"} {
			o := sheet.Outcome{Use: g.Find(use), Cells: low, High: high}
			if o.Text("weight") != want || o.Text("amount") != text {
				t.Errorf("%s, followed by %s, is %s and weighs %s", text, use, o.Text("amount"), o.Text("weight"))
			}
			if _, watched := g.Find(use).Outside("amount"); watched {
				t.Errorf("%s is watched for what the field that it takes its number from refuses", use)
			}
		}
	}
}
