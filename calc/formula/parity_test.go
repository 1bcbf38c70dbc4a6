package formula_test

import (
	"math/rand/v2"
	"testing"

	"github.com/tetratelabs/wazero"

	"acreleaf/calc/formula"
	"acreleaf/calc/sheet"
	"acreleaf/wasm/wasmtest"
	"acreleaf/wasm/wasmtest/engine"
)

// byHand is what the formulas of byFormula mean, built as the standard catalogue is.
func byHand(s *sheet.Sheet) {
	field := func(typical, low, high float64) sheet.Field {
		return sheet.Field{Label: "A given", Typical: typical, Low: low, High: high}
	}
	flow := s.Given("flow", "gal/min", field(0.4, 0.05, 5))
	speed := s.Given("ground-speed", "mi/h", field(5, 0, 20))
	width := s.Given("width", "in", field(20, 5, 200))
	share := s.Given("share", "%", field(20, 0, 100))
	count := s.Given("count", "", field(3, 1, 10))
	area := s.Given("area", "ac", field(40, 1, 500))
	rate := s.Given("rate", "lb/ac", field(3, 0, 100))
	bag := s.Constant("bag", "50 lb", sheet.Fact{Sources: []string{"geometry"}})

	strip := s.Step("strip", "ac/h", speed.Times(width), sheet.Says{})
	s.Step("half", "lb", rate.Times(area).Times(s.Number(1).Minus(share)), sheet.Says{})
	bags := s.Step("bags", "", sheet.If(rate.Times(area).More(bag).And(count.Less(s.Number(5))),
		rate.Times(area).Over(bag).In("").RoundUp(), s.Number(1).Most(count.Power(2).SquareRoot())), sheet.Says{})
	answer := s.Answer("answer", "gal/ac", flow.Over(strip), sheet.Says{})
	s.Say(sheet.Caution, bags.AtLeast(s.Number(3)), "Many.")
	s.Refuse(strip.Same(s.Zero("ac/h")), "The work divides by strip.")
	_ = answer
}

func byFormula(t *testing.T) *sheet.Sheet {
	t.Helper()
	s := &script{}
	d := sprayer(s, "gal/ac",
		"strip = ground_speed * width",
		"half = rate * area * (1 - share)",
		"bags = if(rate * area > bag && count < 5, round_up(rate * area / bag), max(1, sqrt(pow(count, 2))))",
		"answer = flow / strip")
	d.Steps = []formula.Result{s.result("strip", "ac/h"), s.result("half", "lb"), s.result("bags", "number")}
	d.Checks = []formula.Check{{When: s.text("bags >= 3"), Signal: sheet.Caution, Say: s.text("Many.")}}
	made, faults := formula.Make(d)
	for _, f := range faults {
		t.Fatalf("%s: %s", s.at(f.Span), f.Text)
	}
	return made
}

func graphOf(t *testing.T, s *sheet.Sheet) *sheet.Graph {
	t.Helper()
	g := &sheet.Graph{}
	g.Add("use", s, nil)
	if err := g.Close(); err != nil {
		t.Fatal(err)
	}
	return g
}

// A formula gives the same bits as the same sheet built in Go, and in a page.
func TestFormulasGiveTheBitsOfASheetBuiltByHand(t *testing.T) {
	built, err := sheet.Build("sprayer", byHand)
	if err != nil {
		t.Fatal(err)
	}
	hand, own := graphOf(t, built), graphOf(t, byFormula(t))
	r := rand.New(rand.NewPCG(7, 7))
	a, b := make([]float64, hand.Program.Cells), make([]float64, own.Program.Cells)
	for range 2000 {
		for _, g := range built.Givens {
			v := g.Low + r.Float64()*(g.High-g.Low)
			if r.IntN(20) == 0 {
				v = g.Low
			}
			hand.Find("use").Set(a, g.Name, v)
			own.Find("use").Set(b, g.Name, v)
		}
		hand.Program.Run(a)
		own.Program.Run(b)
		x, y := sheet.Outcome{Use: hand.Find("use"), Cells: a}, sheet.Outcome{Use: own.Find("use"), Cells: b}
		for _, name := range []string{"strip", "half", "bags", "answer"} {
			if v, w := x.Value(name), y.Value(name); !wasmtest.Same(v.Value, w.Value) || !v.Unit.Same(w.Unit) {
				t.Fatalf("%s: by hand %v, by formula %v", name, v, w)
			}
		}
		if refusedX, refusedY := x.Err() != nil, y.Err() != nil; refusedX != refusedY || len(x.Said()) != len(y.Said()) {
			t.Fatalf("by hand %v %v, by formula %v %v", x.Err(), x.Said(), y.Err(), y.Said())
		}
	}
}

func TestFormulasGiveTheSameBitsInAPage(t *testing.T) {
	s := byFormula(t)
	g := graphOf(t, s)
	givens := map[int]*sheet.Given{}
	for _, given := range s.Givens {
		cell, _ := g.Find("use").Cell(given.Name)
		givens[cell] = given
	}
	r := rand.New(rand.NewPCG(8, 8))
	seen := engine.Start(t, engine.Runtime(t, wazero.NewRuntimeConfig()), g.Program).Compare(t, 5000,
		func(cell int) float64 {
			given := givens[cell]
			if given == nil || r.IntN(4) == 0 {
				return wasmtest.Number(r)
			}
			return given.Low + r.Float64()*(given.High-given.Low)
		})
	if seen.Numbers < 3*seen.NaNs {
		t.Errorf("%d results are numbers and %d are not: too few to say much", seen.Numbers, seen.NaNs)
	}
	engine.Validate(t, map[string]*sheet.Program{"formulas": g.Program})
}

// A line without a declared unit: of no dimension it is a plain number (3 lb/ac over 2000 lb/ac), of a dimension that a
// given, a constant or an answer has it is counted as that one is (120 lb), and otherwise as its arithmetic gives it,
// whatever another such line is counted in.
func TestLinesWithoutAUnit(t *testing.T) {
	s := &script{}
	made, faults := formula.Make(sprayer(s, "lb/ac", everything, `tons = rate / "1 ton/ac"`, "load = area * rate",
		"swept = flow * ground_speed", `spread = flow * width / "1 min"`, "answer = rate"))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	for name, want := range map[string]string{"tons": "0.0015", "load": "120 lb", "swept": "2 gal·mi/(min·h)",
		"spread": "8 gal·in/min2"} {
		if got := value(t, made, name); got != want {
			t.Errorf("%s is %s, want %s", name, got, want)
		}
	}
}
