package sheet_test

import (
	"slices"
	"testing"

	"acreleaf/calc/sheet"
)

var botchedShapes = []botch{
	{"an If inside a formula", func(s *sheet.Sheet) {
		depth := s.Given("depth", "in", number)
		s.Answer("answer", "in", sheet.If(depth.More(s.Zero("in")), depth, depth).Plus(depth), sheet.Says{})
	}, []string{`"answer" holds an If inside a formula; give that part a step of its own`}},
	{"an If inside a question", func(s *sheet.Sheet) {
		depth := s.Given("depth", "in", number)
		wet := depth.More(s.Zero("in"))
		s.Answer("answer", "in", sheet.If(sheet.If(wet, depth, depth).More(depth), depth, depth), sheet.Says{})
	}, []string{`"answer" holds an If inside a formula; give that part a step of its own`}},
	{"an If inside a slip", func(s *sheet.Sheet) {
		depth := s.Given("depth", "in", number)
		s.Answer("answer", "in", depth, sheet.Says{})
		s.Slip("odd", "answer", sheet.If(depth.More(s.Zero("in")), depth, depth).Times(s.Number(2)), "Odd.")
	}, []string{`"odd" holds an If inside a formula; give that part a step of its own`}},
	{"an If inside a remark", answered(func(s *sheet.Sheet) {
		depth := s.Given("depth", "in", number)
		s.Say(sheet.Note, sheet.If(depth.More(s.Zero("in")), depth, depth).More(depth), "Odd.")
	}), []string{`"Odd." holds an If inside a formula; give that part a step of its own`}},
	{"a question as an answer", func(s *sheet.Sheet) {
		s.Answer("answer", "", s.Given("depth", "in", number).More(s.Zero("in")), sheet.Says{})
	}, []string{`a question has no number to reckon with; use If`}},
	{"a question in a sum", func(s *sheet.Sheet) {
		depth := s.Given("depth", "in", number)
		s.Answer("answer", "", s.Number(1).Plus(depth.More(s.Zero("in"))), sheet.Says{})
	}, []string{`a question has no number to reckon with; use If`}},
	{"a question rounded", func(s *sheet.Sheet) {
		s.Answer("answer", "", s.Given("depth", "in", number).More(s.Zero("in")).RoundUp(), sheet.Says{})
	}, []string{`a question has no number to reckon with; use If`}},
	{"a question put to a question", func(s *sheet.Sheet) {
		deep := s.Given("depth", "in", number).More(s.Zero("in"))
		s.Answer("answer", "", sheet.If(deep.Less(s.Number(1)), s.Number(1), s.Number(0)), sheet.Says{})
	}, []string{`a question has no number to reckon with; use If`}},
	{"a number put to a question", func(s *sheet.Sheet) {
		deep := s.Given("depth", "in", number).More(s.Zero("in"))
		s.Answer("answer", "", sheet.If(s.Number(1).Less(deep), s.Number(1), s.Number(0)), sheet.Says{})
	}, []string{`a question has no number to reckon with; use If`}},
	{"a question at the head of a product", func(s *sheet.Sheet) {
		s.Answer("answer", "", s.Given("depth", "in", number).More(s.Zero("in")).Times(s.Number(1)), sheet.Says{})
	}, []string{`a question has no number to reckon with; use If`}},
	{"the root of a question", func(s *sheet.Sheet) {
		s.Answer("answer", "", s.Given("depth", "in", number).More(s.Zero("in")).SquareRoot(), sheet.Says{})
	}, []string{`a question has no number to reckon with; use If`}},
	{"a power of a question", func(s *sheet.Sheet) {
		s.Answer("answer", "", s.Given("depth", "in", number).More(s.Zero("in")).Power(2), sheet.Says{})
	}, []string{`a question has no number to reckon with; use If`}},
	{"an angle of a question", func(s *sheet.Sheet) {
		s.Answer("answer", "", s.Given("depth", "in", number).More(s.Zero("in")).Arccosine(), sheet.Says{})
	}, []string{`a question has no number to reckon with; use If`}},
	{"a question as a slip", func(s *sheet.Sheet) {
		depth := s.Given("depth", "in", number)
		s.Answer("answer", "in", depth, sheet.Says{})
		s.Slip("odd", "answer", depth.More(s.Zero("in")), "Odd.")
	}, []string{`a question has no number to reckon with; use If`}},
	{"a quantity as a question", answered(func(s *sheet.Sheet) {
		s.Say(sheet.Note, s.Given("depth", "in", number), "Deep.")
	}), []string{`a remark joins questions, and "depth" is a quantity`}},
	{"a quantity beside and", answered(func(s *sheet.Sheet) {
		depth := s.Given("depth", "in", number)
		s.Refuse(depth.More(s.Zero("in")).And(depth), "No.")
	}), []string{`and, or joins questions, and "depth" is a quantity`}},
	{"a term of another sheet", func(s *sheet.Sheet) {
		var stray *sheet.Given
		sheet.New("other", answered(func(other *sheet.Sheet) { stray = other.Given("depth", "in", number) }))
		s.Answer("answer", "in", stray, sheet.Says{})
	}, []string{`"depth" is a term of another sheet`}},
	{"a typical value outside the range", answered(func(s *sheet.Sheet) {
		s.Given("depth", "in", sheet.Field{Label: "D", Typical: 80, Low: 1, High: 72})
	}), []string{`"depth": the typical value 80 must lie between 1 and 72`}},
	{"a range upside down", answered(func(s *sheet.Sheet) {
		s.Given("depth", "in", sheet.Field{Label: "D", Typical: 5, Low: 10, High: 1})
	}), []string{`"depth": the typical value 5 must lie between 10 and 1`}},
	{"a range of nothing", answered(func(s *sheet.Sheet) {
		s.Given("depth", "in", sheet.Field{Label: "D", Typical: 5, Low: 5, High: 5})
	}), []string{`"depth": the typical value 5 must lie between 5 and 5`}},
	{"a typical value below the range", answered(func(s *sheet.Sheet) {
		s.Given("depth", "in", sheet.Field{Label: "D", Typical: 0.5, Low: 1, High: 72})
	}), []string{`"depth": the typical value 0.5 must lie between 1 and 72`}},
	{"stated of a given that must be", answered(func(s *sheet.Sheet) {
		s.Say(sheet.Note, s.Stated(s.Given("depth", "in", number)), "Stated.")
	}), []string{`"depth" is not optional, so it is always stated`}},
	{"a constant without a source", answered(func(s *sheet.Sheet) { s.Constant("slice", "6 in", sheet.Fact{}) }),
		[]string{`constant "slice" needs a source`}},
	{"a choice of one", answered(func(s *sheet.Sheet) { s.Choice("drip", yesOrNo[:1], sheet.Field{}) }),
		[]string{`"drip" needs two things to choose from, and a typical one among them`}},
	{"a choice without its typical one", answered(func(s *sheet.Sheet) {
		s.Choice("drip", yesOrNo, sheet.Field{Typical: -1})
	}), []string{`"drip" needs two things to choose from, and a typical one among them`}},
	{"a choice left empty", answered(func(s *sheet.Sheet) {
		s.Choice("drip", yesOrNo, sheet.Field{Optional: true})
	}), []string{`"drip" is a choice, and a choice cannot be left empty`}},
	{"an option twice", answered(func(s *sheet.Sheet) {
		s.Choice("drip", []sheet.Option{{Name: "yes"}, {Name: "yes"}}, sheet.Field{})
	}), []string{`"drip" has the option "yes" twice`}},
	{"an option that is not there", answered(func(s *sheet.Sheet) {
		s.Say(sheet.Note, s.Choice("drip", yesOrNo, sheet.Field{}).Is("maybe"), "Maybe.")
	}), []string{`"drip" has no option "maybe"`}},
	{"a table without a row", answered(func(s *sheet.Sheet) {
		drip := s.Choice("drip", yesOrNo, sheet.Field{})
		s.Table("share", "%", drip, sheet.Cells(map[string]float64{"yes": 80}), tableFact)
	}), []string{`"share" needs a figure for each of the 2 options of "drip"`, `"share" has no figure for "no"`}},
	{"a cell without a source", answered(func(s *sheet.Sheet) {
		drip := s.Choice("drip", yesOrNo, sheet.Field{})
		s.Table("share", "%", drip, map[string]sheet.Cell{
			"yes": {Value: 80, Sources: []string{"geometry"}}, "no": {Value: 50}},
			sheet.Fact{Reads: "figure for the way"})
	}), []string{`the table "share" needs a source for "no"`}},
	{"a table by a number", answered(func(s *sheet.Sheet) {
		s.Table("share", "%", s.Given("depth", "in", number), sheet.Cells(map[string]float64{"yes": 80}), tableFact)
	}), []string{`"share" needs a figure for each of the 0 options of "depth"`}},
	{"two faults at once", func(s *sheet.Sheet) {
		s.Given("Depth", "in", number)
		s.Constant("slice", "6 in", sheet.Fact{Label: "Slice"})
	}, []string{`"Depth" is not a name: use small letters and hyphens`,
		`constant "slice" needs a source`, "it has no answer"}},
}

func TestTypicalMayBeAnEndOfTheRange(t *testing.T) {
	build(t, "ends", answered(func(s *sheet.Sheet) {
		s.Given("low", "in", sheet.Field{Label: "L", Typical: 1, Low: 1, High: 72})
		s.Given("high", "in", sheet.Field{Label: "H", Typical: 72, Low: 1, High: 72})
	}))
}

// A figure that only a wrong way needs is not what an answer rests on, and a page need not show it.
func TestConstantsThatOnlySlipsNeedSaySo(t *testing.T) {
	s := build(t, "soil", func(s *sheet.Sheet) {
		depth := s.Given("depth", "in", number)
		inStep := s.Constant("in-step", "6 in", known)
		inWays := s.Constant("in-ways", "7 in", known)
		inQuestion := s.Constant("in-question", "8 in", known)
		inRemark := s.Constant("in-remark", "9 in", known)
		inBoth := s.Constant("in-both", "10 in", known)
		inRemarkToo := s.Constant("in-remark-too", "13 in", known)
		inSlip := s.Constant("in-slip", "11 in", known)
		s.Constant("in-nothing", "12 in", known)
		step := s.Step("step", "in", depth.Plus(inStep), sheet.Says{})
		a := s.Answer("answer", "in", sheet.If(depth.More(inQuestion), step.Plus(inBoth), step.Plus(inWays)), sheet.Says{})
		s.Say(sheet.Note, a.More(inRemark), "Deep.")
		s.Say(sheet.Note, a.Less(inRemarkToo), "Shallow.")
		s.Slip("odd", "answer", a.Plus(inBoth).Plus(inSlip).Plus(step).Plus(inRemarkToo), "Odd.")
	})
	var only []string
	for _, c := range s.Constants {
		if c.OnlySlips {
			only = append(only, c.Name)
		}
	}
	if want := []string{"in-slip"}; !slices.Equal(only, want) {
		t.Errorf("only slips need %q, want %q", only, want)
	}
}

func TestConstantOnceIsOneConstant(t *testing.T) {
	s := build(t, "soil", func(s *sheet.Sheet) {
		a, b := s.ConstantOnce("slice", "6 in", known), s.ConstantOnce("slice", "6 in", known)
		s.Answer("answer", "in", a.Plus(b), sheet.Says{})
	})
	if len(s.Constants) != 1 {
		t.Errorf("%d constants, want 1", len(s.Constants))
	}
	o, err := s.Evaluate(nil)
	if err != nil || o.Value("answer").Value != 12 {
		t.Errorf("6 in and 6 in are %v, %v", o.Value("answer"), err)
	}
}

func TestPartsOfASheetAreFound(t *testing.T) {
	s := build(t, "soil", func(s *sheet.Sheet) {
		depth := s.Given("depth", "in", number)
		s.Constant("slice", "6 in", known)
		step := s.Step("step", "ft", depth, sheet.Says{})
		s.Answer("answer", "cm", step, sheet.Says{})
	})
	if got, want := s.Names(), []string{"depth", "step", "answer"}; !slices.Equal(got, want) {
		t.Errorf("the names are %q, want %q", got, want)
	}
	if answers := s.Answers(); len(answers) != 1 || answers[0].Name != "answer" {
		t.Errorf("the answers are %v", answers)
	}
	for name, want := range map[string]string{"depth": "in", "step": "ft", "answer": "cm", "slice": "", "other": ""} {
		u, ok := s.UnitOf(name)
		if ok != (want != "") || u.String() != want {
			t.Errorf("the unit of %s is %q, %v; want %q", name, u, ok, want)
		}
	}
	if s.FindGiven("step") != nil || s.FindGiven("depth") != s.Givens[0] {
		t.Error("a step was found as a given, or a given was not")
	}
}
