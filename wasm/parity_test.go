package wasm_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"

	"acreleaf/calc/sheet"
	"acreleaf/wasm"
	"acreleaf/wasm/wasmtest"
)

const (
	randomPrograms = 200
	randomInputs   = 10_000
)

// A machine is one instance of a compiled program in wazero.
type machine struct {
	memory api.Memory
	run    api.Function
	stack  [1]uint64
}

func start(t testing.TB, runtime wazero.Runtime, p *sheet.Program) *machine {
	t.Helper()
	bytes, err := wasm.Compile(p)
	if err != nil {
		t.Fatal(err)
	}
	instance, err := runtime.InstantiateWithConfig(context.Background(), bytes, wazero.NewModuleConfig().WithName(""))
	if err != nil {
		t.Fatalf("wazero refuses the module: %v\n% x", err, bytes)
	}
	t.Cleanup(func() { instance.Close(context.Background()) })
	return &machine{
		memory: instance.ExportedMemory(wasm.MemoryName),
		run:    instance.ExportedFunction(wasm.FunctionName),
	}
}

func newRuntime(t testing.TB, config wazero.RuntimeConfig) wazero.Runtime {
	runtime := wazero.NewRuntimeWithConfig(context.Background(), config)
	t.Cleanup(func() { runtime.Close(context.Background()) })
	return runtime
}

func (m *machine) call(t testing.TB) {
	if err := m.run.CallWithStack(context.Background(), m.stack[:0]); err != nil {
		t.Fatalf("the module traps: %v", err)
	}
}

// tally counts what a comparison saw, so that a test can tell whether it compared anything worth comparing.
type tally struct{ numbers, nans int }

// compare runs p natively and in m on n random inputs and wants the same output cells.
func compare(t testing.TB, m *machine, p *sheet.Program, r *rand.Rand, n int) tally {
	t.Helper()
	cells := make([]float64, p.Cells)
	inputs := wasmtest.InputCells(p)
	var seen tally
	for range n {
		for _, cell := range inputs {
			cells[cell] = wasmtest.Number(r)
			m.memory.WriteFloat64Le(uint32(8*cell), cells[cell])
		}
		p.Run(cells)
		m.call(t)
		for _, out := range p.Outputs {
			got, ok := m.memory.ReadFloat64Le(uint32(8 * out.Cell))
			if want := cells[out.Cell]; !ok || !wasmtest.Same(got, want) {
				t.Fatalf("cell %d: module %v (%x), native %v (%x)\ninputs %v\nprogram %+v", out.Cell,
					got, math.Float64bits(got), want, math.Float64bits(want), pick(cells, inputs), p)
			}
			if got != got {
				seen.nans++
			} else {
				seen.numbers++
			}
		}
	}
	return seen
}

func pick(cells []float64, which []int) []float64 {
	var picked []float64
	for _, cell := range which {
		picked = append(picked, cells[cell])
	}
	return picked
}

func TestRandomProgramsGiveTheSameBits(t *testing.T) {
	const shards = 4 // side by side: most of the time goes into the native runs
	for shard := range uint64(shards) {
		t.Run(fmt.Sprintf("shard %d", shard), func(t *testing.T) {
			t.Parallel()
			runtime := newRuntime(t, wazero.NewRuntimeConfig())
			var total tally
			for seed := shard; seed < randomPrograms; seed += shards {
				p := wasmtest.Program(seed)
				seen := compare(t, start(t, runtime, p), p, rand.New(rand.NewPCG(seed, 1)), randomInputs)
				total.numbers += seen.numbers
				total.nans += seen.nans
			}
			t.Logf("%d numbers and %d NaN compared", total.numbers, total.nans)
			if total.numbers < total.nans {
				t.Errorf("most results are NaN (%d of %d): the random programs test too little",
					total.nans, total.nans+total.numbers)
			}
		})
	}
}

// The interpreter is a second engine, which shares no code generator with the first.
func TestRandomProgramsGiveTheSameBitsWhenInterpreted(t *testing.T) {
	runtime := newRuntime(t, wazero.NewRuntimeConfigInterpreter())
	for seed := range uint64(randomPrograms) {
		p := wasmtest.Program(seed)
		compare(t, start(t, runtime, p), p, rand.New(rand.NewPCG(seed, 2)), 200)
	}
}

// Every operation is tried on every pair of special numbers by itself, so that a fault names the operation.
func TestEveryOperationOnSpecialNumbers(t *testing.T) {
	runtime := newRuntime(t, wazero.NewRuntimeConfig())
	for op := sheet.Add; op <= sheet.Select; op++ {
		p := &sheet.Program{Cells: 5, Code: []sheet.Instruction{
			{Op: sheet.Input, A: 0}, {Op: sheet.Input, A: 1}, {Op: sheet.Input, A: 2},
			{Op: op, A: 0, B: 1, C: 2},           // as a value
			{Op: sheet.Select, A: 3, B: 1, C: 2}, // the same term as a condition, and so kept in a local
			{Op: op, A: 1, B: 0, C: 2},           // a term used once
			{Op: sheet.Select, A: 5, B: 4, C: 3}, // as a condition only
		}, Outputs: []sheet.Output{{From: 3, Cell: 3}, {From: 6, Cell: 4}}}
		compare(t, start(t, runtime, p), p, rand.New(rand.NewPCG(uint64(op), 3)), 20_000)
	}
}

func BenchmarkRun(b *testing.B) {
	p := wasmtest.Program(7)
	m := start(b, newRuntime(b, wazero.NewRuntimeConfig()), p)
	for b.Loop() {
		m.call(b)
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
