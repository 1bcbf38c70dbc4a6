package wasm_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/tetratelabs/wazero"

	"acreleaf/calc/sheet"
	"acreleaf/wasm"
	"acreleaf/wasm/wasmtest"
	"acreleaf/wasm/wasmtest/engine"
)

const (
	randomPrograms = 200
	randomInputs   = 10_000
)

// compare holds a machine against the native run on n random inputs of every sort.
func compare(t testing.TB, m *engine.Machine, r *rand.Rand, n int) engine.Tally {
	t.Helper()
	return m.Compare(t, n, func(int) float64 { return wasmtest.Number(r) })
}

func TestRandomProgramsGiveTheSameBits(t *testing.T) {
	const shards = 4 // side by side: most of the time goes into the native runs
	for shard := range uint64(shards) {
		t.Run(fmt.Sprintf("shard %d", shard), func(t *testing.T) {
			t.Parallel()
			runtime := engine.Runtime(t, wazero.NewRuntimeConfig())
			var total engine.Tally
			for seed := shard; seed < randomPrograms; seed += shards {
				p := wasmtest.Program(seed)
				seen := compare(t, engine.Start(t, runtime, p), rand.New(rand.NewPCG(seed, 1)), randomInputs)
				total.Numbers += seen.Numbers
				total.NaNs += seen.NaNs
			}
			t.Logf("%d numbers and %d NaN compared", total.Numbers, total.NaNs)
			if total.Numbers < total.NaNs {
				t.Errorf("most results are NaN (%d of %d): the random programs test too little",
					total.NaNs, total.NaNs+total.Numbers)
			}
		})
	}
}

// The interpreter is a second engine, which shares no code generator with the first.
func TestRandomProgramsGiveTheSameBitsWhenInterpreted(t *testing.T) {
	runtime := engine.Runtime(t, wazero.NewRuntimeConfigInterpreter())
	for seed := range uint64(randomPrograms) {
		p := wasmtest.Program(seed)
		compare(t, engine.Start(t, runtime, p), rand.New(rand.NewPCG(seed, 2)), 200)
	}
}

// Every operation is tried on every pair of special numbers by itself, so that a fault names the operation.
func TestEveryOperationOnSpecialNumbers(t *testing.T) {
	runtime := engine.Runtime(t, wazero.NewRuntimeConfig())
	for op := sheet.Add; op <= sheet.Select; op++ {
		p := &sheet.Program{Cells: 5, Code: []sheet.Instruction{
			{Op: sheet.Input, A: 0}, {Op: sheet.Input, A: 1}, {Op: sheet.Input, A: 2},
			{Op: op, A: 0, B: 1, C: 2},           // as a value
			{Op: sheet.Select, A: 3, B: 1, C: 2}, // the same term as a condition, and so kept in a local
			{Op: op, A: 1, B: 0, C: 2},           // a term used once
			{Op: sheet.Select, A: 5, B: 4, C: 3}, // as a condition only
		}, Outputs: []sheet.Output{{From: 3, Cell: 3}, {From: 6, Cell: 4}}}
		compare(t, engine.Start(t, runtime, p), rand.New(rand.NewPCG(uint64(op), 3)), 20_000)
	}
}

func BenchmarkRun(b *testing.B) {
	p := wasmtest.Program(7)
	m := engine.Start(b, engine.Runtime(b, wazero.NewRuntimeConfig()), p)
	for b.Loop() {
		m.Call(b)
	}
}

func BenchmarkRunNative(b *testing.B) {
	p := wasmtest.Program(7)
	cells := make([]float64, p.Cells)
	for b.Loop() {
		p.Run(cells)
	}
}

func BenchmarkCompile(b *testing.B) {
	p := wasmtest.Program(7)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := wasm.Compile(p); err != nil {
			b.Fatal(err)
		}
	}
}
