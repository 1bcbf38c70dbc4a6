package formula_test

import (
	"fmt"
	"strings"
	"testing"

	"acreleaf/calc/formula"
	"acreleaf/calc/sheet"
)

// yard is a sheet with every kind of value that a condition can ask about.
var yard = sheet.New("yard", func(s *sheet.Sheet) {
	long := s.Given("long-side", "ft", sheet.Field{Label: "L", Typical: 10, Low: 0, High: 100})
	kind := s.Choice("kind", []sheet.Option{{Name: "CAN-17", Label: "A"}, {Name: "15.5-0-0-19Ca", Label: "B"}},
		sheet.Field{Label: "K"})
	start := s.Given("start", "days",
		sheet.Field{Label: "S", Typical: 20636, Low: sheet.FirstDay, High: sheet.LastDay, Date: true})
	s.Given("water", "ppm NO3-N", sheet.Field{Label: "N", Typical: 5, High: 100, Of: "water"})
	s.Given("fed", "lb N/ac fed", sheet.Field{Label: "F", Typical: 40, High: 100})
	wide := s.Given("wide", "ft", sheet.Field{Label: "W", Typical: 5, Low: 0, High: 100, Optional: true})
	s.Answer("area", "ft2", long.Times(wide), sheet.Says{Label: "Area"})
	week := s.Constant("week", "7 days", sheet.Fact{Label: "Week", Sources: []string{"common-practice"}})
	s.Answer("end", "days", start.Plus(week), sheet.Says{Label: "End", Date: true})
	s.Answer("more", "ft", long, sheet.Says{Label: "More", When: kind.Is("CAN-17")})
})

// values are the numbers that a condition is tried with: the givens of yard, and whether wide is filled in.
type values struct{ long, kind, start, wide, there, water, fed float64 }

// TestConditions works conditions on a page, and looks at which case is taken.
func TestConditions(t *testing.T) {
	usual := values{long: 10, kind: 0, start: 20636, wide: 5, there: 1, water: 5, fed: 40} // 2026-07-02
	for condition, cases := range map[string]map[values]bool{
		`yard.long-side > "9 ft"`:        {usual: true, {long: 9, wide: 5, there: 1}: false},
		`yard.long_side > "108 in"`:      {usual: true, {long: 8, wide: 5, there: 1}: false},
		`yard.water > "4 ppm NO3-N"`:     {usual: true, {water: 3}: false},
		`yard.water > "0 ppm NO3-N"`:     {usual: true, {water: 0}: false},
		`yard.fed > "0 lb N/ac"`:         {usual: true, {fed: 0}: false},
		`yard.water > "20 ppm NO3"`:      {usual: true, {water: 4.5}: false}, // 4.52 ppm NO3-N
		`yard.fed < "41 lb N/ac"`:        {usual: true, {fed: 42}: false},
		`yard.kind is CAN-17`:            {usual: true, {kind: 1}: false},
		`yard.kind is not 15.5-0-0-19Ca`: {usual: true, {kind: 1}: false},
		`yard.kind == "15.5-0-0-19Ca"`:   {usual: false, {kind: 1}: true},
		`yard.kind != "CAN-17"`:          {usual: false, {kind: 1}: true},
		`yard.area == "50 ft2"`:          {usual: true, {long: 9, wide: 5, there: 1}: false},
		`yard.area != "50 ft2"`:          {usual: false, {long: 9, wide: 5, there: 1}: true},
		`yard.wide < yard.more`: {
			usual: true, {long: 10, wide: 5}: false, {long: 10, wide: 5, there: 1, kind: 1}: false, {wide: 5, there: 1}: false,
		},
		`yard.wide > "9 ft" or yard.long-side > "1 ft"`: {usual: true, {long: 10, wide: 5}: true},
		`yard.more > yard.wide`: {
			usual: true, {long: 10, wide: 5}: false, {long: 10, wide: 5, there: 1, kind: 1}: false,
		},
		`not (yard.kind is CAN-17) or yard.long-side < yard.wide`: {
			usual: false, {kind: 1}: true, {long: 1, wide: 5, there: 1}: true,
		},
		`yard.kind is CAN-17 and yard.area > "49 ft2"`:   {usual: true, {kind: 1, long: 10, wide: 5, there: 1}: false},
		`yard.end > "2026-07-09"`:                        {usual: false, {start: 20640}: true},
		`yard.wide < "9 ft"`:                             {usual: true, {long: 10}: false},
		`yard.more > "1 ft"`:                             {usual: true, {long: 10, kind: 1}: false},
		`yard.area / yard.long-side >= "5 ft"`:           {usual: true, {long: 10, wide: 2, there: 1}: false},
		`yard.long-side > 0 && !(yard.kind == "CAN-17")`: {usual: false, {long: 1, kind: 1}: true},
	} {
		graph := &sheet.Graph{}
		use := graph.Add("yard", yard, nil)
		passage, faults := formula.Conditions(scope(graph), []formula.Text{{Text: condition}})
		if len(faults) > 0 {
			t.Errorf("%s: %v", condition, faults)
			continue
		}
		graph.Passages = append(graph.Passages, passage)
		if err := graph.Close(); err != nil {
			t.Fatal(err)
		}
		for v, want := range cases {
			cells := make([]float64, graph.Program.Cells)
			givens := map[string]float64{
				"long-side": v.long, "kind": v.kind, "start": v.start, "wide": v.wide, "water": v.water, "fed": v.fed,
			}
			for name, value := range givens {
				use.Set(cells, name, value)
			}
			presence, _ := use.Presence("wide")
			cells[presence] = v.there
			graph.Program.Run(cells)
			if got := cells[passage.CaseCell(0)] != 0; got != want || got == (cells[passage.CaseCell(1)] != 0) {
				t.Errorf("%s at %+v: %v, otherwise %v", condition, v, got, cells[passage.CaseCell(1)] != 0)
			}
		}
	}
}

func scope(graph *sheet.Graph) formula.Scope {
	return formula.Worksheets(graph, func(name string) bool { return name == "hidden" })
}

// TestConditionOrder takes the first case of several that hold, and refuses a division by 0.
func TestConditionOrder(t *testing.T) {
	graph := &sheet.Graph{}
	use := graph.Add("yard", yard, nil)
	passage, faults := formula.Conditions(scope(graph), []formula.Text{
		{Text: `yard.long-side < "5 ft"`}, {Text: `yard.area / yard.long-side < "20 ft"`},
	})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	graph.Passages = append(graph.Passages, passage)
	if err := graph.Close(); err != nil {
		t.Fatal(err)
	}
	for long, want := range map[float64]string{0: "1 0 0 refused", 1: "1 0 0", 6: "0 1 0"} {
		cells := make([]float64, graph.Program.Cells)
		use.Set(cells, "long-side", long)
		use.Set(cells, "wide", 8)
		graph.Program.Run(cells)
		got := fmt.Sprint(cells[passage.CaseCell(0)], cells[passage.CaseCell(1)], cells[passage.CaseCell(2)])
		if cells[passage.Refusals()[0]] != 0 {
			got += " refused"
		}
		if got != want {
			t.Errorf("at %v: %s, not %s", long, got, want)
		}
	}
}

// TestConditionDivisor divides by a difference with a quantity in another unit, which is 0 at 9 ft and at no other
// width.
func TestConditionDivisor(t *testing.T) {
	graph := &sheet.Graph{}
	use := graph.Add("yard", yard, nil)
	passage, faults := formula.Conditions(scope(graph), []formula.Text{
		{Text: `yard.long-side / (yard.wide - "108 in") < 3`},
	})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	graph.Passages = append(graph.Passages, passage)
	if err := graph.Close(); err != nil {
		t.Fatal(err)
	}
	if len(passage.Refusals()) != 1 {
		t.Fatalf("%d refusals, want 1", len(passage.Refusals()))
	}
	safe, faults := formula.Conditions(scope(graph), []formula.Text{
		{Text: `yard.area / (yard.long-side + "1 ft") > "1 ft"`},
	})
	if len(faults) > 0 || len(safe.Refusals()) > 0 {
		t.Errorf("what is never 0 has %d refusals, %v", len(safe.Refusals()), faults)
	}
	hidden, faults := formula.Conditions(scope(graph), []formula.Text{
		{Text: `hidden.area > "1 ft2"`}, {Text: `yard.long-side < "3 ft"`},
	})
	if hidden != nil || len(faults) > 0 {
		t.Errorf("a passage with a hidden worksheet is %v, %v", hidden, faults)
	}
	for wide, want := range map[float64]bool{8: false, 9: true, 10: false} {
		cells := make([]float64, graph.Program.Cells)
		use.Set(cells, "long-side", 10)
		use.Set(cells, "wide", wide)
		graph.Program.Run(cells)
		if refused := cells[passage.Refusals()[0]] != 0; refused != want {
			t.Errorf("at %g ft: refused %v, want %v", wide, refused, want)
		}
	}
}

// TestConditionFaults has a sentence and what to type for each way that a condition goes wrong, at its place.
func TestConditionFaults(t *testing.T) {
	for condition, want := range map[string]string{
		`area > "5 ft2"`: `area: “area” does not say which number of which worksheet it is; ` +
			`write yard.area`,
		`yard.aera > "5 ft2"`: `yard.aera: worksheet “yard” has no “aera”; write yard.area`,
		`year.area > "5 ft2"`: `year.area: there is no worksheet “year” in this page; write yard.area`,
		`yard.area > 5`: `>: yard.area is ft2 and “5” is a plain number: they cannot be compared; ` +
			`write the number with its unit, between quotes: "5 ft2"`,
		`yard.area`: `yard.area: yard.area is a quantity, and a question is needed; ` +
			`compare it with something: yard.area > "1 ft2"`,
		`yard.kind is CAN-18`: `CAN-18: yard.kind has no option “CAN-18”; write one of: CAN-17, 15.5-0-0-19Ca`,
		`yard.kind > "1 ft"`: `yard.kind: yard.kind is chosen from a list, and is not a number; ` +
			`ask which it is: yard.kind is CAN-17`,
		`yard.area is CAN-17`: `yard.area is CAN-17: yard.area is a number, and is not chosen from a list; ` +
			`compare it: yard.area > "1 ft2"`,
		`yard.start > "5 days"`: `>: a day of the calendar and a number cannot be compared; ` +
			`write a day as "2027-07-15"`,
		`yard.area / 0 > "1 ft"`: `0: this divides by 0; ` +
			`divide by something else, or take the division out`,
		`yard.fed > "4 lb N/ac taken up"`: `>: yard.fed is lb N/ac fed and “"4 lb N/ac taken up"” is lb N/ac taken up: ` +
			`they cannot be compared; divide it by the share of what is fed that the trees take up first`,
		`hidden.area > "1 ft2"`: ``,
		`yard.kind == "CAN-18"`: `"CAN-18": yard.kind has no option “CAN-18”; write one of: CAN-17, 15.5-0-0-19Ca`,
		`yard.kind is CAN17`:    `CAN17: yard.kind has no option “CAN17”; write CAN-17`,
		`year.kind == "CAN-17"`: `year.kind: there is no worksheet “year” in this page; write yard.kind`,
		`yard.area > "5 lb"`: `>: yard.area is ft2 and “"5 lb"” is lb: they cannot be compared; ` +
			`write a quantity of the same kind, such as "1 ft2"`,
		`"5 lb" > yard.area`: `>: “"5 lb"” is lb and yard.area is ft2: they cannot be compared; ` +
			`write a quantity of the same kind, such as "1 ft2"`,
		`yard.area > yard.wide`: `>: yard.area is ft2 and yard.wide is ft: they cannot be compared; ` +
			`multiply or divide one of them first, so that both measure the same thing`,
		`max > 3`: `max: max is a function, and needs brackets; write max(a, b)`,
		`yardarea > 3`: `yardarea: “yardarea” does not say which number of which worksheet it is; ` +
			`write the name of a worksheet and a point before it: yard.area`,
		`yard.wide > 5`: `>: yard.wide is ft and “5” is a plain number: they cannot be compared; ` +
			`write the number with its unit, between quotes: "5 ft"`,
		`zebra > 3`: `zebra: “zebra” does not say which number of which worksheet it is; write one of: yard.long-side, ` +
			`yard.kind, yard.start, yard.water, yard.fed, yard.wide, yard.area, yard.end, yard.more`,
		`yard.zebra > 3`: `yard.zebra: worksheet “yard” has no “zebra”; write one of: yard.long-side, ` +
			`yard.kind, yard.start, yard.water, yard.fed, yard.wide, yard.area, yard.end, yard.more`,
		`zebra.crossing > 3`: `zebra.crossing: there is no worksheet “zebra” in this page; only the ` +
			`worksheets of this page can be asked about; write one of: yard.long-side, ` +
			`yard.kind, yard.start, yard.water, yard.fed, yard.wide, yard.area, yard.end, yard.more`,
		`yard.area >`:          `>: the formula stops after “>”; write what comes after it`,
		`(yard.area > "1 ft2"`: `(: this bracket is not closed; write the ) where it ends`,
	} {
		graph := &sheet.Graph{}
		graph.Add("yard", yard, nil)
		graph.Add("reckoner 1", yard, nil) // without a name that a condition could use
		at := formula.Span{End: len(condition)}
		passage, faults := formula.Conditions(scope(graph), []formula.Text{{Text: condition, Span: at}})
		if passage != nil {
			t.Errorf("%s is taken", condition)
		}
		var got []string
		for _, f := range faults {
			got = append(got, condition[f.Span.Start:f.Span.End]+": "+f.Text+"; "+f.Note)
		}
		if joined := strings.Join(got, " | "); joined != want {
			t.Errorf("%s:\n got %s\nwant %s", condition, joined, want)
		}
	}
}

// Where a page has no worksheet there is none to name.
func TestConditionWithoutWorksheets(t *testing.T) {
	_, faults := formula.Conditions(scope(&sheet.Graph{}), []formula.Text{{Text: `yard.area > "1 ft2"`}})
	if len(faults) != 1 || faults[0].Note != "write a worksheet of that name first" {
		t.Errorf("%+v", faults)
	}
}

// A condition about one calculation alone need not name it, and one that divides by 0 is answered no.
func TestConditionAlone(t *testing.T) {
	graph := &sheet.Graph{}
	use := graph.Add("yard", yard, nil)
	scope := formula.Worksheets(graph, func(string) bool { return false })
	scope.Alone, scope.Use, scope.In = true, "calculation", "exercise"
	passage := sheet.NewPassage()
	for _, text := range []string{
		`area > "40 ft2"`, `long_side > "9 ft"`, `yard.kind is CAN-17`, `area / long_side < "20 ft"`,
	} {
		question, faults := formula.Condition(scope, passage, formula.Text{Text: text})
		if len(faults) > 0 {
			t.Fatalf("%s: %v", text, faults)
		}
		passage.Keep(sheet.If(*question, passage.Sheet.Number(1), passage.Sheet.Number(0)))
	}
	graph.Passages = append(graph.Passages, passage)
	if err := graph.Close(); err != nil {
		t.Fatal(err)
	}
	for long, want := range map[float64][4]float64{10: {1, 1, 1, 1}, 5: {0, 0, 1, 1}, 0: {0, 0, 1, 0}} {
		cells := make([]float64, graph.Program.Cells)
		use.Set(cells, "long-side", long)
		use.Set(cells, "wide", 5)
		presence, _ := use.Presence("wide")
		cells[presence] = 1
		graph.Program.Run(cells)
		for i, one := range want {
			if got := cells[passage.KeptCell(i)]; got != one {
				t.Errorf("question %d at %v ft: %v, want %v", i+1, long, got, one)
			}
		}
	}
	for text, want := range map[string]string{
		`aria > "1 ft2"`:      "“aria” is no number of this calculation; write area",
		`zebra > 3`:           "“zebra” is no number of this calculation; write one of: yard.long-side, kind",
		`barn.area > "1 ft2"`: "there is no calculation “barn” in this exercise; only the calculations of this exercise",
	} {
		question, faults := formula.Condition(scope, sheet.NewPassage(), formula.Text{Text: text})
		if question != nil || len(faults) != 1 || !strings.HasPrefix(faults[0].Text+"; "+faults[0].Note, want) {
			t.Errorf("%s: %v", text, faults)
		}
	}
}
