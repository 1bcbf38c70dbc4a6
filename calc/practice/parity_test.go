package practice_test

import (
	"math/rand/v2"
	"testing"

	"github.com/tetratelabs/wazero"

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
	answer, bare, told := placed.Parts[0].HeardCells()
	at := placed.At(0)
	nitrate, _ := at.Cell("nitrate")
	depth, _ := at.Cell("depth")
	r := rand.New(rand.NewPCG(1, 1))
	right := 0.0
	draw := func(cell int) float64 {
		switch cell {
		case nitrate:
			right = float64(4 + r.IntN(21))
			return right
		case depth:
			in := float64(6 * (1 + r.IntN(4)))
			right *= in / 3 // the field rule
			return in
		case answer, bare:
			return right * [...]float64{1, 1.0005, 1.015, 4.4268, 0.5, 10, r.Float64() * 3}[r.IntN(7)]
		case told:
			return float64(r.IntN(3))
		}
		return 0
	}
	engine.Start(t, engine.Runtime(t, wazero.NewRuntimeConfig()), g.Program).Compare(t, 20_000, draw)
	engine.Validate(t, map[string]*sheet.Program{"exercise": g.Program})
}
