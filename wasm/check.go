package wasm

import (
	"errors"
	"fmt"

	"acreleaf/calc/sheet"
)

// What a browser must accept, from "Implementation-defined Limits" in the W3C WebAssembly JavaScript Interface.
const (
	maxBody   = 7_654_321 // bytes of one function, its locals included
	maxPages  = 65_536    // pages of one memory
	maxLocals = 50_000    // of one function
	maxCells  = maxPages * pageBytes / cellBytes
)

// maxTerms keeps a module within the locals that a browser must accept, at most one for each form of a term, and the
// walk over a program shallow. A page of twenty worksheets has about a thousand terms.
const maxTerms = maxLocals / int(forms)

// check says why p cannot be compiled where so many cells are taken already, or nil.
func check(p *sheet.Program, taken int) error {
	switch {
	case p == nil:
		return errors.New("wasm: there is no program to compile")
	case p.Cells < 0 || p.Cells > maxCells-taken-figures(p):
		return fmt.Errorf("wasm: a module holds 0 to %d cells, and the program asks for %d", maxCells, p.Cells)
	case len(p.Code) > maxTerms:
		return fmt.Errorf("wasm: a module holds at most %d terms, and the program has %d", maxTerms, len(p.Code))
	}
	readBy := make(map[int]int)
	for i, in := range p.Code {
		if err := checkInstruction(i, in, p.Cells); err != nil {
			return err
		}
		if err := checkLookup(p, i, in); err != nil {
			return err
		}
		if in.Op == sheet.Input {
			readBy[in.A] = i
		}
	}
	return checkOutputs(p, readBy)
}

// figures is how many there are in all tables.
func figures(p *sheet.Program) int {
	sum := 0
	for _, table := range p.Tables {
		sum += len(table)
	}
	return sum
}

func checkInstruction(i int, in sheet.Instruction, cells int) error {
	if in.Op > sheet.Lookup {
		return fmt.Errorf("wasm: term %d has operation number %d, which does not exist", i, in.Op)
	}
	if in.Op == sheet.Input && (in.A < 0 || in.A >= cells) {
		return fmt.Errorf("wasm: term %d reads cell %d, and the program has %d cells", i, in.A, cells)
	}
	operands := [...]int{in.A, in.B, in.C}
	for _, operand := range operands[:in.Op.Operands()] {
		if operand < 0 || operand >= i {
			return fmt.Errorf("wasm: term %d takes term %d, which does not come before it", i, operand)
		}
	}
	return nil
}

// checkLookup refuses an index that could lead outside its table.
func checkLookup(p *sheet.Program, i int, in sheet.Instruction) error {
	switch {
	case in.Op == sheet.Index && in.B < 1:
		return fmt.Errorf("wasm: term %d is an index into %d things", i, in.B)
	case in.Op != sheet.Lookup:
		return nil
	case in.B < 0 || in.B >= len(p.Tables):
		return fmt.Errorf("wasm: term %d looks into table %d, and the program has %d tables", i, in.B, len(p.Tables))
	case p.Code[in.A].Op != sheet.Index || p.Code[in.A].B > len(p.Tables[in.B]):
		return fmt.Errorf("wasm: term %d looks into table %d with term %d, which may lead outside it", i, in.B, in.A)
	}
	return nil
}

// checkOutputs refuses an output that names a missing term or cell, or a cell that a term reads: a stale answer
// would be taken for an input on the next run.
func checkOutputs(p *sheet.Program, readBy map[int]int) error {
	for _, out := range p.Outputs {
		if out.From < 0 || out.From >= len(p.Code) {
			return fmt.Errorf("wasm: cell %d takes term %d, and the program has %d terms", out.Cell, out.From, len(p.Code))
		}
		if out.Cell < 0 || out.Cell >= p.Cells {
			return fmt.Errorf("wasm: term %d goes to cell %d, and the program has %d cells", out.From, out.Cell, p.Cells)
		}
		if term, read := readBy[out.Cell]; read {
			return fmt.Errorf("wasm: cell %d is read by term %d and written by term %d; a cell is one or the other",
				out.Cell, term, out.From)
		}
	}
	return nil
}

func tooLong(size int) error {
	return fmt.Errorf("wasm: the program compiles to %d bytes, and a browser takes at most %d in one function",
		size, maxBody)
}
