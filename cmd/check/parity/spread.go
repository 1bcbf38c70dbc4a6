package main

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/wasm"
	"acreleaf/wasm/wasmtest"
)

// spreadCases is how many sets of ranges each calculation is worked for.
const spreadCases = 14

// mostRanges is how many ranges a calculation is worked for at once at the most; the first set has none.
const mostRanges = 7

// A spreading is a calculation worked for ranges, for the browser to work again.
type spreading struct {
	Name    string       `json:"name"`
	Module  string       `json:"module"` // its file name within the folder
	Inputs  []int        `json:"inputs"`
	Outputs []int        `json:"outputs"`
	Guards  [][2]int     `json:"guards"`
	Trends  [][3]int     `json:"trends"`
	Cases   []spreadCase `json:"cases"`
}

// A spreadCase is the two ends of every input, and the hash of those of every output: all the low ones, then all the
// high ones.
type spreadCase struct {
	Low  []float64 `json:"low"`
	High []float64 `json:"high"`
	Sum  [2]uint32 `json:"sum"`
}

// writeSpreads works every calculation of the catalogue for ranges and puts what came of it into a folder.
func writeSpreads(dir string) error {
	random := rand.New(rand.NewPCG(3, 4))
	var list []spreading
	for _, s := range calc.Standard().All() {
		graph := &sheet.Graph{}
		use := graph.Add(s.Name, s, nil)
		if err := graph.Close(); err != nil {
			return fmt.Errorf("the sheet %s: %w", s.Name, err)
		}
		module, err := wasm.Compile(graph.Program)
		if err != nil {
			return fmt.Errorf("the program %s: %w", s.Name, err)
		}
		one := spreading{Name: s.Name, Module: s.Name + ".wasm", Inputs: wasmtest.InputCells(graph.Program)}
		for _, out := range graph.Program.Outputs {
			one.Outputs = append(one.Outputs, out.Cell)
			if guard, guarded := graph.Program.Guards[out.Cell]; guarded {
				one.Guards = append(one.Guards, [2]int{out.Cell, guard})
			}
		}
		for _, t := range use.Trends() {
			up := 0
			if t.Up {
				up = 1
			}
			one.Trends = append(one.Trends, [3]int{t.Of, t.From, up})
		}
		for ranges := range spreadCases {
			c, err := one.spread(random, use, graph.Program, ranges%(mostRanges+1))
			if err != nil {
				return fmt.Errorf("the sheet %s: %w", s.Name, err)
			}
			one.Cases = append(one.Cases, c)
		}
		list = append(list, one)
		if err := os.WriteFile(filepath.Join(dir, one.Module), module, 0o644); err != nil {
			return err
		}
	}
	text, err := json.Marshal(list)
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(dir, "spreads.json"), text, 0o644)
}

// spread works the program for one set of ranges, of which there are as many as asked for, or as the sheet has numbers.
func (s *spreading) spread(r *rand.Rand, use *sheet.Use, p *sheet.Program, ranges int) (spreadCase, error) {
	low, high := make([]float64, p.Cells), make([]float64, p.Cells)
	givens := use.Sheet.Givens
	for _, i := range r.Perm(len(givens)) {
		given := givens[i]
		if given.Optional && ranges == 0 && r.IntN(2) == 0 {
			continue
		}
		e := draft(r, given)
		if len(given.Choices) > 0 || ranges == 0 {
			e.High = e.Value
		} else {
			ranges--
		}
		use.Enter(low, high, given.Name, e)
	}
	var c spreadCase
	for _, cell := range s.Inputs {
		c.Low, c.High = append(c.Low, low[cell]), append(c.High, high[cell])
	}
	p.Spread(low, high)
	sum := newSum()
	for _, ends := range [][]float64{low, high} {
		for _, cell := range s.Outputs {
			sum.add(ends[cell])
		}
	}
	c.Sum = [2]uint32{sum.a, sum.b}
	return c, nil
}

// draft fills in a given with a range of what it takes; of a choice, with one option.
func draft(r *rand.Rand, g *sheet.Given) sheet.Entry {
	if len(g.Choices) > 0 {
		return sheet.Entry{Value: float64(r.IntN(len(g.Choices)))}
	}
	low, high := g.Low, g.High
	e := sheet.Entry{Other: g.Else.Unit != "" && r.IntN(2) == 0}
	if e.Other {
		low, high = g.Else.Low, g.Else.High
	}
	a, b := low+(high-low)*r.Float64(), low+(high-low)*r.Float64()
	e.Value, e.High = min(a, b), max(a, b)
	return e
}
