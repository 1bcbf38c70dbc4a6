package sheet_test

import (
	"strings"
	"testing"

	"acreleaf/calc/sheet"
)

var oneOrOther = []sheet.Option{{Name: "one"}, {Name: "other"}}

// What is used in place of a figure of a table is a figure of the same option, and the sheet must say so.
func TestGivensThatBelongToAChoice(t *testing.T) {
	field := func(owners ...*sheet.Given) sheet.Field {
		return sheet.Field{Typical: 60, High: 100, Optional: true, For: owners}
	}
	for _, c := range []struct {
		want  string
		build func(s *sheet.Sheet, way *sheet.Given)
	}{
		{`"own" is used instead of a figure by "way", so it belongs to it`, func(s *sheet.Sheet, way *sheet.Given) {
			own := s.Given("own", "%", field())
			figure := s.Lookup("figure", "%", way, map[string]float64{"one": 1, "other": 2})
			s.Answer("answer", "%", sheet.If(s.Stated(own), own, figure.Times(s.Number(2))), sheet.Says{})
		}},
		{`"own" belongs to "n", which is no choice before it`, func(s *sheet.Sheet, way *sheet.Given) {
			s.Given("own", "%", field(s.Given("n", "", sheet.Field{High: 1})))
			s.Answer("answer", "", way.Plus(s.Number(1)), sheet.Says{})
		}},
		{"", func(s *sheet.Sheet, way *sheet.Given) {
			own := s.Given("own", "%", field(way))
			figure := s.Lookup("figure", "%", way, map[string]float64{"one": 1, "other": 2})
			s.Answer("answer", "%", sheet.If(s.Stated(own), own, figure), sheet.Says{})
		}},
		{"", func(s *sheet.Sheet, way *sheet.Given) { // asked about something else, the figure is not replaced
			own := s.Given("own", "%", field())
			figure := s.Lookup("figure", "%", way, map[string]float64{"one": 1, "other": 2})
			s.Answer("answer", "%", sheet.If(way.Is("one"), s.Number(1), figure), sheet.Says{})
			s.Answer("asked", "%", own, sheet.Says{When: s.Stated(own)})
		}},
	} {
		_, err := sheet.Build("belongs", func(s *sheet.Sheet) {
			c.build(s, s.Choice("way", oneOrOther, sheet.Field{}))
		})
		if c.want == "" && err != nil || c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)) {
			t.Errorf("the error is %v, want %q in it", err, c.want)
		}
	}
}

func TestChoicesBehind(t *testing.T) {
	s := sheet.New("behind", func(s *sheet.Sheet) {
		way, place := s.Choice("way", oneOrOther, sheet.Field{}), s.Choice("place", oneOrOther, sheet.Field{})
		price := s.Given("price", "$", sheet.Field{High: 9, For: []*sheet.Given{place}})
		figure := s.Lookup("figure", "", way, map[string]float64{"one": 1, "other": 2})
		s.Step("plain", "", s.Number(2), sheet.Says{})
		half := s.Step("half", "", figure.Over(s.Number(2)), sheet.Says{})
		s.Answer("cost", "$", price.Times(half), sheet.Says{})
	})
	for name, want := range map[string]string{
		"plain": "", "half": "way", "price": "place", "cost": "way place", "way": "way",
	} {
		var names []string
		for _, choice := range s.ChoicesBehind(name) {
			names = append(names, choice.Name)
		}
		if got := strings.Join(names, " "); got != want {
			t.Errorf("behind %s are %q, want %q", name, got, want)
		}
	}
}
