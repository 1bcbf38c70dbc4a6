package main

import (
	"encoding/binary"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
)

// An entry is what the browser is told of a subject.
type entry struct {
	Name   string `json:"name"`
	Seed   uint32 `json:"seed"`
	Reads  []int  `json:"reads"`
	Writes []int  `json:"writes"`
	Module string `json:"module"` // file names within the folder
	Sums   string `json:"sums"`
}

// write puts the modules, the hashes and a list of them into a folder.
func write(dir string, all []subject) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	var list []entry
	for i, s := range all {
		e := entry{
			Name: s.name, Seed: newDraw(i).state, Reads: s.reads, Writes: s.writes,
			Module: fmt.Sprintf("%d.wasm", i), Sums: fmt.Sprintf("%d.sums", i),
		}
		sums, err := s.sums(i)
		if err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(dir, e.Module), s.module, 0o644); err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(dir, e.Sums), sums, 0o644); err != nil {
			return err
		}
		list = append(list, e)
	}
	text, err := json.Marshal(list)
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(dir, "programs.json"), text, 0o644)
}

// sums runs the subject on all its inputs and gives the hash of each run, 8 bytes little-endian.
func (s subject) sums(n int) ([]byte, error) {
	random := newDraw(n)
	cells := make([]float64, s.cells)
	sums := make([]byte, 0, 8*inputs)
	for range inputs {
		if err := s.once(random, cells); err != nil {
			return nil, err
		}
		one := newSum()
		for _, cell := range s.writes {
			one.add(cells[cell])
		}
		sums = binary.LittleEndian.AppendUint32(sums, one.a)
		sums = binary.LittleEndian.AppendUint32(sums, one.b)
	}
	return sums, nil
}

// once fills the cells with the next numbers and runs the subject.
func (s subject) once(random *draw, cells []float64) error {
	for _, cell := range s.reads {
		cells[cell] = random.number()
	}
	if err := s.machine.run(cells); err != nil {
		return fmt.Errorf("%s does not run: %w", s.name, err)
	}
	return nil
}

// showRun shows the cells that one run of a subject writes, each as a number and as bits.
func showRun(w io.Writer, all []subject, name string, input int) error {
	for i, s := range all {
		if s.name != name {
			continue
		}
		random := newDraw(i)
		cells := make([]float64, s.cells)
		for range input + 1 {
			if err := s.once(random, cells); err != nil {
				return err
			}
		}
		for _, cell := range s.writes {
			fmt.Fprintf(w, "cell %d: %v %016x\n", cell, cells[cell], math.Float64bits(cells[cell]))
		}
		return nil
	}
	return fmt.Errorf("there is no program named %s", name)
}
