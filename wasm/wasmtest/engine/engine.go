// Package engine runs compiled programs in wazero and compares them with sheet.Program.Run, and has the outside
// validator look at modules. It is for tests only, and stands apart from wasmtest because it needs an engine.
package engine

import (
	"context"
	"math"
	"testing"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"

	"acreleaf/calc/sheet"
	"acreleaf/wasm"
	"acreleaf/wasm/wasmtest"
)

// A Machine is one instance of a compiled program.
type Machine struct {
	program *sheet.Program
	cell    int // where its cells begin
	memory  api.Memory
	run     api.Function
	stack   [1]uint64
}

// Runtime makes an engine that is closed when the test ends.
func Runtime(t testing.TB, config wazero.RuntimeConfig) wazero.Runtime {
	runtime := wazero.NewRuntimeWithConfig(context.Background(), config)
	t.Cleanup(func() { runtime.Close(context.Background()) })
	return runtime
}

// Start compiles a program and starts it. It ends the test when the engine refuses the module.
func Start(t testing.TB, runtime wazero.Runtime, p *sheet.Program) *Machine {
	t.Helper()
	return start(t, runtime, p)[0]
}

// StartTwo is Start for two programs in one module.
func StartTwo(t testing.TB, runtime wazero.Runtime, first, second *sheet.Program) (*Machine, *Machine) {
	t.Helper()
	machines := start(t, runtime, first, second)
	return machines[0], machines[1]
}

func start(t testing.TB, runtime wazero.Runtime, programs ...*sheet.Program) []*Machine {
	t.Helper()
	bytes, err := wasm.Compile(programs[0], programs[1:]...)
	if err != nil {
		t.Fatal(err)
	}
	instance, err := runtime.InstantiateWithConfig(context.Background(), bytes, wazero.NewModuleConfig().WithName(""))
	if err != nil {
		t.Fatalf("wazero refuses the module: %v\n% x", err, bytes)
	}
	t.Cleanup(func() { instance.Close(context.Background()) })
	var machines []*Machine
	cell := 0
	for i, p := range programs {
		machines = append(machines, &Machine{
			program: p,
			cell:    cell,
			memory:  instance.ExportedMemory(wasm.MemoryName),
			run:     instance.ExportedFunction([]string{wasm.FunctionName, wasm.SecondName}[i]),
		})
		cell += p.Cells
	}
	return machines
}

// Call runs the module once.
func (m *Machine) Call(t testing.TB) {
	if err := m.run.CallWithStack(context.Background(), m.stack[:0]); err != nil {
		t.Fatalf("the module traps: %v", err)
	}
}

// A Tally counts what a comparison saw, so that a test can tell whether it compared anything worth comparing.
type Tally struct{ Numbers, NaNs int }

// Compare runs the program natively and in the engine n times and wants the same output cells. Before each run, draw
// gives the value of each input cell.
func (m *Machine) Compare(t testing.TB, n int, draw func(cell int) float64) Tally {
	t.Helper()
	cells := make([]float64, m.program.Cells)
	inputs := wasmtest.InputCells(m.program)
	var seen Tally
	for range n {
		for _, cell := range inputs {
			cells[cell] = draw(cell)
			m.memory.WriteFloat64Le(uint32(8*(m.cell+cell)), cells[cell])
		}
		m.program.Run(cells)
		m.Call(t)
		for _, out := range m.program.Outputs {
			got, ok := m.memory.ReadFloat64Le(uint32(8 * (m.cell + out.Cell)))
			want := cells[out.Cell]
			if !ok || !wasmtest.Same(got, want) {
				t.Fatalf("cell %d: module %v (%x), native %v (%x)\ninputs %v\nprogram %+v", out.Cell,
					got, math.Float64bits(got), want, math.Float64bits(want), pick(cells, inputs), m.program)
			}
			if got != got {
				seen.NaNs++
			} else {
				seen.Numbers++
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
