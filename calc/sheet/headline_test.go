package sheet_test

import (
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/sheet"
)

// budgetInWords is a sheet of three cases: nothing is short, little is, and more.
func budgetInWords(s *sheet.Sheet) {
	need := s.Given("need", "lb N/ac", sheet.Field{Label: "Need", Typical: 30, High: 100})
	credits := s.Given("credits", "lb N/ac", sheet.Field{Label: "Credits", Typical: 20, High: 100})
	apply := s.Answer("apply", "lb N/ac", s.Zero("lb N/ac").Most(need.Minus(credits)),
		sheet.Says{Label: "Apply", Also: "kg N/ha"})
	little := s.Given("little", "lb N/ac", sheet.Field{Label: "Little", Typical: 5, High: 50})
	s.InWords("apply",
		sheet.When(apply.AtMost(s.Zero("lb N/ac")), "Buy none."),
		sheet.When(apply.Less(little), "Put on a little: {apply}."),
		sheet.Otherwise("Put on {apply}; soil and water bring the other {credits bare}."))
}

func TestInWords(t *testing.T) {
	s := sheet.New("budget", budgetInWords)
	for _, c := range []struct {
		need, credits string
		want          []string
	}{
		{"30 lb N/ac", "20 lb N/ac", []string{"Put on 10 lb of nitrogen an acre; soil and water bring the other 20."}},
		{"30 lb N/ac", "30 lb N/ac", []string{"Buy none."}},
		{"32 lb N/ac", "30 lb N/ac", []string{"Put on a little: 2 lb of nitrogen an acre."}},
		{"34 to 40 lb N/ac", "30 lb N/ac", []string{
			"For some of these numbers: Put on a little: 4 to 5 lb of nitrogen an acre.",
			"For some of these numbers: Put on 5 to 10 lb of nitrogen an acre; soil and water bring the other 30.",
		}},
	} {
		got := words(t, s, "need="+c.need, "credits="+c.credits, "little=5 lb N/ac")
		if !slices.Equal(got, c.want) {
			t.Errorf("a need of %s with %s: %q, want %q", c.need, c.credits, got, c.want)
		}
	}
	if s.Origin != "budgetInWords" {
		t.Errorf("it is built by %q", s.Origin)
	}
	if s.Headline.Answer != "apply" {
		t.Errorf("the headline is %q", s.Headline.Answer)
	}
}

func words(t *testing.T, s *sheet.Sheet, givens ...string) []string {
	t.Helper()
	entries := map[string]sheet.Entry{}
	for _, given := range givens {
		name, text, _ := strings.Cut(given, "=")
		entry, err := s.FindGiven(name).Read(text)
		if err != nil {
			t.Fatal(err)
		}
		entries[name] = entry
	}
	o, err := sheet.NewBench(s).Work(entries)
	if err != nil {
		t.Fatal(err)
	}
	return o.Words()
}

// What a result is left out by is a question.
func TestAResultIsLeftOutByAQuestion(t *testing.T) {
	_, err := sheet.Build("left", func(s *sheet.Sheet) {
		a := s.Given("a", "", sheet.Field{High: 9})
		s.Answer("b", "", a.Plus(s.Number(1)), sheet.Says{Label: "B", When: a})
	})
	want := `a result that may be left out joins questions, and "a" is a quantity`
	if err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("the error is %v", err)
	}
}

func TestWordsThatCannotBe(t *testing.T) {
	for _, c := range []struct {
		answer, want string
		cases        func(s *sheet.Sheet, a sheet.Term) []sheet.Case
	}{
		{"b", `"b" is said in words and is no answer`, func(*sheet.Sheet, sheet.Term) []sheet.Case {
			return []sheet.Case{sheet.Otherwise("It is {a}.")}
		}},
		{"a", `the last case of "a", and no other, has no question`, func(s *sheet.Sheet, a sheet.Term) []sheet.Case {
			return []sheet.Case{sheet.When(a.Less(s.Number(1)), "Little.")}
		}},
		{"a", `the last case of "a", and no other, has no question`, func(s *sheet.Sheet, a sheet.Term) []sheet.Case {
			return []sheet.Case{sheet.Otherwise("Little."), sheet.When(a.Less(s.Number(1)), "Much.")}
		}},
		{"a", `speaks of "c", which is no quantity`, func(*sheet.Sheet, sheet.Term) []sheet.Case {
			return []sheet.Case{sheet.Otherwise("It is {c bare}.")}
		}},
		{"a", "a case joins questions", func(s *sheet.Sheet, a sheet.Term) []sheet.Case {
			return []sheet.Case{sheet.When(a, "Little."), sheet.Otherwise("Much.")}
		}},
	} {
		_, err := sheet.Build("bad", func(s *sheet.Sheet) {
			a := s.Answer("a", "", s.Given("n", "", sheet.Field{High: 9}), sheet.Says{Label: "A"})
			s.InWords(c.answer, c.cases(s, a)...)
		})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("the error is %v, want %q in it", err, c.want)
		}
	}
	_, err := sheet.Build("twice", func(s *sheet.Sheet) {
		s.Answer("a", "", s.Given("n", "", sheet.Field{High: 9}), sheet.Says{Label: "A"})
		s.InWords("a", sheet.Otherwise("It is {a}."))
		s.InWords("a", sheet.Otherwise("It is {a}."))
	})
	if err == nil || !strings.Contains(err.Error(), "two answers in words") {
		t.Errorf("a second one gives %v", err)
	}
}

// A number without its unit needs another that names it, in the same two units.
func TestANumberWithoutItsUnitNeedsOneThatNamesIt(t *testing.T) {
	for _, c := range []struct {
		other, otherUnit, also string
		fine                   bool
	}{
		{"{b bare}", "ft", "m", false}, {"{b}", "ft", "m", true}, {"{b}", "in", "m", false}, {"{b}", "ft", "cm", false},
		{"{b}", "ft", "", false}, {"{n}", "ft", "m", false}, {"some", "ft", "m", false},
	} {
		_, err := sheet.Build("bare", func(s *sheet.Sheet) {
			n := s.Given("n", "ft", sheet.Field{Label: "N", Typical: 1, High: 9})
			s.Answer("a", "ft", n, sheet.Says{Label: "A", Also: "m"})
			s.Answer("b", c.otherUnit, n, sheet.Says{Label: "B", Also: c.also})
			s.InWords("a", sheet.Otherwise("It is {a bare} and "+c.other+"."))
		})
		const want = "has {a bare}, and no other number in its unit and in m"
		if (err == nil) != c.fine || err != nil && !strings.Contains(err.Error(), want) {
			t.Errorf("beside %s in %s and %s: %v", c.other, c.otherUnit, c.also, err)
		}
	}
}
