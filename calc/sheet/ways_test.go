package sheet_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/sheet"
)

// layered has an answer with three ways, two of them under one question.
func layered(s *sheet.Sheet) {
	depth := s.Given("depth", "ft", number)
	density := s.Given("density", "g/cm3", optional(number))
	deep := depth.More(s.Constant("deep", "24 in", known))
	plain := sheet.If(deep, depth.Over(s.Number(2)), depth)
	s.Answer("answer", "in", sheet.If(s.Stated(density), depth.Times(s.Number(10)), plain), sheet.Says{})
	s.Answer("again", "in", depth, sheet.Says{})
}

func TestOnlyTheWayTakenIsToldAsWork(t *testing.T) {
	s := build(t, "layered", layered)
	for _, c := range []struct {
		values map[string]float64
		want   string
		taken  []bool
	}{
		{map[string]float64{"depth": 1}, "answer = depth × 12 = 1 ft × 12 = 12 in", []bool{false, false, true, true}},
		{map[string]float64{"depth": 2}, "answer = depth × 12 = 2 ft × 12 = 24 in", []bool{false, false, true, true}},
		{map[string]float64{"depth": 3}, "answer = depth ÷ 2 × 12 = 3 ft ÷ 2 × 12 = 18 in",
			[]bool{false, true, false, true}},
		{map[string]float64{"depth": 3, "density": 1}, "answer = depth × 10 × 12 = 3 ft × 10 × 12 = 360 in",
			[]bool{true, false, false, true}},
	} {
		o, err := s.Evaluate(c.values)
		if err != nil {
			t.Fatal(err)
		}
		if work := o.Work(); len(work) != 2 || work[0] != c.want {
			t.Errorf("%v: %q, want %q", c.values, work, c.want)
		}
		var taken []bool
		for _, line := range o.Lines(nil) {
			taken = append(taken, line.Taken)
		}
		if !slices.Equal(taken, c.taken) {
			t.Errorf("%v takes %v, want %v", c.values, taken, c.taken)
		}
	}
}

// The cell of a way is what a page hides and shows its line by, so it must agree with what was worked for every
// number: 1 for the one way of each result that was taken, 0 for the others, and none where there is no other.
func TestCellsOfTheWaysAgreeWithTheAnswer(t *testing.T) {
	s := build(t, "layered", layered)
	for depth := 0.0; depth <= 6; depth += 0.125 {
		for _, density := range []float64{-1, 0, 1.3} {
			values := map[string]float64{"depth": depth}
			ways := []float64{120 * depth, 6 * depth, 12 * depth}
			way := 2
			if depth > 2 {
				way = 1
			}
			if density >= 0 {
				values["density"] = density
				way = 0
			}
			o, err := s.Evaluate(values)
			if err != nil {
				t.Fatal(err)
			}
			if got := o.Value("answer").Value; math.Abs(got-ways[way]) > 1e-12 {
				t.Fatalf("%v: the answer is %v, want %v", values, got, ways[way])
			}
			lines := o.Lines(nil)
			for i, line := range lines[:3] {
				want := 0.0
				if i == way {
					want = 1
				}
				if line.When < 0 || o.Cells[line.When] != want || line.Taken != (i == way) {
					t.Fatalf("%v: way %d is %v in cell %d, taken %v; want %v", values, i, o.Cells[line.When], line.When,
						line.Taken, want)
				}
			}
			if lines[3].When != -1 || !lines[3].Taken {
				t.Fatalf("a result worked in one way waits for cell %d", lines[3].When)
			}
		}
	}
}

var tableFact = sheet.Fact{Label: "Share", Reads: "figure for the way", Sources: []string{"geometry"}}

// A figure of a table has one line, however many options there are, and the line says what it was looked up by.
func TestTablePrintsTheFigureOnce(t *testing.T) {
	s := build(t, "shares", func(s *sheet.Sheet) {
		way := s.Choice("way", []sheet.Option{{Name: "drip"}, {Name: "flood"}}, sheet.Field{Label: "How"})
		share := s.Table("share", "%", way, sheet.Cells(map[string]float64{"flood": 50, "drip": 80}), tableFact)
		s.Answer("answer", "", share, sheet.Says{})
	})
	o, err := s.Evaluate(map[string]float64{"way": 1})
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"share = figure for the way = 50 %", "answer = share = 50 % = 0.5"}
	if work := o.Work(); !slices.Equal(work, want) {
		t.Errorf("%q, want %q", work, want)
	}
	if lines := o.Lines(nil); len(lines) != 2 {
		t.Errorf("a figure and an answer have %d lines", len(lines))
	}
	if c := s.Constants[0]; c.Name != "share" || !slices.Equal(c.Sources, []string{"geometry"}) {
		t.Errorf("the table is not among what the answer rests on: %+v", c)
	}
}

// A given may stand in for a figure of a list: then the line says which of the two it was.
func TestListedFigureGivesWayToAGiven(t *testing.T) {
	s := build(t, "shares", func(s *sheet.Sheet) {
		way := s.Choice("way", []sheet.Option{{Name: "drip"}, {Name: "flood"}}, sheet.Field{Label: "How"})
		own := s.Given("own", "%", sheet.Field{Typical: 60, Low: 0, High: 100, Optional: true,
			For: []*sheet.Given{way}})
		listed := s.Listed("usual", "%", way, sheet.Cells(map[string]float64{"flood": 50, "drip": 80}), tableFact)
		s.Answer("share", "%", sheet.If(s.Stated(own), own, listed), sheet.Says{})
	})
	for _, c := range []struct {
		values map[string]float64
		want   string
	}{
		{map[string]float64{"way": 1}, "share = figure for the way = 50 %"},
		{map[string]float64{"way": 1, "own": 65}, "share = own = 65 %"},
	} {
		o, err := s.Evaluate(c.values)
		if err != nil {
			t.Fatal(err)
		}
		if got := o.Work(); !slices.Equal(got, []string{c.want}) {
			t.Errorf("%v: %q, want %q", c.values, got, c.want)
		}
	}
	c := s.Constants[0]
	if c.Name != "usual" || c.Table == nil || c.Table.Cells[0].Value != 80 || c.Table.Cells[1].Value != 50 {
		t.Errorf("the list is not among what the answer rests on: %+v", c)
	}
}

// An option without a figure has a dash in the list, and gives 0, so that a calculation that refuses it has no NaN.
func TestListHasADashWhereNoFigureIsKnown(t *testing.T) {
	s := build(t, "shares", func(s *sheet.Sheet) {
		way := s.Choice("way", []sheet.Option{{Name: "drip"}, {Name: "flood"}}, sheet.Field{Label: "How"})
		s.Table("share", "%", way, sheet.Cells(map[string]float64{"flood": sheet.None, "drip": 80}), tableFact)
		s.Answer("answer", "", s.Number(1), sheet.Says{})
	})
	for option, want := range []struct {
		text  string
		value float64
	}{{"80", 80}, {"–", 0}} {
		if text := s.Constants[0].Table.Text(option); text != want.text {
			t.Errorf("option %d reads %q, want %q", option, text, want.text)
		}
		o, err := s.Evaluate(map[string]float64{"way": float64(option)})
		if err != nil {
			t.Fatal(err)
		}
		if got := o.Value("share").Value; got != want.value {
			t.Errorf("option %d is %v, want %v", option, got, want.value)
		}
	}
}

func TestListsThatChoicesShareAreNamedOnce(t *testing.T) {
	s := build(t, "shares", func(s *sheet.Sheet) {
		for _, name := range []string{"first", "second"} {
			way := s.Choice(name, []sheet.Option{{Name: "drip"}, {Name: "flood"}}, sheet.Field{Label: "How"})
			listed := s.Listed("usual", "%", way, sheet.Cells(map[string]float64{"flood": 50, "drip": 80}), tableFact)
			s.Answer("share-of-"+name, "%", listed, sheet.Says{})
		}
	})
	if len(s.Constants) != 1 {
		t.Errorf("a list that two choices share stands %d times", len(s.Constants))
	}
	o, err := s.Evaluate(map[string]float64{"first": 0, "second": 1})
	if err != nil {
		t.Fatal(err)
	}
	if first, second := o.Text("share-of-first"), o.Text("share-of-second"); first != "80 %" || second != "50 %" {
		t.Errorf("the shares are %s and %s, want 80 %% and 50 %%", first, second)
	}
}

func TestAListSaysWhatItReadsAs(t *testing.T) {
	_, err := sheet.Build("shares", func(s *sheet.Sheet) {
		way := s.Choice("way", []sheet.Option{{Name: "drip"}, {Name: "flood"}}, sheet.Field{Label: "How"})
		silent := tableFact
		silent.Reads = ""
		cells := sheet.Cells(map[string]float64{"flood": 50, "drip": 80})
		s.Answer("share", "%", s.Listed("usual", "%", way, cells, silent), sheet.Says{})
	})
	if err == nil || !strings.Contains(err.Error(), `the table "usual" needs what it reads as`) {
		t.Errorf("the error is %v", err)
	}
}

func TestWhatMayBeLeftOut(t *testing.T) {
	for _, c := range []struct{ optional, usual, want bool }{
		{false, false, false}, {true, false, true}, {false, true, true},
	} {
		if g := (&sheet.Given{Field: sheet.Field{Optional: c.optional, Usual: c.usual}}); g.MayBeLeftOut() != c.want {
			t.Errorf("optional %v, usual %v: %v", c.optional, c.usual, !c.want)
		}
	}
}

func TestListsOfTwoNamesAreBothListed(t *testing.T) {
	s := build(t, "shares", func(s *sheet.Sheet) {
		way := s.Choice("way", []sheet.Option{{Name: "drip"}, {Name: "flood"}}, sheet.Field{Label: "How"})
		for _, name := range []string{"usual", "least"} {
			listed := s.Listed(name, "%", way, sheet.Cells(map[string]float64{"flood": 50, "drip": 80}), tableFact)
			s.Answer("share-"+name, "%", listed, sheet.Says{})
		}
	})
	if len(s.Constants) != 2 || s.Constants[0].Name != "usual" || s.Constants[1].Name != "least" {
		t.Errorf("they are %+v", s.Constants)
	}
}

// Lists with the same figures are one table of the program, and each option finds its own figure in it.
func TestListsWithTheSameFiguresAreOneTable(t *testing.T) {
	figures := map[string]float64{"drip": 1, "flood": 2, "hose": 0.5}
	s := build(t, "asking", func(s *sheet.Sheet) {
		options := []sheet.Option{{Name: "drip"}, {Name: "flood"}, {Name: "hose"}}
		first := s.Choice("first", options, sheet.Field{Label: "How"})
		second := s.Choice("second", options, sheet.Field{Label: "How else"})
		s.Answer("one", "", s.Lookup("one", "", first, figures), sheet.Says{})
		s.Answer("other", "", s.Lookup("other", "", second, figures), sheet.Says{})
	})
	g := &sheet.Graph{}
	g.Add("asking", s, nil)
	if err := g.Close(); err != nil {
		t.Fatal(err)
	}
	if len(g.Program.Tables) != 1 {
		t.Errorf("the program has the tables %v", g.Program.Tables)
	}
	for i, name := range []string{"drip", "flood", "hose"} {
		for j, another := range []string{"drip", "flood", "hose"} {
			o, err := s.Evaluate(map[string]float64{"first": float64(i), "second": float64(j)})
			one, other := o.Value("one").Value, o.Value("other").Value
			if err != nil || one != figures[name] || other != figures[another] {
				t.Errorf("%s and %s are %v and %v (%v)", name, another, one, other, err)
			}
		}
	}
}

// A number that is no index gives the nearest one, and NaN the first: a page must not stop for it.
func TestIndexesStayWithinTheirTable(t *testing.T) {
	p := &sheet.Program{
		Code:   []sheet.Instruction{{Op: sheet.Input}, {Op: sheet.Index, A: 0, B: 3}, {Op: sheet.Lookup, A: 1}},
		Tables: [][]float64{{10, 20, 30}}, Outputs: []sheet.Output{{From: 2, Cell: 1}}, Cells: 2,
	}
	for value, want := range map[float64]float64{
		-1: 10, 0: 10, 0.9: 10, 1: 20, 1.5: 20, 2: 30, 2.5: 30, 3: 30, math.Inf(1): 30, math.Inf(-1): 10, 1e300: 30,
	} {
		if got := run(p, value); got != want {
			t.Errorf("%v finds %v, want %v", value, got, want)
		}
	}
	if got := run(p, math.NaN()); got != 10 {
		t.Errorf("NaN finds %v, want 10", got)
	}
}
