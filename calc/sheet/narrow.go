package sheet

import (
	"math"
	"slices"
)

// Narrow is the program for inputs of which some are known: by cell, all numbers that it may have. What they settle
// is worked now, and figures of tables that nobody can look up are 0. It gives the same bits as the whole, for such
// inputs. It is for a module, and has no trends and no guards.
func (p *Program) Narrow(known map[int][]float64) *Program {
	n := &narrowing{from: p, known: known, a: newAssembler(), looked: map[int][]bool{}}
	for _, in := range p.Code {
		n.code = append(n.code, n.narrow(in))
	}
	a := n.a
	for _, out := range p.Outputs {
		a.output(n.code[out.From].at, out.Cell)
	}
	narrowed := a.finish()
	narrowed.Cells = p.Cells
	n.cutTables(narrowed)
	return narrowed
}

// A narrowing makes the program of Narrow.
type narrowing struct {
	from   *Program
	known  map[int][]float64
	a      *assembler
	code   []narrowed     // by the instructions of the program as it was
	looked map[int][]bool // by table, the figures that may be looked up
}

// Narrowed is what an instruction became: its place, and what is known of it.
type narrowed struct {
	at     int
	cell   int       // the one input that it follows from; see the constants
	values []float64 // what it is for each number of that input; one alone for what never changes
}

const (
	noInput   = -1 // it never changes
	manyInput = -2 // it follows from an input that is not known, or from several
)

func (n *narrowing) literal(v float64) narrowed {
	return narrowed{at: n.a.literal(v), cell: noInput, values: []float64{v}}
}

// narrow adds what an instruction becomes.
func (n *narrowing) narrow(in Instruction) narrowed {
	if in.Op == Literal {
		return n.literal(in.Value)
	}
	var operands []narrowed
	for _, from := range in.operands() {
		operands = append(operands, n.code[from])
	}
	made := narrowed{cell: manyInput}
	if in.Op == Input {
		if values, known := n.known[in.A]; known {
			made = narrowed{cell: in.A, values: values}
		}
	} else {
		made = n.worked(in, operands)
	}
	other := func(v float64) bool { return math.Float64bits(v) != math.Float64bits(made.values[0]) }
	if made.cell != manyInput && !slices.ContainsFunc(made.values, other) {
		return n.literal(made.values[0])
	}
	if settled, is := n.settled(in, operands); is {
		return settled
	}
	if in.Op == Lookup {
		n.look(in, operands[0])
	}
	for i, operand := range []*int{&in.A, &in.B, &in.C}[:len(operands)] {
		*operand = operands[i].at
	}
	made.at = n.a.add(in)
	return made
}

// worked is what an instruction gives for each number of the one input that all its operands follow from.
func (n *narrowing) worked(in Instruction, operands []narrowed) narrowed {
	made := narrowed{cell: noInput, values: make([]float64, 1)}
	for _, operand := range operands {
		switch {
		case operand.cell == manyInput, made.cell >= 0 && operand.cell >= 0 && operand.cell != made.cell:
			return narrowed{cell: manyInput}
		case operand.cell >= 0:
			made = narrowed{cell: operand.cell, values: make([]float64, len(operand.values))}
		}
	}
	table := in.B
	for i, operand := range []*int{&in.A, &in.B, &in.C}[:len(operands)] {
		*operand = i
	}
	for i := range made.values {
		var v [3]float64
		for j, operand := range operands {
			v[j] = operand.values[min(i, len(operand.values)-1)]
		}
		if in.Op == Lookup {
			made.values[i] = n.from.Tables[table][int(v[0])]
		} else {
			made.values[i] = in.compute(v[:])
		}
	}
	return made
}

// settled is what a choice or a connective comes to where one operand decides it.
func (n *narrowing) settled(in Instruction, operands []narrowed) (narrowed, bool) {
	if in.Op == Select && operands[0].cell == noInput {
		if operands[0].values[0] != 0 {
			return operands[1], true
		}
		return operands[2], true
	}
	if in.Op != And && in.Op != Or {
		return narrowed{}, false
	}
	for i, operand := range operands {
		if operand.cell != noInput {
			continue
		}
		holds, other := operand.values[0] != 0, operands[1-i]
		if holds == (in.Op == Or) {
			return n.literal(truth(holds)), true
		}
		if n.a.program.Code[other.at].Op.isTruth() {
			return other, true
		}
	}
	return narrowed{}, false
}

// look notes which figures of a table may be looked up.
func (n *narrowing) look(in Instruction, index narrowed) {
	if n.looked[in.B] == nil {
		n.looked[in.B] = make([]bool, len(n.from.Tables[in.B]))
	}
	looked := n.looked[in.B]
	for i := range looked {
		looked[i] = looked[i] || index.cell == manyInput
	}
	for _, at := range index.values {
		looked[int(at)] = true // as Run looks it up
	}
}

// cutTables gives the program the tables that are looked into, with the figures that may be.
func (n *narrowing) cutTables(p *Program) {
	places := map[int]int{}
	for i, in := range p.Code {
		if in.Op != Lookup {
			continue
		}
		place, is := places[in.B]
		if !is {
			table := slices.Clone(n.from.Tables[in.B])
			for j, looked := range n.looked[in.B] {
				if !looked {
					table[j] = 0
				}
			}
			place = len(p.Tables)
			places[in.B] = place
			p.Tables = append(p.Tables, table)
		}
		p.Code[i].B = place
	}
}
