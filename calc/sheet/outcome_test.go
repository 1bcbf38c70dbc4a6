package sheet_test

import (
	"errors"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
)

// ditch is a sheet with a given that must be, one that may be, and two refusals.
func ditch(s *sheet.Sheet) {
	flow := s.Given("flow", "gpm", sheet.Field{Label: "Flow", Typical: 450, Low: 0, High: 5000})
	lost := s.Given("lost", "%", optional(sheet.Field{Label: "Lost", Typical: 10, Low: 0, High: 100}))
	acres := s.Given("acres", "ac", sheet.Field{Label: "Acres", Typical: 40, Low: 0, High: 500})
	s.Answer("rate", "in/h", flow.Over(acres).Times(s.Number(1).Minus(lost)), sheet.Says{Label: "Rate"})
	s.Say(sheet.Note, sheet.Always, "This is for {acres}.")
	s.Say(sheet.Caution, s.Stated(lost), "You lose {lost} of {flow}.")
	s.Refuse(acres.AtMost(s.Zero("ac")).And(flow.More(s.Zero("gpm"))), "{acres} takes no water. Put in the acres.")
	s.Refuse(lost.AtLeast(s.Number(1)).And(s.Stated(lost)), "All of it is lost.")
}

func TestEvaluateAnswersSpeaksAndRefuses(t *testing.T) {
	s := build(t, "ditch", ditch)
	type given = map[string]float64
	for _, c := range []struct {
		name   string
		values given
		err    string
		said   []sheet.Said
	}{
		{"whole", given{"flow": 450, "acres": 40}, "", []sheet.Said{{Signal: sheet.Note, Text: "This is for 40 ac."}}},
		{"with what may be", given{"flow": 450, "acres": 40, "lost": 0}, "", []sheet.Said{
			{Signal: sheet.Note, Text: "This is for 40 ac."},
			{Signal: sheet.Caution, Text: "You lose 0 % of 450 gpm."}}},
		{"nothing", nil, `flow is missing; write flow="450 gpm"`, nil},
		{"one missing", given{"flow": 450}, `acres is missing; write acres="40 ac"`, nil},
		{"outside", given{"flow": 450, "acres": 501},
			"acres: 501 ac is outside what this calculation takes: 0 to 500 ac", nil},
		{"below", given{"flow": -1, "acres": 5}, "flow: -1 gpm is outside what this calculation takes: 0 to 5,000 gpm", nil},
		{"what may be is outside", given{"flow": 1, "acres": 5, "lost": 120},
			"lost: 120 % is outside what this calculation takes: 0 to 100 %", nil},
		{"unknown", given{"flow": 450, "acres": 40, "lots": 5, "acre": 1}, `ditch has no given "acre"`, nil},
		{"refused", given{"flow": 450, "acres": 0}, "0 ac takes no water. Put in the acres.", nil},
		{"refused twice", given{"flow": 450, "acres": 0, "lost": 100},
			"0 ac takes no water. Put in the acres. All of it is lost.", nil},
		{"no number", given{"flow": 0, "acres": 0},
			"these numbers give no rate; look for a 0, and for a number in the wrong place, and write it as the report has it",
			nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			o, err := s.Evaluate(c.values)
			if (err == nil) != (c.err == "") || err != nil && err.Error() != c.err {
				t.Fatalf("error %v, want %q", err, c.err)
			}
			if err == nil && !slices.Equal(o.Said(), c.said) {
				t.Errorf("it says %v, want %v", o.Said(), c.said)
			}
		})
	}
}

func TestRefusedHasASentenceEach(t *testing.T) {
	_, err := build(t, "ditch", ditch).Evaluate(map[string]float64{"flow": 450, "acres": 0, "lost": 100})
	var refused *sheet.Refused
	if !errors.As(err, &refused) || len(refused.Sentences) != 2 {
		t.Errorf("%v, want two sentences", err)
	}
}

func TestOutcomeKnowsWhatWasStated(t *testing.T) {
	s := build(t, "ditch", ditch)
	o, err := s.Evaluate(map[string]float64{"flow": 450, "acres": 40})
	if err != nil {
		t.Fatal(err)
	}
	if !o.Stated("flow") || o.Stated("lost") {
		t.Errorf("flow stated %v, lost stated %v; want true and false", o.Stated("flow"), o.Stated("lost"))
	}
	if o, err := s.Evaluate(map[string]float64{"flow": 0, "acres": 40, "lost": 5}); err != nil || !o.Stated("lost") ||
		!o.Stated("flow") {
		t.Errorf("flow stated %v, lost stated %v, error %v; want both", o.Stated("flow"), o.Stated("lost"), err)
	}
	// 450 gpm for an hour is 27,000 gallons; an acre-inch is 27,154.29.
	want := 27_000 / (40 * 43_560.0 * 144 / 231)
	if q := o.Value("rate"); math.Abs(q.Value-want) > 1e-15 || q.Unit.String() != "in/h" {
		t.Errorf("the rate is %v, want %v in/h", q.Value, want)
	}
	if q := o.Value("flow"); q.String() != "450 gpm" {
		t.Errorf("the flow is %s", q)
	}
}

// A page shows a remark by its cell; one that is always said has none.
func TestRemarksHaveTheirCells(t *testing.T) {
	s := build(t, "ditch", ditch)
	o, err := s.Evaluate(map[string]float64{"flow": 450, "acres": 40, "lost": 10})
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{-1, 1, 0, 0} {
		cell := o.Use.RemarkCell(i)
		if want < 0 && cell != -1 || want >= 0 && (cell < 0 || o.Cells[cell] != want) {
			t.Errorf("remark %d has cell %d, want one that holds %v", i, cell, want)
		}
	}
}

func TestSlipsAreWorkedInTheUnitOfTheirAnswer(t *testing.T) {
	s := build(t, "slips", func(s *sheet.Sheet) {
		rate, trees := s.Given("rate", "oz N/tree", number), s.Given("trees", "trees/ac", number)
		a := s.Answer("nitrogen", "lb N/ac", rate.Times(trees), sheet.Says{})
		s.Slip("same-dimension", "nitrogen", rate.Times(trees), "The same in another unit.")
		s.Slip("lost-dimension", "nitrogen", rate, "Only one tree.")
		many := trees.More(s.Constant("many", "100 trees/ac", known))
		s.Slip("two-ways", "nitrogen", sheet.If(many, rate.Times(trees), a.Times(s.Number(2))), "Twice, or not.")
	})
	for _, c := range []struct{ trees, right, twoWays float64 }{{160, 30, 30}, {80, 15, 30}} {
		values := map[string]sheet.Entry{"rate": {Value: 3, High: 3}, "trees": {Value: c.trees, High: c.trees}}
		slips, err := s.SlipValues(values)
		if err != nil {
			t.Fatal(err)
		}
		if slips["same-dimension"] != c.right || slips["lost-dimension"] != 3 || slips["two-ways"] != c.twoWays {
			t.Errorf("%v: %v, want %+v", values, slips, c)
		}
	}
	if _, err := s.SlipValues(nil); err == nil || err.Error() != `rate is missing; write rate="12 oz N/tree"` {
		t.Errorf("slips of nothing: %v", err)
	}
}

// A slip that nobody can make with the numbers at hand is not there, and is where it can be made.
func TestSlipsAreThereWhereTheyCanBeMade(t *testing.T) {
	s := build(t, "slips", func(s *sheet.Sheet) {
		rate, lost := s.Given("rate", "lb N/ac", number), s.Given("lost", "lb N/ac", number)
		s.Answer("left", "lb N/ac", rate.Minus(lost), sheet.Says{})
		s.SlipWhen(lost.More(s.Zero("lb N/ac")), "none-lost", "left", rate, "Something is lost.")
		s.Slip("added", "left", rate.Plus(lost), "Take it off.")
	})
	for lost, want := range map[float64]map[string]float64{
		0: {"added": 30}, 4: {"added": 34, "none-lost": 30},
	} {
		slips, err := s.SlipValues(map[string]sheet.Entry{"rate": {Value: 30, High: 30}, "lost": {Value: lost, High: lost}})
		if err != nil {
			t.Fatal(err)
		}
		if !maps.Equal(slips, want) {
			t.Errorf("with %v lost the slips are %v, want %v", lost, slips, want)
		}
	}
}

func TestRemarksSplitAtTheirNames(t *testing.T) {
	for text, want := range map[string][]sheet.Piece{
		"Plain.":       {{Text: "Plain."}},
		"{a}":          {{Name: "a"}},
		"{a}{b} c":     {{Name: "a"}, {Name: "b"}, {Text: " c"}},
		"x {a} y {b}.": {{Text: "x "}, {Name: "a"}, {Text: " y "}, {Name: "b"}, {Text: "."}},
		"":             nil,
	} {
		if got := sheet.Split(text); !slices.Equal(got, want) {
			t.Errorf("%q splits into %v, want %v", text, got, want)
		}
	}
}

func TestSignalsHaveTheirWords(t *testing.T) {
	signals := []string{"", "NOTICE", "CAUTION", "WARNING", "DANGER", "REFUSAL"}
	for i, want := range signals {
		if got := sheet.Signal(i).String(); got != want {
			t.Errorf("signal %d is %q, want %q", i, got, want)
		}
	}
}

func TestHazardsAreSaidFromTheirTable(t *testing.T) {
	s := sheet.New("hot", func(s *sheet.Sheet) {
		depth := s.Given("depth", "in", number)
		s.Answer("answer", "in", depth, sheet.Says{})
		s.Warn("raw-manure", depth.More(s.Zero("in")), "{depth} is deep.")
		s.WarnOf(fact.Hazard{ID: "own", Signal: fact.Danger, Says: fact.Text{"en": "Keep out."}}, sheet.Always, "")
	})
	o, err := sheet.NewBench(s).Work(map[string]sheet.Entry{"depth": {Value: 2, High: 2}})
	if err != nil {
		t.Fatal(err)
	}
	table, _ := fact.FindHazard("raw-manure")
	want := []sheet.Said{
		{Signal: sheet.Caution, Text: "2 in is deep. " + table.Sentence("en"), Hazard: "raw-manure"},
		{Signal: sheet.Danger, Text: "Keep out.", Hazard: "own"},
	}
	if got := o.Said(); !slices.Equal(got, want) {
		t.Errorf("said %q, want %q", got, want)
	}
	_, err = sheet.Build("cold", func(s *sheet.Sheet) {
		s.Answer("answer", "", s.Number(1), sheet.Says{})
		s.Warn("raw-maure", sheet.Always, "")
	})
	if err == nil || !strings.Contains(err.Error(), `there is no hazard "raw-maure"`) {
		t.Errorf("an unknown hazard says %v", err)
	}
}

// An answer that is beyond every number at one end of a range is no answer, whichever end it is.
func TestAnswersBeyondNumbersAreRefused(t *testing.T) {
	s := sheet.New("beyond", func(s *sheet.Sheet) {
		n := s.Given("n", "", sheet.Field{Typical: 1, Low: -1e200, High: 1e200})
		s.Answer("cube", "", n.Power(3), sheet.Says{})
	})
	for _, c := range []struct {
		low, high float64
		fine      bool
	}{{1, 2, true}, {1, 1e200, false}, {-1e200, 1, false}, {-1e200, 1e200, false}} {
		_, err := sheet.NewBench(s).Work(map[string]sheet.Entry{"n": {Value: c.low, High: c.high}})
		const refusal = "type a narrower range or one number: for n."
		if (err == nil) != c.fine || err != nil && !strings.HasSuffix(err.Error(), refusal) {
			t.Errorf("from %v to %v: %v", c.low, c.high, err)
		}
	}
}

// A number that is typed, or is in a table, is printed with all of its digits wherever it is taken as it stands.
// What is worked out has the usual three.
func TestWhatIsTakenKeepsItsDigits(t *testing.T) {
	s := build(t, "weight", func(s *sheet.Sheet) {
		kind := s.Choice("kind", oneOrOther, sheet.Field{Label: "Kind"})
		own := s.Given("own", "lb/gal", optional(sheet.Field{
			Label: "Own", Typical: 11, Low: 1, High: 20, For: []*sheet.Given{kind},
		}))
		listed := s.Lookup("listed", "lb/gal", kind, map[string]float64{"one": 11.06, "other": 10.6711})
		gallon := s.Step("gallon", "lb/gal", sheet.If(s.Stated(own), own, listed), sheet.Says{Label: "Gallon"})
		again := s.Step("again", "lb/gal", gallon, sheet.Says{Label: "Again"})
		s.Answer("half", "lb/gal", again.Over(s.Number(2)), sheet.Says{Label: "Half"})
		s.Say(sheet.Note, sheet.Always, "It is {gallon}, {again}, and half is {half}.")
	})
	for _, c := range []struct {
		values map[string]float64
		want   string
	}{
		{map[string]float64{"kind": 0}, "It is 11.06 lb/gal, 11.06 lb/gal, and half is 5.53 lb/gal."},
		{map[string]float64{"kind": 1}, "It is 10.6711 lb/gal, 10.6711 lb/gal, and half is 5.34 lb/gal."},
		{map[string]float64{"kind": 0, "own": 11.0625}, "It is 11.0625 lb/gal, 11.0625 lb/gal, and half is 5.53 lb/gal."},
	} {
		o, err := s.Evaluate(c.values)
		if err != nil || o.Said()[0].Text != c.want {
			t.Errorf("%v: %v, %v", c.values, o.Said(), err)
		}
	}
}
