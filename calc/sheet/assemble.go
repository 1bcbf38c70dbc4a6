package sheet

import (
	"math"
	"slices"
)

// An assembler turns terms into a Program. The same operation over the same operands is emitted once.
type assembler struct {
	program Program
	seen    map[instructionKey]int
}

type instructionKey struct {
	op      Op
	a, b, c int
	bits    uint64 // so that 0 and -0 stay apart
}

func newAssembler() *assembler { return &assembler{seen: map[instructionKey]int{}} }

// reset makes the assembler ready for another program, in the room that the last one took.
func (a *assembler) reset() {
	a.program = Program{Code: a.program.Code[:0], Outputs: a.program.Outputs[:0]}
	clear(a.seen)
}

// finish is the program, with no more room than it needs: a desk keeps it as long as the page.
func (a *assembler) finish() *Program {
	finished := a.program
	finished.Code, finished.Outputs = slices.Clone(finished.Code), slices.Clone(finished.Outputs)
	return &finished
}

func (a *assembler) add(in Instruction) int {
	key := instructionKey{in.Op, in.A, in.B, in.C, math.Float64bits(in.Value)}
	if i, ok := a.seen[key]; ok {
		return i
	}
	a.program.Code = append(a.program.Code, in)
	a.seen[key] = len(a.program.Code) - 1
	return len(a.program.Code) - 1
}

func (a *assembler) literal(v float64) int { return a.add(Instruction{Op: Literal, Value: v}) }

func (a *assembler) input(cell int) int { return a.add(Instruction{Op: Input, A: cell}) }

func (a *assembler) emit(op Op, args ...int) int {
	in := Instruction{Op: op}
	for i, operand := range []*int{&in.A, &in.B, &in.C} {
		if i < len(args) {
			*operand = args[i]
		}
	}
	return a.add(in)
}

func (a *assembler) output(from, cell int) {
	a.program.Outputs = append(a.program.Outputs, Output{From: from, Cell: cell})
}

// known maps the nodes that are already worked in one use of a sheet to their instructions.
type known map[*node]int

// work emits what a node needs and gives the instruction that holds its value.
func (a *assembler) work(n *node, k known) int {
	if i, ok := k[n]; ok {
		return i
	}
	i := a.workNew(n, k)
	k[n] = i
	return i
}

func (a *assembler) workNew(n *node, k known) int {
	switch n.kind {
	case kindNumber, kindConstant:
		return a.literal(n.value)
	case kindNamed:
		return a.work(n.args[0], k)
	case kindConvert:
		return a.convert(a.work(n.args[0], k), n.factor.Multiply, n.factor.Divide)
	case kindPower:
		base := a.work(n.args[0], k)
		product := base
		for range int(n.value) - 1 {
			product = a.emit(Multiply, product, base)
		}
		return product
	case kindArccosine:
		return a.arccosine(a.work(n.args[0], k))
	case kindLookup:
		return a.lookup(a.work(n.args[0], k), n.figures)
	case kindRecast:
		return a.work(n.args[0], k)
	case kindIf:
		return a.emit(Select, a.work(n.args[0], k), a.work(n.args[1], k), a.work(n.args[2], k))
	case kindOperation:
		args := make([]int, len(n.args))
		for i, arg := range n.args {
			args[i] = a.work(arg, k)
		}
		if n.slack != 0 {
			args[0] = a.emit(Subtract, args[0], a.literal(n.slack))
		}
		return a.emit(n.op, args...)
	}
	panic("sheet: a given was not filled in before its program was written")
}

// lookup gives the figure at the index that the choice is at.
func (a *assembler) lookup(choice int, figures []float64) int {
	index := a.add(Instruction{Op: Index, A: choice, B: len(figures)})
	return a.add(Instruction{Op: Lookup, A: index, B: a.table(figures)})
}

// table gives the number of a table, the same for the same figures.
func (a *assembler) table(figures []float64) int {
	for i, table := range a.program.Tables {
		if slices.Equal(table, figures) {
			return i
		}
	}
	a.program.Tables = append(a.program.Tables, figures)
	return len(a.program.Tables) - 1
}

// convert does as unit.Factor.Apply does: multiply, then divide, leaving out a step by one.
func (a *assembler) convert(value int, multiply, divide float64) int {
	if multiply != 1 {
		value = a.emit(Multiply, value, a.literal(multiply))
	}
	if divide != 1 {
		value = a.emit(Divide, value, a.literal(divide))
	}
	return value
}
