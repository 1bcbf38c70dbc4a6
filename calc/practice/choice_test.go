package practice_test

import (
	"slices"
	"testing"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/practice"
	"acreleaf/calc/sheet"
)

const triple, sulfate = "15-15-15", "21-0-0-24S"

// loads are two materials for the same nitrogen, whose pounds are asked for; then whether the first is more than
// 100 lb, and the two in order. A material of 15 percent takes 20 ÷ 0.15 = 133 lb for 20 lb of nitrogen, and one of
// 21 percent 20 ÷ 0.21 = 95.2 lb.
func loads(t *testing.T, first, second string) *practice.Card {
	t.Helper()
	use := func(name, material string) *practice.Use {
		s := nitrogen.MaterialAmount
		return &practice.Use{Name: name, Sheet: s, Fixed: map[string]sheet.Entry{
			"nitrogen": entry(s, "nitrogen", "20 lb N/ac fed"), "material": entry(s, "material", material)}}
	}
	over := func(p *sheet.Passage, find func(string) *sheet.Use) sheet.Term {
		v, _ := p.Value(find("first"), "product")
		return v.More(p.Quantity(100, v))
	}
	e := &practice.Exercise{Seed: "test", Uses: []*practice.Use{use("first", first), use("second", second)},
		Asks: []practice.Ask{{Use: "first", Result: "product", Digits: 3}, {Use: "second", Result: "product", Digits: 3}},
		Choices: []*practice.Choice{{Question: "Is it more than one trip?", Options: []practice.Option{
			{Text: "yes", When: over},
			{Text: "no", When: func(p *sheet.Passage, find func(string) *sheet.Use) sheet.Term { return over(p, find).Not() }},
		}}, {Question: "Put them in order.", Items: []practice.Item{
			{Text: []practice.Piece{{Text: "the "}, {Use: "first", Given: "material"}}, Use: "first", Result: "product"},
			{Text: []practice.Piece{{Text: "the second"}}, Use: "second", Result: "product"},
		}}}}
	return deal(t, e, 1)
}

func verdicts(marks []practice.Mark) []practice.Verdict {
	var list []practice.Verdict
	for _, m := range marks {
		list = append(list, m.Verdict)
	}
	return list
}

// A choice and an order are marked from the numbers of the card; one that follows from an earlier answer that is wrong
// is carried on.
func TestMarkChoices(t *testing.T) {
	const right, carried, unknown, slipped = practice.Right, practice.Carried, practice.Unknown, practice.Slipped
	for _, c := range []struct {
		first, second string
		texts         []string
		want          []practice.Verdict
	}{
		{triple, sulfate, []string{"133 lb/ac", "95.2 lb/ac", "1", "21"}, []practice.Verdict{right, right, right, right}},
		{triple, sulfate, []string{"133 lb/ac", "95.2 lb/ac", "2", "12"}, []practice.Verdict{right, right, unknown, unknown}},
		{sulfate, triple, []string{"95.2 lb/ac", "133 lb/ac", "2", "12"}, []practice.Verdict{right, right, right, right}},
		// 20 × 0.15 is 3 lb: the slip of who multiplies by the share. Then one trip is enough, and the first is the lighter.
		{triple, sulfate, []string{"3 lb/ac", "95.2 lb/ac", "2", "12"}, []practice.Verdict{slipped, right, carried, carried}},
		{triple, sulfate, []string{"3 lb/ac", "95.2 lb/ac", "1", "21"}, []practice.Verdict{slipped, right, right, right}},
	} {
		card := loads(t, c.first, c.second)
		if got := verdicts(card.Mark(hear(t, card, "en", c.texts...))); !slices.Equal(got, c.want) {
			t.Errorf("%s and %s, %v: %v, want %v", c.first, c.second, c.texts, got, c.want)
		}
	}
}

func TestKeyOfChoices(t *testing.T) {
	card := loads(t, triple, sulfate)
	parts := card.Parts()
	if got := card.Key(parts[2]); got != "yes" {
		t.Errorf("the right option is %q", got)
	}
	label := card.Given("first", "material")
	if got, want := card.Key(parts[3]), "the second; the "+label; got != want || label == "" {
		t.Errorf("the right order is %q, want %q", got, want)
	}
	for _, p := range parts[2:] {
		if problem := card.Undecided(p); problem != "" {
			t.Error(problem)
		}
	}
	tied := loads(t, triple, triple)
	if problem := tied.Undecided(tied.Parts()[3]); problem == "" {
		t.Error("two loads of 133 lb are in an order")
	}
}

// What is no choice is no answer: an option that is none, a place twice, a place that is missing.
func TestReadChoices(t *testing.T) {
	card := loads(t, triple, sulfate)
	for part, texts := range map[int][]string{
		2: {"0", "3", "1.5", "yes", "12"}, 3: {"1", "11", "13", "123", "1 2", "ab"},
	} {
		for _, text := range texts {
			if h, err := card.Parts()[part].Read(text, "en"); err == nil {
				t.Errorf("%q is read as %v", text, h)
			}
		}
	}
	if h, err := card.Parts()[3].Read("  ", "en"); err != nil || h.Given {
		t.Errorf("nothing is read as %v, %v", h, err)
	}
}
