// Package wasm turns a sheet.Program into a WebAssembly module: one memory that holds the cells, a function of
// straight-line f64 code, no imports. It owns the binary form and nothing else: it must not know of units, pages
// or readers, and it does no arithmetic of its own, so that what a page computes is what Program.Run computes.
//
// Section numbers in comments are those of the W3C WebAssembly Core Specification, version 2.0. The instructions
// used are all in version 1 as well, so every browser that has WebAssembly at all can run a module.
//
// Equal bits: every operation of a Program is one instruction here, or a fixed few that give 0 or 1. The one thing
// left open is the payload of a NaN, which section 4.3.3 leaves to the engine; a result that is NaN in one is NaN
// in the other.
package wasm

import (
	"slices"

	"acreleaf/calc/sheet"
)

// Names of a module's exports. The page's script knows them by the same letters. A function takes nothing and gives
// nothing: it reads the input cells of its program and writes the output cells.
const (
	MemoryName   = "m" // cell k is the little-endian binary64 at address 8k
	FunctionName = "r" // of the first program
	SecondName   = "s" // of the second, where there are two
)

// Compile gives the bytes of the module that does what the Run of one program or of two does, each on cells of its own:
// those of the second come after those of the first. The same programs always give the same bytes. A program that could
// not run (a term that takes a later one, a cell that does not exist, a cell both read and written, an operation that
// does not exist, or one beyond what a browser must accept) gives an error that says so.
func Compile(first *sheet.Program, second ...*sheet.Program) ([]byte, error) {
	programs := append([]*sheet.Program{first}, second...)
	cells := 0
	var tables [][]float64
	for _, p := range programs {
		if err := check(p, cells+len(slices.Concat(tables...))); err != nil {
			return nil, err
		}
		cells += p.Cells
		tables = append(tables, p.Tables...)
	}
	m := &module{cells: cells, tables: len(tables) > 0}
	figures, starts := pack(tables)
	m.figures = figures
	for i := range starts {
		starts[i] += cells
	}
	at := 0
	for _, p := range programs {
		body := compileBody(p, at, starts[:len(p.Tables)])
		if len(body) > maxBody {
			return nil, tooLong(len(body))
		}
		m.bodies = append(m.bodies, body)
		at, starts = at+p.Cells, starts[len(p.Tables):]
	}
	return m.assemble(), nil
}
