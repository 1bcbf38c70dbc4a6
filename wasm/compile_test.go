package wasm_test

import (
	"bytes"
	"encoding/hex"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
	"github.com/tetratelabs/wazero"

	"acreleaf/calc/sheet"
	"acreleaf/wasm"
	"acreleaf/wasm/wasmtest"
	"acreleaf/wasm/wasmtest/engine"
)

// tiny reads cells 0 and 1, and writes (a+b)·(a+b) to cell 2 if a < b, else 0.5.
var tiny = sheet.Program{
	Code: []sheet.Instruction{
		{Op: sheet.Input, A: 0},
		{Op: sheet.Input, A: 1},
		{Op: sheet.Add, A: 0, B: 1},
		{Op: sheet.Multiply, A: 2, B: 2},
		{Op: sheet.Negate, A: 3}, // reaches no output
		{Op: sheet.Literal, Value: 0.5},
		{Op: sheet.Less, A: 0, B: 1},
		{Op: sheet.Select, A: 6, B: 3, C: 5},
	},
	Outputs: []sheet.Output{{From: 7, Cell: 2}},
	Cells:   3,
}

// tinyModule is what tiny must compile to, worked by hand from the specification.
const tinyModule = `
	00 61 73 6d 01 00 00 00           magic "\0asm", version 1
	01 04  01 60 00 00                types: one; function, no parameters, no results
	03 02  01 00                      functions: one, of type 0
	05 03  01 00 01                   memories: one, no maximum, 1 page
	07 09  02                         exports: two
	       01 6d 02 00                "m" is memory 0
	       01 72 00 00                "r" is function 0
	0a 30  01 2e                      code: one body of 46 bytes
	       02 03 7c 00 7f             locals: two groups, 3 × f64 and 0 × i32
	       41 00                      i32.const 0        the address for the store
	       41 00 2b 03 00 22 00       i32.const 0, f64.load align 8 offset 0, local.tee 0    a
	       41 00 2b 03 08 22 01       i32.const 0, f64.load align 8 offset 8, local.tee 1    b
	       a0 22 02                   f64.add, local.tee 2
	       20 02                      local.get 2
	       a2                         f64.mul
	       44 00 00 00 00 00 00 e0 3f f64.const 0.5
	       20 00 20 01 63             local.get 0, local.get 1, f64.lt
	       1b                         select
	       39 03 10                   f64.store align 8 offset 16
	       0b                         end
`

func TestTinyModuleIsTheOneWorkedByHand(t *testing.T) {
	var want []byte
	for line := range strings.Lines(tinyModule) {
		for _, field := range strings.Fields(line) {
			b, err := hex.DecodeString(field)
			if err != nil || len(b) != 1 {
				break // the rest of the line is explanation
			}
			want = append(want, b...)
		}
	}
	got, err := wasm.Compile(&tiny)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("got  % x\nwant % x", got, want)
	}
}

func TestSameProgramSameBytes(t *testing.T) {
	for seed := range uint64(20) {
		first, err := wasm.Compile(wasmtest.Program(seed))
		if err != nil {
			t.Fatal(err)
		}
		second, err := wasm.Compile(wasmtest.Program(seed))
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(first, second) {
			t.Errorf("program %d compiled to two different modules", seed)
		}
	}
}

func TestTermsThatReachNoOutputAreLeftOut(t *testing.T) {
	lean := &sheet.Program{
		Code:    []sheet.Instruction{{Op: sheet.Input, A: 0}, {Op: sheet.SquareRoot, A: 0}},
		Outputs: []sheet.Output{{From: 1, Cell: 1}},
		Cells:   2,
	}
	padded := &sheet.Program{
		Code: []sheet.Instruction{
			{Op: sheet.Literal, Value: 7},
			{Op: sheet.Input, A: 0},
			{Op: sheet.Add, A: 0, B: 1}, // taken only by the next, which nobody takes
			{Op: sheet.Floor, A: 2},
			{Op: sheet.SquareRoot, A: 1},
		},
		Outputs: []sheet.Output{{From: 4, Cell: 1}},
		Cells:   2,
	}
	want, err := wasm.Compile(lean)
	if err != nil {
		t.Fatal(err)
	}
	got, err := wasm.Compile(padded)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("got  % x\nwant % x", got, want)
	}
}

// The longest chains: operands nested to the right wait on the operand stack, those nested to the left do not.
func TestDeepPrograms(t *testing.T) {
	const terms = 5_000
	for name, right := range map[string]bool{"left": false, "right": true} {
		t.Run(name, func(t *testing.T) {
			p := &sheet.Program{Code: []sheet.Instruction{{Op: sheet.Input, A: 0}}, Cells: terms + 1}
			for cell := 1; cell < terms; cell++ {
				last := len(p.Code) - 1
				p.Code = append(p.Code, sheet.Instruction{Op: sheet.Input, A: cell})
				sum := sheet.Instruction{Op: sheet.Add, A: last, B: last + 1}
				if right {
					sum.A, sum.B = sum.B, sum.A
				}
				p.Code = append(p.Code, sum)
			}
			p.Outputs = []sheet.Output{{From: len(p.Code) - 1, Cell: terms}}
			m := engine.Start(t, engine.Runtime(t, wazero.NewRuntimeConfig()), p)
			compare(t, m, rand.New(rand.NewPCG(1, 1)), 20)
		})
	}
}

// ledger is as large as a season's budget with its notes: 46 terms that all reach an output.
func ledger() *sheet.Program {
	p := &sheet.Program{Cells: 32}
	add := func(in sheet.Instruction) int {
		p.Code = append(p.Code, in)
		return len(p.Code) - 1
	}
	out := func(from int) { p.Outputs = append(p.Outputs, sheet.Output{From: from, Cell: 16 + len(p.Outputs)}) }
	zero := add(sheet.Instruction{Op: sheet.Literal, Value: 0})
	total := zero
	for k, factor := range []float64{3.6264, 0.226613, 1.0 / 16, 0.7, 2.2046226218, 0.2259, 1.12085} {
		given := add(sheet.Instruction{Op: sheet.Input, A: k})
		constant := add(sheet.Instruction{Op: sheet.Literal, Value: factor})
		amount := add(sheet.Instruction{Op: sheet.Multiply, A: given, B: constant})
		total = add(sheet.Instruction{Op: sheet.Add, A: total, B: amount})
		out(amount)
	}
	demand := add(sheet.Instruction{Op: sheet.Input, A: 7})
	for len(p.Code) < 46 {
		gap := add(sheet.Instruction{Op: sheet.Subtract, A: demand, B: total})
		short := add(sheet.Instruction{Op: sheet.Maximum, A: gap, B: zero})
		enough := add(sheet.Instruction{Op: sheet.LessOrEqual, A: gap, B: zero})
		total = add(sheet.Instruction{Op: sheet.Select, A: enough, B: zero, C: short})
		out(total)
	}
	return p
}

func TestModuleOfFortySixTermsIsSmall(t *testing.T) {
	p := ledger()
	if len(p.Code) != 46 {
		t.Fatalf("the program has %d terms, not 46", len(p.Code))
	}
	module, err := wasm.Compile(p)
	if err != nil {
		t.Fatal(err)
	}
	var packed bytes.Buffer
	w := brotli.NewWriterLevel(&packed, brotli.BestCompression)
	if _, err := w.Write(module); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	t.Logf("46 terms: %d bytes, %d with brotli", len(module), packed.Len())
	if limit := 300; packed.Len() > limit {
		t.Errorf("46 terms take %d bytes with brotli, more than %d", packed.Len(), limit)
	}
}
