package sheet

import (
	"math"
	"slices"
)

// An Op is one operation of a Program. Every operation is a single correctly rounded IEEE 754 binary64
// operation, so that native code and WebAssembly give the same bits.
type Op uint8

// The operations. A, B and C are the operands of the Instruction. A truth is 1 for true and 0 for false.
const (
	Literal     Op = iota // Value
	Input                 // the cell numbered A, filled in from outside before a run
	Add                   // A + B
	Subtract              // A - B
	Multiply              // A × B
	Divide                // A ÷ B
	Minimum               // the smaller of A and B; NaN if either is
	Maximum               // the larger of A and B; NaN if either is
	Floor                 // the largest whole number not above A
	Ceiling               // the smallest whole number not below A
	SquareRoot            // √A
	Negate                // -A
	Absolute              // |A|
	Less                  // 1 if A < B, else 0
	LessOrEqual           // 1 if A ≤ B, else 0
	Equal                 // 1 if A = B, else 0
	And                   // 1 if neither A nor B is 0, else 0
	Or                    // 1 if A or B is not 0, else 0
	Not                   // 1 if A is 0, else 0
	Select                // B if A is not 0, else C
	Index                 // A as an index into B things: at least 0, at most B - 1; 0 for what is no number
	Lookup                // Tables[B] at the index A, which must be an Index of no more than the table has
)

// Operands gives how many of A, B and C, from A on, name earlier instructions: 0, 1, 2 or 3.
func (op Op) Operands() int {
	switch op {
	case Literal, Input:
		return 0
	case Floor, Ceiling, SquareRoot, Negate, Absolute, Not, Index, Lookup:
		return 1
	case Select:
		return 3
	}
	return 2
}

// isStep says whether an operation gives whole numbers, and so leaves some out.
func (op Op) isStep() bool { return op.isTruth() || op == Floor || op == Ceiling }

func (op Op) isTruth() bool { return op >= Less && op <= Not }

// An Instruction computes one value from earlier ones: A, B and C are indexes into Program.Code, each below its own.
type Instruction struct {
	Op      Op
	A, B, C int
	Value   float64
}

// operands lists the earlier instructions that one takes.
func (in Instruction) operands() []int {
	all := [3]int{in.A, in.B, in.C}
	return all[:in.Op.Operands()]
}

// An Output writes the value of the instruction Code[From] to a cell.
type Output struct{ From, Cell int }

// A Trend says that the value of the instruction Of never goes down when that of From goes up, or never up. Those of
// one instruction name all that it follows from.
type Trend struct {
	Of, From int
	Up       bool
}

// A Program is straight-line arithmetic: no loops, no branches, no heap. It reads the cells that Input
// instructions name and writes the cells that Outputs name; no cell is both.
//
// In a compiled module, cell k is the 8 bytes at address 8k of the exported memory, a little-endian binary64.
type Program struct {
	Code    []Instruction
	Outputs []Output
	Cells   int         // how many cells there are; every cell number is below it
	Tables  [][]float64 // what Lookup looks up; none is empty
	Trends  []Trend     // what ranges are told that the code does not show

	// Guards holds, by the cell of a value that may be left out, the cell that says whether it is there (1) or not (0).
	Guards map[int]int
}

// Slice is the part of a program that some output cells need. It has the cells that the whole has.
func (p *Program) Slice(cells []int) *Program {
	part := &Program{Cells: p.Cells, Tables: p.Tables, Guards: p.Guards}
	wanted := make([]bool, len(p.Code))
	for _, out := range p.Outputs {
		if slices.Contains(cells, out.Cell) {
			wanted[out.From] = true
			part.Outputs = append(part.Outputs, out)
		}
	}
	for i, in := range slices.Backward(p.Code) {
		for _, from := range in.operands() {
			wanted[from] = wanted[from] || wanted[i]
		}
	}
	at := make([]int, len(p.Code))
	for i, in := range p.Code {
		if !wanted[i] {
			continue
		}
		at[i] = len(part.Code)
		for n, operand := range []*int{&in.A, &in.B, &in.C} {
			if n < in.Op.Operands() {
				*operand = at[*operand]
			}
		}
		part.Code = append(part.Code, in)
	}
	for n := range part.Outputs {
		part.Outputs[n].From = at[part.Outputs[n].From]
	}
	for _, t := range p.Trends {
		if wanted[t.Of] {
			part.Trends = append(part.Trends, Trend{at[t.Of], at[t.From], t.Up})
		}
	}
	return part
}

// Run reads the input cells, runs the program once and writes the output cells. len(cells) must be at least p.Cells.
func (p *Program) Run(cells []float64) { p.RunIn(make([]float64, len(p.Code)), cells) }

// RunIn is Run, with room for a value of each instruction, for a program that is run again and again.
func (p *Program) RunIn(values, cells []float64) {
	for i, in := range p.Code {
		switch in.Op {
		case Input:
			values[i] = cells[in.A]
		case Lookup:
			values[i] = p.Tables[in.B][int(values[in.A])]
		default:
			values[i] = in.compute(values)
		}
	}
	for _, out := range p.Outputs {
		cells[out.Cell] = values[out.From]
	}
}

// compute gives the value of one instruction. Each result is stored before it is used again, which is what keeps
// the compiler from fusing a product into a sum.
func (in Instruction) compute(v []float64) float64 {
	switch in.Op {
	case Literal:
		return in.Value
	case Add:
		return float64(v[in.A] + v[in.B])
	case Subtract:
		return float64(v[in.A] - v[in.B])
	case Multiply:
		return float64(v[in.A] * v[in.B])
	case Divide:
		return float64(v[in.A] / v[in.B])
	case Minimum:
		return minimum(v[in.A], v[in.B])
	case Maximum:
		return maximum(v[in.A], v[in.B])
	case Floor:
		return math.Floor(v[in.A])
	case Ceiling:
		return math.Ceil(v[in.A])
	case SquareRoot:
		return math.Sqrt(v[in.A])
	case Negate:
		return -v[in.A]
	case Absolute:
		return math.Abs(v[in.A])
	case Index:
		return in.index(v[in.A])
	}
	return in.decide(v)
}

// index keeps a number within the indexes of an Index.
func (in Instruction) index(v float64) float64 {
	if v >= 0 {
		return minimum(v, float64(in.B-1))
	}
	return 0
}

// decide gives the value of a comparison, a connective or a choice.
func (in Instruction) decide(v []float64) float64 {
	switch in.Op {
	case Less:
		return truth(v[in.A] < v[in.B])
	case LessOrEqual:
		return truth(v[in.A] <= v[in.B])
	case Equal:
		return truth(v[in.A] == v[in.B])
	case And:
		return truth(v[in.A] != 0 && v[in.B] != 0)
	case Or:
		return truth(v[in.A] != 0 || v[in.B] != 0)
	case Not:
		return truth(v[in.A] == 0)
	case Select:
		if v[in.A] != 0 {
			return v[in.B]
		}
		return v[in.C]
	}
	panic("sheet: a program holds an operation that does not exist")
}

func truth(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// minimum is math.Min but for one case: with an infinity beside a NaN, WebAssembly gives NaN.
func minimum(a, b float64) float64 {
	if math.IsNaN(a) || math.IsNaN(b) {
		return math.NaN()
	}
	return math.Min(a, b)
}

func maximum(a, b float64) float64 {
	if math.IsNaN(a) || math.IsNaN(b) {
		return math.NaN()
	}
	return math.Max(a, b)
}
