package main

import (
	"fmt"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/check/internal/pressed"
	"acreleaf/wasm"
	"acreleaf/wasm/wasmtest"
)

// randomPrograms is how many programs of random terms are compared.
const randomPrograms = 200

// A subject is one program to compare, with its module and the run that the module must agree with.
type subject struct {
	name    string
	module  []byte
	reads   []int // the cells that are filled before a run
	writes  []int // the cells that are compared after it
	cells   int
	machine machine
}

// A machine works a program: from the cells before a run to the cells after it.
type machine interface{ run(cells []float64) error }

// native is the evaluator that the press and the terminal use.
type native struct{ program *sheet.Program }

func (n native) run(cells []float64) error {
	n.program.Run(cells)
	return nil
}

// subjects gives everything that is compared: the catalogue sheet by sheet, the random programs, and the module of
// each page of the site.
func subjects(site pressed.Site) ([]subject, error) {
	var all []subject
	for _, s := range calc.Standard().All() {
		graph := &sheet.Graph{Slips: true}
		graph.Add(s.Name, s, nil)
		if err := graph.Close(); err != nil {
			return nil, fmt.Errorf("the sheet %s: %w", s.Name, err)
		}
		one, err := programSubject(s.Name, graph.Program)
		if err != nil {
			return nil, err
		}
		all = append(all, one)
	}
	for seed := range uint64(randomPrograms) {
		one, err := programSubject(fmt.Sprintf("random-%d", seed), wasmtest.Program(seed))
		if err != nil {
			return nil, err
		}
		all = append(all, one)
	}
	pages, err := pageSubjects(site)
	return append(all, pages...), err
}

func programSubject(name string, p *sheet.Program) (subject, error) {
	module, err := wasm.Compile(p)
	if err != nil {
		return subject{}, fmt.Errorf("the program %s: %w", name, err)
	}
	s := subject{name: name, module: module, reads: wasmtest.InputCells(p), cells: p.Cells, machine: native{p}}
	for _, out := range p.Outputs {
		s.writes = append(s.writes, out.Cell)
	}
	return s, nil
}
