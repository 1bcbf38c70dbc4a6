package practice_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/tetratelabs/wazero"

	"acreleaf/calc/practice"
	"acreleaf/calc/sheet"
	"acreleaf/wasm/wasmtest/engine"
)

// A page marks with its module, and a second engine gives what Go gives, bit for bit: near a right answer, near what a
// slip gives, and anywhere.
func TestModuleMarksAlike(t *testing.T) {
	e := soil()
	g := &sheet.Graph{}
	placed, err := e.Place(g, "")
	if err != nil {
		t.Fatal(err)
	}
	if err := g.Close(); err != nil {
		t.Fatal(err)
	}
	at := placed.At(0)
	nitrate, _ := at.Cell("nitrate")
	depth, _ := at.Cell("depth")
	r := rand.New(rand.NewPCG(1, 1))
	runtime := engine.Runtime(t, wazero.NewRuntimeConfig())
	worked, marked := engine.StartTwo(t, runtime, g.Program, practice.Marker())
	worked.Compare(t, 2_000, func(cell int) float64 {
		switch cell {
		case nitrate:
			return float64(4 + r.IntN(21))
		case depth:
			return float64(6 * (1 + r.IntN(4)))
		}
		return 0
	})
	// The cells of the marker: the answer, the same without its unit, what was told, the value, the share of its digits.
	const value, share, told = 3, 4, 2
	right := 0.0
	marked.Compare(t, 20_000, func(cell int) float64 {
		switch cell {
		case value:
			return right
		case share:
			return [...]float64{0, 5.00000001e-2, 5.00000001e-3}[r.IntN(3)]
		case told:
			return float64(r.IntN(3))
		}
		if cell == 0 {
			right = math.Round(r.NormFloat64() * 100)
		}
		return right * [...]float64{1, 1.0005, 1.015, 4.4268, 0.5, 10, r.Float64() * 3}[r.IntN(7)]
	})
	engine.Validate(t, map[string]*sheet.Program{"exercise": g.Program}, practice.Marker())
}
