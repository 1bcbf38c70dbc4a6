package sheet

import "fmt"

// MostRanges is how many numbers of one program may be ranges at once.
const MostRanges = 10

// steps is at how many values a range is worked, by how many ranges there are: about 250 to 1,000 runs in all.
var steps = [MostRanges + 1]int{1, 257, 17, 7, 5, 3, 3, 2, 2, 2, 2}

// Spread works the program for ranges. low and high hold the two ends of every input cell; an input whose ends are the
// same is a single number. After it, they hold the least and the greatest value found of every output cell.
//
// Every combination of the ends is worked, and with a few ranges values between them too, evenly spaced. So the result
// is exact for an output that moves one way with each input. One that goes up and down, such as the size of a feed when
// the count of feeds steps up, is found to the nearest of these values.
func (p *Program) Spread(low, high []float64) error {
	ranged := p.ranged(low, high)
	if len(ranged) > MostRanges {
		return fmt.Errorf("%d of these numbers are ranges, and at most %d may be; make some of them one number",
			len(ranged), MostRanges)
	}
	if len(ranged) == 0 {
		p.Run(low)
		copy(high, low)
		return nil
	}
	s := &spread{program: p, low: low, high: high, cells: make([]float64, p.Cells), at: make([]int, len(ranged))}
	copy(s.cells, low)
	s.least, s.greatest = make([]float64, len(p.Outputs)), make([]float64, len(p.Outputs))
	s.found = make([]bool, len(p.Outputs))
	for more := true; more; more = s.next() {
		for i, cell := range ranged {
			s.cells[cell] = between(low[cell], high[cell], s.at[i], steps[len(ranged)])
		}
		p.Run(s.cells)
		s.gather()
	}
	for i, out := range p.Outputs {
		low[out.Cell], high[out.Cell] = s.least[i], s.greatest[i]
	}
	return nil
}

// ranged lists the input cells that hold a range, in the order of the code.
func (p *Program) ranged(low, high []float64) []int {
	var cells []int
	for _, in := range p.Code {
		if in.Op == Input && low[in.A] != high[in.A] {
			cells = append(cells, in.A)
		}
	}
	return cells
}

// between is the i-th of n evenly spaced values. Each operation is rounded on its own, so that the page finds the same.
func between(low, high float64, i, n int) float64 {
	if i == n-1 {
		return high
	}
	width := float64(high - low)
	part := float64(width * float64(i))
	return float64(low + float64(part/float64(n-1)))
}

// A spread is one run of Spread.
type spread struct {
	program         *Program
	low, high       []float64
	cells           []float64
	at              []int // by range: which of its values is worked
	least, greatest []float64
	found           []bool // by output: whether it was there at any of the values so far
}

// next moves on to the next combination. False after the last.
func (s *spread) next() bool {
	for i := range s.at {
		s.at[i]++
		if s.at[i] < steps[len(s.at)] {
			return true
		}
		s.at[i] = 0
	}
	return false
}

func (s *spread) gather() {
	for i, out := range s.program.Outputs {
		if guard, guarded := s.program.Guards[out.Cell]; guarded && s.cells[guard] == 0 {
			continue
		}
		value := s.cells[out.Cell]
		if !s.found[i] {
			s.least[i], s.greatest[i], s.found[i] = value, value, true
			continue
		}
		s.least[i], s.greatest[i] = minimum(s.least[i], value), maximum(s.greatest[i], value)
	}
}
