// Package wasm turns a sheet.Program into a WebAssembly module: one memory that holds the cells, one function of
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

import "acreleaf/calc/sheet"

// Names of a module's two exports. The page's script knows them by the same letters.
const (
	MemoryName   = "m" // cell k is the little-endian binary64 at address 8k
	FunctionName = "r" // takes nothing, gives nothing: reads the input cells and writes the output cells
)

// Compile gives the bytes of the module that does what p.Run does. The same program always gives the same bytes.
// A program that could not run (a term that takes a later one, a cell that does not exist, a cell both read and
// written, an operation that does not exist, or one beyond what a browser must accept) gives an error that says so.
func Compile(p *sheet.Program) ([]byte, error) {
	if err := check(p); err != nil {
		return nil, err
	}
	figures, starts := pack(p.Tables)
	body := compileBody(p, starts)
	if len(body) > maxBody {
		return nil, tooLong(len(body))
	}
	return assemble(p, figures, body), nil
}
