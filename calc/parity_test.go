package calc_test

import (
	"maps"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/tetratelabs/wazero"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/wasm/wasmtest"
	"acreleaf/wasm/wasmtest/engine"
)

// randomInputs is how many times each program is run in both ways.
const randomInputs = 10_000

// graphs gives the program of every calculation alone, and of all of them at work together, with their slips.
func graphs(t testing.TB) map[string]*sheet.Graph {
	t.Helper()
	all := map[string]*sheet.Graph{}
	for _, s := range calc.Standard().All() {
		g := &sheet.Graph{Slips: true}
		g.Add(s.Name, s, nil)
		all[s.Name] = g
	}
	all["all together"] = together()
	for name, g := range all {
		if err := g.Close(); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
	}
	return all
}

// together links the calculations of the catalogue to each other, as a page about a whole season would.
func together() *sheet.Graph {
	type links = map[string]sheet.Link
	from := func(use, name string) sheet.Link { return sheet.Link{Use: use, Name: name} }
	linked := map[string]links{
		"soil-nitrogen":  {"nitrate": from("nitrate-basis", "nitrogen")},
		"water-nitrogen": {"nitrate": from("nitrate-basis", "nitrogen")},
		"water-applied":  {"trees": from("tree-density", "trees")},
		"feed-schedule":  {"nitrogen": from("season-budget", "apply"), "trees": from("tree-density", "trees")},
		"root-share":     {"rate": from("feed-schedule", "each")},
		"tree-rate":      {"trees": from("tree-density", "trees")},
		"season-budget": {
			"need":   from("tree-rate", "nitrogen"),
			"soil":   from("soil-nitrogen", "nitrogen"),
			"water":  from("water-nitrogen", "nitrogen"),
			"manure": from("organic-credit", "nitrogen"), "efficiency": from("uptake-efficiency", "efficiency"),
		},
		"balance":           {"applied": from("season-budget", "apply"), "removed": from("crop-demand", "crop-removal")},
		"uptake-share":      {"nitrogen": from("season-budget", "apply")},
		"nitrate-reach":     {"nitrate": from("nitrate-basis", "nitrogen")},
		"leaf-level":        {"value": from("root-share", "share")}, // any percent: none answers a leaf level
		"material-compare":  {"nitrogen": from("season-budget", "apply")},
		"material-amount":   {"nitrogen": from("season-budget", "apply")},
		"material-nitrogen": {"amount": from("material-amount", "product"), "trees": from("tree-density", "trees")},
		"injection":         {"nitrogen": from("material-nitrogen", "nitrogen")},
		"acre-rate":         {"nitrogen": from("season-budget", "apply"), "trees": from("tree-density", "trees")},
	}
	g := &sheet.Graph{Slips: true}
	for _, s := range calc.Standard().All() {
		g.Add(s.Name, s, linked[s.Name])
	}
	return g
}

// inputs draws a value for each input cell of a graph: a number that the given takes, or any number at all.
func inputs(g *sheet.Graph, r *rand.Rand) func(cell int) float64 {
	givens := map[int]*sheet.Given{}
	for _, u := range g.Uses {
		for _, given := range u.Sheet.Givens {
			if cell, ok := u.Cell(given.Name); ok {
				givens[cell] = given
			}
		}
	}
	return func(cell int) float64 {
		given := givens[cell]
		switch {
		case r.IntN(3) == 0:
			return wasmtest.Number(r)
		case given == nil: // whether an optional given is there
			return float64(r.IntN(2))
		case len(given.Choices) > 0:
			return float64(r.IntN(len(given.Choices)))
		}
		return given.Low + r.Float64()*(given.High-given.Low)
	}
}

// What a page computes is what the press computed, to the last bit.
func TestEveryCalculationGivesTheSameBitsInAPage(t *testing.T) {
	const seed = 1
	t.Logf("random numbers from seed %d", seed)
	all := graphs(t)
	compiled := engine.Runtime(t, wazero.NewRuntimeConfig())
	interpreted := engine.Runtime(t, wazero.NewRuntimeConfigInterpreter())
	for _, name := range slices.Sorted(maps.Keys(all)) {
		g := all[name]
		m := engine.Start(t, compiled, g.Program)
		seen := m.Compare(t, randomInputs, inputs(g, rand.New(rand.NewPCG(seed, 1))))
		if seen.Numbers < seen.NaNs {
			t.Errorf("%s: %d results are numbers and %d are not: too few to say much", name, seen.Numbers, seen.NaNs)
		}
		m = engine.Start(t, interpreted, g.Program)
		m.Compare(t, randomInputs/20, inputs(g, rand.New(rand.NewPCG(seed, 2))))
	}
}

func TestOutsideValidatorAcceptsEveryCalculation(t *testing.T) {
	programs := map[string]*sheet.Program{}
	for name, g := range graphs(t) {
		programs[name] = g.Program
	}
	engine.Validate(t, programs)
}

// Together, most calculations of the catalogue take from another or give to another. One that does neither is worked
// beside them.
func TestAllTogetherAreLinked(t *testing.T) {
	g := together()
	if err := g.Close(); err != nil {
		t.Fatal(err)
	}
	joined := map[int]bool{}
	for _, u := range g.Uses {
		for _, from := range u.After {
			joined[from], joined[u.Index] = true, true
		}
	}
	if len(joined) < 20 {
		t.Errorf("only %d calculations are linked", len(joined))
	}
}

// The linked program works out what the calculations work out one after the other.
func TestTogetherIsOneAfterTheOther(t *testing.T) {
	g := together()
	if err := g.Close(); err != nil {
		t.Fatal(err)
	}
	cells := make([]float64, g.Program.Cells)
	for use, values := range map[string]map[string]float64{
		"nitrate-basis": {"reported": 40}, "soil-nitrogen": {"depth": 12}, "water-nitrogen": {"water": 8},
		"tree-density": {"pattern": 1, "tree": 18, "row": 22}, "tree-rate": {"rate": 12},
		"uptake-efficiency": {"system": 1},
	} {
		for name, value := range values {
			g.Find(use).Set(cells, name, value)
		}
	}
	g.Program.Run(cells)
	// By hand: 40 ppm NO3 is 9.036 ppm NO3-N; soil 4 × 9.036 = 36.14; water 8 × 0.226613 × 9.036 = 16.38; trees 110;
	// need 12 × 110 / 16 = 82.5, which is fed; apply 82.5 − 52.53 = 29.97; back to a tree that is 4.36 oz.
	for _, c := range []struct{ use, name, want string }{
		{"nitrate-basis", "nitrogen", "9.04 ppm NO3-N"}, {"soil-nitrogen", "nitrogen", "36.1 lb N/ac present"},
		{"water-nitrogen", "nitrogen", "16.4 lb N/ac fed"}, {"tree-rate", "nitrogen", "82.5 lb N/ac fed"},
		{"season-budget", "credits", "52.5 lb N/ac fed"}, {"season-budget", "apply", "30 lb N/ac fed"},
		{"acre-rate", "rate", "4.36 oz N/tree fed"},
	} {
		o := sheet.Outcome{Use: g.Find(c.use), Cells: cells}
		if got := o.Value(c.name).String(); got != c.want {
			t.Errorf("%s.%s is %s, want %s", c.use, c.name, got, c.want)
		}
	}
}
