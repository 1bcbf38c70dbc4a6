package wasm_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"acreleaf/calc/sheet"
	"acreleaf/wasm/wasmtest"
)

// A narrowed program gives the bits of the whole, for each number that its inputs are known to have.
func TestNarrowGivesTheSameBits(t *testing.T) {
	shorter := 0
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 1))
		p := wasmtest.Program(seed)
		known := map[int][]float64{}
		inputs := wasmtest.InputCells(p)
		for _, cell := range inputs {
			if r.IntN(4) == 0 {
				continue
			}
			for range 1 + r.IntN(3) {
				known[cell] = append(known[cell], decisive(r))
			}
		}
		n := p.Narrow(known)
		if len(n.Code) < len(p.Code) {
			shorter++
		}
		for range 20 {
			cells := make([]float64, p.Cells)
			for _, cell := range inputs {
				cells[cell] = decisive(r)
				if values := known[cell]; values != nil {
					cells[cell] = values[r.IntN(len(values))]
				}
			}
			narrow := append([]float64{}, cells...)
			p.Run(cells)
			n.Run(narrow)
			for _, out := range p.Outputs {
				if !wasmtest.Same(cells[out.Cell], narrow[out.Cell]) {
					t.Fatalf("seed %d, cell %d: %v, and %v once narrowed", seed, out.Cell, cells[out.Cell], narrow[out.Cell])
				}
			}
		}
	}
	if shorter < 200 {
		t.Errorf("only %d programs of 400 are shorter", shorter)
	}
}

// decisive is one of those that decide something, or any.
func decisive(r *rand.Rand) float64 {
	return []float64{0, 1, 2, 3, -1, 0.5, math.Copysign(0, -1), math.Inf(1), math.NaN(), r.NormFloat64() * 1e3}[r.IntN(10)]
}

// Where all that is known of a choice is one option, nothing is chosen; figures that nobody looks up are 0.
func TestNarrowLeavesOutWhatIsSettled(t *testing.T) {
	const choice, amount = 0, 1
	p := &sheet.Program{
		Code: []sheet.Instruction{
			{Op: sheet.Input, A: choice}, {Op: sheet.Input, A: amount},
			{Op: sheet.Index, A: 0, B: 4}, {Op: sheet.Lookup, A: 2, B: 1}, // 3
			{Op: sheet.Literal, Value: 3}, {Op: sheet.Equal, A: 0, B: 4}, // 5
			{Op: sheet.Select, A: 5, B: 3, C: 1}, {Op: sheet.Multiply, A: 3, B: 6}, // 7
		},
		Outputs: []sheet.Output{{From: 7, Cell: 2}}, Cells: 3, Tables: [][]float64{{9}, {5, 6, 7, 8}},
	}
	n := p.Narrow(map[int][]float64{choice: {1, 2}})
	for _, in := range n.Code {
		if in.Op == sheet.Select || in.Op == sheet.Equal {
			t.Errorf("%+v is still worked", in)
		}
	}
	if len(n.Tables) != 1 || n.Tables[0][0] != 0 || n.Tables[0][1] != 6 || n.Tables[0][2] != 7 || n.Tables[0][3] != 0 {
		t.Errorf("the tables are %v, want 0 6 7 0", n.Tables)
	}
	if n = p.Narrow(map[int][]float64{choice: {3}}); len(n.Tables) != 0 {
		t.Errorf("the tables are %v, want none", n.Tables)
	}
}
