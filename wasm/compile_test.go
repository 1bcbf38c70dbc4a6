package wasm_test

import (
	"bytes"
	"encoding/binary"
	"encoding/hex"
	"fmt"
	"math"
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

// What a literal must compile to, worked by hand from sections 5.2.2 and 5.2.3: a whole number nearer to 0 than 64 as
// an i32 in one byte that is converted, any other as its eight bytes. 0 below zero has a sign that no i32 has.
func TestLiteralsAreTheOnesWorkedByHand(t *testing.T) {
	for v, want := range map[float64]string{
		0: "41 00 b7", 1: "41 01 b7", 63: "41 3f b7", -1: "41 7f b7", -63: "41 41 b7",
		64: "44 00 00 00 00 00 00 50 40", -64: "44 00 00 00 00 00 00 50 c0", 1.5: "44 00 00 00 00 00 00 f8 3f",
		math.Copysign(0, -1): "44 00 00 00 00 00 00 00 80", math.Inf(1): "44 00 00 00 00 00 00 f0 7f",
	} {
		p := &sheet.Program{Code: []sheet.Instruction{{Op: sheet.Literal, Value: v}}, Outputs: []sheet.Output{{}}, Cells: 1}
		module, err := wasm.Compile(p)
		if err != nil {
			t.Fatal(err)
		}
		whole := fmt.Sprintf("% x", module)
		if !strings.HasSuffix(whole, "02 00 7c 00 7f 41 00 "+want+" 39 03 00 0b") {
			t.Errorf("%v compiles to %s, want in it %s", v, whole, want)
		}
	}
}

// A page of memory holds 8192 cells.
func TestMemoryHasRoomForAllCells(t *testing.T) {
	for cells, want := range map[int]string{
		0: "05 03 01 00 00", 1: "05 03 01 00 01", 8192: "05 03 01 00 01", 8193: "05 03 01 00 02", 16384: "05 03 01 00 02",
		16385: "05 03 01 00 03",
	} {
		module, err := wasm.Compile(&sheet.Program{Cells: cells})
		if err != nil || !strings.Contains(fmt.Sprintf("% x", module), want) {
			t.Errorf("%d cells compile to % x, %v; want in it %s", cells, module, err, want)
		}
	}
}

// The figures lie behind the cells, from an address that is worked by hand from section 5.2.2.
func TestFiguresLieBehindTheCells(t *testing.T) {
	for cells, want := range map[int]string{
		0: "41 00 0b 08", 7: "41 38 0b 08", 8: "41 c0 00 0b 08", 1023: "41 f8 3f 0b 08", 1024: "41 80 c0 00 0b 08",
	} {
		module, err := wasm.Compile(&sheet.Program{Cells: cells, Tables: [][]float64{{1}}})
		if err != nil || !strings.HasSuffix(fmt.Sprintf("% x", module), want+" 00 00 00 00 00 00 f0 3f") {
			t.Errorf("%d cells compile to % x, %v; want in it %s", cells, module, err, want)
		}
	}
}

// A table that lies within another takes no room, whichever comes first, and one that goes on where another ends shares
// what they have in common. The data section (5.5.14) ends with its size and the figures.
func TestTablesShareTheirFigures(t *testing.T) {
	for _, c := range []struct {
		tables  [][]float64
		figures []float64
	}{
		{[][]float64{{2}, {1, 2, 3}}, []float64{1, 2, 3}},
		{[][]float64{{1, 2, 3}, {2, 3}, {1}}, []float64{1, 2, 3}},
		{[][]float64{{1, 2, 3}, {3, 4}}, []float64{1, 2, 3, 4}},
		{[][]float64{{1, 2}, {3}}, []float64{1, 2, 3}},
	} {
		module, err := wasm.Compile(&sheet.Program{Tables: c.tables})
		if err != nil {
			t.Fatal(err)
		}
		want := []byte{byte(8 * len(c.figures))}
		for _, figure := range c.figures {
			want = binary.LittleEndian.AppendUint64(want, math.Float64bits(figure))
		}
		if !bytes.HasSuffix(module, want) {
			t.Errorf("%v ends with\n% x, want\n% x", c.tables, module, want)
		}
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
