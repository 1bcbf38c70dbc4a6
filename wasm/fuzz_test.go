package wasm_test

import (
	"encoding/binary"
	"math/rand/v2"
	"testing"

	"github.com/tetratelabs/wazero"

	"acreleaf/calc/sheet"
	"acreleaf/wasm"
	"acreleaf/wasm/wasmtest"
	"acreleaf/wasm/wasmtest/engine"
)

// FuzzParity turns bytes into a program that can run, and holds the module against the native run.
func FuzzParity(f *testing.F) {
	f.Add([]byte{})
	f.Add([]byte("three inputs and a few terms of no meaning at all, but all of them valid"))
	f.Add([]byte{5, 3, 8, byte(sheet.Literal), 0, 15, 0, byte(sheet.Minimum), 1, 4, 0, byte(sheet.Select), 1, 4, 8})
	runtime := engine.Runtime(f, wazero.NewRuntimeConfigInterpreter())
	f.Fuzz(func(t *testing.T, data []byte) {
		p := wasmtest.FromBytes(data)
		compare(t, engine.Start(t, runtime, p), rand.New(rand.NewPCG(uint64(len(data)), 4)), 20)
	})
}

// FuzzAnyProgram turns bytes into a program that is mostly nonsense: it is refused with an error, or it compiles to
// a module that an engine accepts. It never panics.
func FuzzAnyProgram(f *testing.F) {
	f.Add([]byte{2, 1, byte(sheet.Input), 0, 0, 0, byte(sheet.Floor), 0, 0, 0, 1, 1})
	f.Add([]byte{1, 0, byte(sheet.Select) + 1, 0, 0, 0})
	runtime := engine.Runtime(f, wazero.NewRuntimeConfigInterpreter())
	f.Fuzz(func(t *testing.T, data []byte) {
		p := anyProgram(data)
		if _, err := wasm.Compile(p); err == nil {
			compare(t, engine.Start(t, runtime, p), rand.New(rand.NewPCG(uint64(len(data)), 5)), 5)
		}
	})
}

// anyProgram reads operands and cells as they come, out of range and negative ones among them.
func anyProgram(data []byte) *sheet.Program {
	next := func() int {
		if len(data) == 0 {
			return 0
		}
		b := data[0]
		data = data[1:]
		return int(int8(b))
	}
	p := &sheet.Program{Cells: next()}
	outputs := next()
	for len(data) > 2*max(outputs, 0) {
		in := sheet.Instruction{Op: sheet.Op(next()), A: next(), B: next(), C: next()}
		in.Value = float64(binary.LittleEndian.Uint16([]byte{byte(in.A), byte(in.B)}))
		p.Code = append(p.Code, in)
	}
	for range outputs {
		p.Outputs = append(p.Outputs, sheet.Output{From: next(), Cell: next()})
	}
	return p
}
