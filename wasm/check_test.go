package wasm_test

import (
	"strings"
	"testing"

	"acreleaf/calc/sheet"
	"acreleaf/wasm"
)

func TestProgramsThatCannotRunAreRefused(t *testing.T) {
	input := sheet.Instruction{Op: sheet.Input, A: 0}
	for _, test := range []struct {
		name    string
		program *sheet.Program
		want    string
	}{
		{"no program", nil, "there is no program to compile"},
		{"cells below none", &sheet.Program{Cells: -1}, "the program asks for -1"},
		{"more cells than a memory holds", &sheet.Program{Cells: 1<<29 + 1}, "the program asks for 536870913"},
		{"more cells than a memory holds, with its tables",
			&sheet.Program{Cells: 1<<29 - 2, Tables: [][]float64{{1}, {2, 3}}}, "the program asks for 536870910"},
		{"more terms than fit", &sheet.Program{Code: make([]sheet.Instruction, 16_667)},
			"at most 16666 terms, and the program has 16667"},
		{"unknown operation", &sheet.Program{Code: []sheet.Instruction{{Op: sheet.Lookup + 1}}},
			"term 0 has operation number 22, which does not exist"},
		{"input from no cell", &sheet.Program{Code: []sheet.Instruction{input}},
			"term 0 reads cell 0, and the program has 0 cells"},
		{"input from a cell below none", &sheet.Program{Code: []sheet.Instruction{{Op: sheet.Input, A: -1}}, Cells: 1},
			"term 0 reads cell -1"},
		{"operand is the term itself", &sheet.Program{Code: []sheet.Instruction{{Op: sheet.Floor}}},
			"term 0 takes term 0, which does not come before it"},
		{"operand comes later", &sheet.Program{Code: []sheet.Instruction{input, {Op: sheet.Add, B: 2}, input}, Cells: 1},
			"term 1 takes term 2, which does not come before it"},
		{"operand below none", &sheet.Program{Code: []sheet.Instruction{input, {Op: sheet.Not, A: -1}}, Cells: 1},
			"term 1 takes term -1, which does not come before it"},
		{"third operand comes later", &sheet.Program{Code: []sheet.Instruction{input, {Op: sheet.Select, C: 1}}, Cells: 1},
			"term 1 takes term 1, which does not come before it"},
		{"index into nothing", &sheet.Program{Code: []sheet.Instruction{input, {Op: sheet.Index}}, Cells: 1},
			"term 1 is an index into 0 things"},
		{"table that is not there", lookup(input, 3, 1), "term 2 looks into table 1, and the program has 1 tables"},
		{"table below none", lookup(input, 3, -1), "term 2 looks into table -1, and the program has 1 tables"},
		{"index beyond its table", lookup(input, 4, 0), "term 2 looks into table 0 with term 1, which may lead outside it"},
		{"look without an index", &sheet.Program{
			Code: []sheet.Instruction{input, {Op: sheet.Lookup}}, Cells: 1, Tables: [][]float64{{1}},
		}, "term 1 looks into table 0 with term 0, which may lead outside it"},
		{"output of no term", &sheet.Program{Cells: 1, Outputs: []sheet.Output{{}}},
			"cell 0 takes term 0, and the program has 0 terms"},
		{"output of a term below none", &sheet.Program{Cells: 1, Outputs: []sheet.Output{{From: -1}}},
			"cell 0 takes term -1"},
		{"output to no cell",
			&sheet.Program{Code: []sheet.Instruction{input}, Cells: 1, Outputs: []sheet.Output{{Cell: 1}}},
			"term 0 goes to cell 1, and the program has 1 cells"},
		{"output to a cell below none",
			&sheet.Program{Code: []sheet.Instruction{input}, Cells: 1, Outputs: []sheet.Output{{Cell: -1}}},
			"term 0 goes to cell -1"},
		{"cell read and written",
			&sheet.Program{Code: []sheet.Instruction{input}, Cells: 1, Outputs: []sheet.Output{{}}},
			"cell 0 is read by term 0 and written by term 0; a cell is one or the other"},
	} {
		t.Run(test.name, func(t *testing.T) {
			module, err := wasm.Compile(test.program)
			if err == nil || module != nil {
				t.Fatalf("compiled to % x, error %v", module, err)
			}
			if !strings.HasPrefix(err.Error(), "wasm: ") || !strings.Contains(err.Error(), test.want) {
				t.Errorf("the error is %q, and should say %q", err, test.want)
			}
		})
	}
}

// As many cells and figures as a memory of 65,536 pages of 64 KiB has room for, and as many terms as are allowed.
func TestLargestProgramsAreCompiled(t *testing.T) {
	for name, p := range map[string]*sheet.Program{
		"cells":  {Cells: 1 << 29},
		"tables": {Cells: 1<<29 - 3, Tables: [][]float64{{1}, {2, 3}}},
		"terms":  {Code: make([]sheet.Instruction, 16_666)},
	} {
		if module, err := wasm.Compile(p); err != nil || len(module) == 0 {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A body can outgrow what a browser must accept although its terms do not: outputs are not terms. The first output
// takes 10 bytes, each other 7 and one for a cell further off 8; the locals and the end take 6.
func TestBodyTooLongForABrowserIsRefused(t *testing.T) {
	const others = (7_654_321 - 10 - 6 - 8) / 7
	p := &sheet.Program{Code: []sheet.Instruction{{Op: sheet.Literal, Value: 1}}, Cells: 17}
	p.Outputs = append(make([]sheet.Output, 1+others), sheet.Output{Cell: 16})
	if _, err := wasm.Compile(p); err != nil {
		t.Errorf("a body of 7,654,321 bytes: %v", err)
	}
	p.Outputs[0].Cell = 16
	if _, err := wasm.Compile(p); err == nil ||
		!strings.Contains(err.Error(), "compiles to 7654322 bytes, and a browser takes at most 7654321") {
		t.Errorf("error %v", err)
	}
}

// lookup looks into a table of three with an index into so many things.
func lookup(input sheet.Instruction, things, table int) *sheet.Program {
	return &sheet.Program{
		Code:  []sheet.Instruction{input, {Op: sheet.Index, B: things}, {Op: sheet.Lookup, A: 1, B: table}},
		Cells: 1, Tables: [][]float64{{1, 2, 3}},
	}
}
