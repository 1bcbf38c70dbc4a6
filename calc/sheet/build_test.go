package sheet_test

import (
	"strings"
	"testing"

	"acreleaf/calc/sheet"
)

// number is a field that takes any number of ordinary size.
var number = sheet.Field{Label: "A number", Typical: 12, Low: 0, High: 1000}

// known is where a constant of a test comes from.
var known = sheet.Fact{Label: "A figure", Sources: []string{"geometry"}}

var yesOrNo = []sheet.Option{{Name: "yes", Label: "Yes"}, {Name: "no", Label: "No"}}

// build builds a sheet that must be whole.
func build(t testing.TB, name string, f func(*sheet.Sheet)) *sheet.Sheet {
	t.Helper()
	s, err := sheet.Build(name, f)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// optional is a field that may be left empty.
func optional(f sheet.Field) sheet.Field {
	f.Optional = true
	return f
}

// A botch is a sheet with faults, and the whole sentence of each.
type botch struct {
	name  string
	build func(*sheet.Sheet)
	want  []string
}

// answered adds an answer to a botch that has no other need of one.
func answered(f func(s *sheet.Sheet)) func(*sheet.Sheet) {
	return func(s *sheet.Sheet) {
		f(s)
		s.Answer("answer", "in", s.Zero("in"), sheet.Says{})
	}
}

var botchedNames = []botch{
	{"no answer", func(s *sheet.Sheet) { s.Given("depth", "in", number) }, []string{"it has no answer"}},
	{"two givens of one name", answered(func(s *sheet.Sheet) {
		s.Given("depth", "in", number)
		s.Given("depth", "ft", number)
	}), []string{`the name "depth" is used twice`}},
	{"a step named as a constant", answered(func(s *sheet.Sheet) {
		s.Constant("slice", "6 in", known)
		s.Step("slice", "in", s.Zero("in"), sheet.Says{})
	}), []string{`the name "slice" is used twice`}},
	{"a constant once, named as a given", answered(func(s *sheet.Sheet) {
		s.Given("slice", "in", number)
		s.ConstantOnce("slice", "6 in", known)
	}), []string{`the name "slice" is used twice`}},
	{"capitals", answered(func(s *sheet.Sheet) { s.Given("Depth", "in", number) }),
		[]string{`"Depth" is not a name: use small letters and hyphens`}},
	{"a space", answered(func(s *sheet.Sheet) { s.Given("bulk density", "in", number) }),
		[]string{`"bulk density" is not a name: use small letters and hyphens`}},
	{"a brace", answered(func(s *sheet.Sheet) { s.Given("a{b}", "in", number) }),
		[]string{`"a{b}" is not a name: use small letters and hyphens`}},
	{"nothing", answered(func(s *sheet.Sheet) { s.Given("", "in", number) }),
		[]string{`"" is not a name: use small letters and hyphens`}},
	{"a hyphen at the end", answered(func(s *sheet.Sheet) { s.Given("depth-", "in", number) }),
		[]string{`"depth-" is not a name: use small letters and hyphens`}},
	{"two slips of one name", func(s *sheet.Sheet) {
		a := s.Answer("answer", "in", s.Given("depth", "in", number), sheet.Says{})
		s.Slip("halved", "answer", a.Over(s.Number(2)), "Half.")
		s.Slip("halved", "answer", a.Over(s.Number(4)), "A quarter.")
	}, []string{`the slip "halved" is there twice`}},
	{"a slip of a step", func(s *sheet.Sheet) {
		step := s.Step("step", "in", s.Given("depth", "in", number), sheet.Says{})
		s.Answer("answer", "in", step, sheet.Says{})
		s.Slip("halved", "step", step.Over(s.Number(2)), "Half.")
	}, []string{`slip "halved" is of "step", which is not an answer`}},
	{"a twin that is worked otherwise", func(s *sheet.Sheet) {
		depth := s.Given("depth", "in", number)
		s.Answer("answer", "in", depth, sheet.Says{})
		s.Answer("half", "in", depth.Over(s.Number(2)), sheet.Says{Twin: "answer"})
	}, []string{`"half" is not worked as the answer "answer" is, so it cannot be left unprinted for it`}},
	{"a twin of nothing", answered(func(s *sheet.Sheet) {
		s.Answer("other", "in", s.Given("high", "in", number), sheet.Says{Twin: "others"})
	}), []string{`"other" is not worked as the answer "others" is, so it cannot be left unprinted for it`}},
	{"a remark of nothing", answered(func(s *sheet.Sheet) { s.Say(sheet.Note, sheet.Always, "So {depth} it is.") }),
		[]string{`the remark "So {depth} it is." speaks of "depth", which is no quantity of the sheet`}},
	{"a remark of a constant", answered(func(s *sheet.Sheet) {
		s.Constant("slice", "6 in", known)
		s.Say(sheet.Note, sheet.Always, "Slices of {slice}.")
	}), []string{`the remark "Slices of {slice}." speaks of "slice", which is no quantity of the sheet`}},
	{"a remark of a choice", answered(func(s *sheet.Sheet) {
		s.Choice("drip", yesOrNo, sheet.Field{})
		s.Say(sheet.Note, sheet.Always, "Drip: {drip}.")
	}), []string{`the remark "Drip: {drip}." speaks of "drip", which is no quantity of the sheet`}},
	{"a remark with an open brace", answered(func(s *sheet.Sheet) { s.Say(sheet.Note, sheet.Always, "So {answer.") }),
		[]string{`the remark "So {answer." speaks of "answer.", which is no quantity of the sheet`}},
}

var botchedUnits = []botch{
	{"a length to a weight", func(s *sheet.Sheet) {
		depth, rate := s.Given("depth", "in", number), s.Given("rate", "lb N/ac", number)
		s.Answer("answer", "in", depth.Plus(rate), sheet.Says{})
	}, []string{`cannot add "rate": it is mass of N on an area, and a length is needed`}},
	{"an answer of another dimension", func(s *sheet.Sheet) {
		s.Answer("answer", "lb N/ac", s.Given("depth", "in", number), sheet.Says{})
	}, []string{`cannot give as answer "depth": it is a length, and mass of N on an area is needed`}},
	{"a comparison of nitrate with nitrogen", answered(func(s *sheet.Sheet) {
		n, no3 := s.Given("n", "ppm NO3-N", number), s.Given("no3", "ppm NO3", number)
		s.Say(sheet.Note, n.More(no3), "More.")
	}), []string{`cannot compare "n": it is share of NO3-N, and share of NO3 is needed`}},
	{"a term without a name", func(s *sheet.Sheet) {
		depth := s.Given("depth", "in", number)
		s.Answer("answer", "in", depth.Plus(depth.Times(depth)), sheet.Says{})
	}, []string{`cannot add a term in in2: it is an area, and a length is needed`}},
	{"an unknown unit", answered(func(s *sheet.Sheet) { s.Given("depth", "inchs", number) }),
		[]string{`unit "inchs": `}},
	{"an unknown unit in soil", answered(func(s *sheet.Sheet) {
		s.Given("nitrate", "pmm NO3-N", sheet.Field{Label: "N", Typical: 1, High: 2, Of: "soil"})
	}), []string{`unit "pmm NO3-N": `}},
	{"a unit to offer of another dimension", answered(func(s *sheet.Sheet) {
		s.Given("depth", "in", sheet.Field{Label: "D", Typical: 1, High: 2, Units: []string{"lb"}})
	}), []string{`"depth": lb is a mass; this needs inches (in)`}},
	{"a given of two kinds and with forms", answered(func(s *sheet.Sheet) {
		s.Given("load", "lb crop/ac", sheet.Field{Label: "L", Typical: 1, High: 2, Forms: []string{"kernels"},
			Else: sheet.Other{Unit: "in", Low: 0, High: 2}})
	}), []string{`"load": a given with a second kind of quantity has no forms as well; a page tells it by one cell`}},
	{"an answer also in another dimension", func(s *sheet.Sheet) {
		s.Answer("answer", "in", s.Zero("in"), sheet.Says{Also: "kg"})
	}, []string{`"answer": in is a length; this needs kg`}},
	{"the root of a volume", func(s *sheet.Sheet) {
		s.Answer("answer", "ft3", s.Given("volume", "ft3", number).SquareRoot(), sheet.Says{})
	}, []string{`"volume" has no square root: its unit is ft3`,
		`cannot give as answer a term without a unit: it is a plain number, and a volume is needed`}},
	{"an angle of a length", func(s *sheet.Sheet) {
		s.Answer("answer", "", s.Given("depth", "in", number).Arccosine(), sheet.Says{})
	}, []string{`cannot take the arccosine of "depth": it is a length, and a plain number is needed`}},
	{"an If of two dimensions", func(s *sheet.Sheet) {
		depth, rate := s.Given("depth", "in", number), s.Given("rate", "lb N/ac", number)
		s.Answer("answer", "in", sheet.If(depth.More(s.Zero("in")), depth, rate), sheet.Says{})
	}, []string{`cannot choose between "rate": it is mass of N on an area, and a length is needed`}},
	{"a conversion to another dimension", func(s *sheet.Sheet) {
		s.Answer("answer", "in", s.Given("depth", "in", number).In("lb"), sheet.Says{})
	}, []string{`cannot convert "depth": it is a length, and a mass is needed`,
		`cannot give as answer a term in lb: it is a mass, and a length is needed`}},
	{"a constant that is no quantity", answered(func(s *sheet.Sheet) { s.Constant("slice", "six in", known) }),
		[]string{`constant "slice": "six in": there is no number here; write one in digits, such as 12 ppm NO3-N`}},
	{"a power of nine", func(s *sheet.Sheet) {
		s.Answer("answer", "", s.Given("share", "", number).Power(9), sheet.Says{})
	}, []string{`a power must be from 2 to 8, not 9`}},
}

func TestBotchedSheetsAreRefused(t *testing.T) {
	for _, group := range [][]botch{botchedNames, botchedUnits, botchedShapes} {
		for _, b := range group {
			t.Run(b.name, func(t *testing.T) {
				s, err := sheet.Build("botched", b.build)
				if err == nil || s != nil {
					t.Fatalf("the sheet was built, error %v", err)
				}
				lines := strings.Split(strings.TrimPrefix(err.Error(), `sheet "botched": `), "\n")
				for i, want := range b.want {
					whole := !strings.HasSuffix(want, " ")
					if i >= len(lines) || whole && lines[i] != want || !strings.HasPrefix(lines[i], want) {
						t.Errorf("fault %d is not %q:\n%v", i, want, err)
					}
				}
				if len(lines) != len(b.want) {
					t.Errorf("%d faults, want %d:\n%v", len(lines), len(b.want), err)
				}
			})
		}
	}
}

func TestNewPanicsWithEveryFault(t *testing.T) {
	defer func() {
		err, _ := recover().(error)
		if err == nil || !strings.Contains(err.Error(), `"A" is not a name`) ||
			!strings.Contains(err.Error(), "it has no answer") {
			t.Errorf("the panic is %v", err)
		}
	}()
	sheet.New("botched", func(s *sheet.Sheet) { s.Given("A", "in", number) })
}

func TestSheetNameIsChecked(t *testing.T) {
	_, err := sheet.Build("Soil Nitrogen", answered(func(*sheet.Sheet) {}))
	want := `sheet "Soil Nitrogen": "Soil Nitrogen" is not a name: use small letters and hyphens`
	if err == nil || err.Error() != want {
		t.Errorf("%v, want %s", err, want)
	}
}
