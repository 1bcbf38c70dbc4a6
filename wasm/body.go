package wasm

import (
	"math"
	"slices"

	"acreleaf/calc/sheet"
)

// A body writes the code of the one function. It starts from what is stored and asks for operands as it goes, so a
// term that reaches no output is never written. A term used once leaves its value on the operand stack; a term used
// more often is kept in a local the first time, because reading a local takes two bytes. All of it is pure, so the
// order in which terms are met does not matter.
type body struct {
	program *sheet.Program
	cell    int          // where its cells begin
	tables  []int        // the cell where each table begins
	uses    [forms][]int // by term, how many users are still to come that reach an output
	kept    [forms][]int // by term: its local + 1, or 0 while it has none
	free    [2][]int     // locals that nobody needs any more, of f64 and of i32
	locals  [2]int       // how many there are of each
	first   int          // the number of the first local of i32
	code    []byte
}

// A form is what a term is asked for: its number, an i32 that is 0 just when the number is, or the address that an
// index comes to. A truth is an i32 first, and an index a number; each has the other form by a conversion.
type form int

const (
	number form = iota
	question
	address
	forms
)

// compileBody gives the function body without its size: the locals and the expression (section 5.5.13). It is written
// twice, since the locals of i32 are numbered after all of f64. At the end of the first time all locals are free, in
// order, so that each gets the same number again.
func compileBody(p *sheet.Program, cell int, tables []int) []byte {
	b := &body{program: p, cell: cell, tables: tables}
	for f := range forms {
		b.uses[f], b.kept[f] = make([]int, len(p.Code)), make([]int, len(p.Code))
	}
	b.write()
	b.write()
	return append(b.declaration(), b.code...)
}

func (b *body) write() {
	b.count()
	b.first = b.locals[0]
	for f := range b.kept {
		clear(b.kept[f])
	}
	b.code = b.code[:0]
	for _, out := range b.program.Outputs {
		b.op(i32Const, 0)
		b.value(out.From)
		b.access(f64Store, b.cell+out.Cell)
	}
	b.op(end)
}

// declaration is the vector of locals: a group of f64 and one of i32. Either may be empty, so that a reader of modules
// has one form to know.
func (b *body) declaration() []byte {
	groups := appendUnsigned([]byte{2}, uint64(b.locals[0]))
	groups = appendUnsigned(append(groups, f64), uint64(b.locals[1]))
	return append(groups, i32)
}

// count counts, from the last term to the first, how often each is taken by an output or by a term that is itself
// used, and in which form.
func (b *body) count() {
	for f := range b.uses {
		clear(b.uses[f])
	}
	for _, out := range b.program.Outputs {
		b.uses[b.formOf(out.From, number)][out.From]++
	}
	for i := len(b.program.Code) - 1; i >= 0; i-- {
		in := b.program.Code[i]
		if !isTruth(in.Op) {
			for _, f := range []form{question, address} {
				if b.uses[f][i] > 0 {
					b.uses[number][i]++ // what the other form is made from
				}
			}
		}
		if b.uses[number][i]+b.uses[question][i] == 0 {
			continue
		}
		operands := [...]int{in.A, in.B, in.C}
		for operand, from := range operands[:in.Op.Operands()] {
			b.uses[b.formOf(from, asks(in.Op, operand))][from]++
		}
		if in.Op == sheet.Index {
			b.uses[b.formOf(in.A, number)][in.A]++ // it asks for its operand twice
		}
	}
}

// asks is the form in which an operation takes an operand.
func asks(op sheet.Op, operand int) form {
	switch {
	case op == sheet.Lookup:
		return address
	case op == sheet.And, op == sheet.Or, op == sheet.Not, op == sheet.Select && operand == 0:
		return question
	}
	return number
}

// formOf is the form that is kept of a term that is asked for in another: a truth is kept as its i32 alone.
func (b *body) formOf(i int, f form) form {
	if isTruth(b.program.Code[i].Op) {
		return question
	}
	return f
}

// keep leaves a form of term i on the stack: from its local, or fresh, and then in a local if it is asked for again.
func (b *body) keep(i int, f form, fresh func()) {
	group := min(int(f), 1)
	b.uses[f][i]--
	if local := b.kept[f][i]; local != 0 {
		b.local(localGet, group, local-1)
		if b.uses[f][i] == 0 {
			b.free[group] = append(b.free[group], local-1)
			slices.Sort(b.free[group])
		}
		return
	}
	fresh()
	if b.uses[f][i] > 0 {
		local := b.locals[group]
		if n := len(b.free[group]); n > 0 {
			local, b.free[group] = b.free[group][0], b.free[group][1:]
		} else {
			b.locals[group]++
		}
		b.local(localTee, group, local)
		b.kept[f][i] = local + 1
	}
}

// value leaves the f64 of term i on the stack.
func (b *body) value(i int) {
	if isTruth(b.program.Code[i].Op) {
		b.condition(i)
		b.op(f64ConvertI32U)
		return
	}
	b.keep(i, number, func() { b.fresh(i) })
}

// condition leaves an i32 on the stack that is 0 just when term i is 0.
func (b *body) condition(i int) {
	b.keep(i, question, func() {
		if in := b.program.Code[i]; isTruth(in.Op) {
			b.truth(in)
			return
		}
		b.value(i)
		b.constant(0)
		b.op(f64Ne)
	})
}

// address leaves the i32 on the stack that the index of term i comes to in a table at address 0.
func (b *body) address(i int) {
	b.keep(i, address, func() {
		b.value(i)
		b.op(i32TruncF64S, i32Const, cellAlignment, i32Shl)
	})
}

// fresh computes the f64 of term i.
func (b *body) fresh(i int) {
	in := b.program.Code[i]
	switch in.Op {
	case sheet.Literal:
		b.constant(in.Value)
	case sheet.Input:
		b.op(i32Const, 0)
		b.access(f64Load, b.cell+in.A)
	case sheet.Index:
		b.index(in)
	case sheet.Lookup:
		b.address(in.A)
		b.access(f64Load, b.tables[in.B])
	case sheet.Select:
		b.value(in.B)
		b.value(in.C)
		b.condition(in.A)
		b.op(selectOp)
	default:
		b.value(in.A)
		if in.Op.Operands() == 2 {
			b.value(in.B)
		}
		b.op(arithmetic[in.Op])
	}
}

// index keeps a number within 0 and the last index. A trap is not possible after it: NaN is not at least 0.
func (b *body) index(in sheet.Instruction) {
	b.value(in.A)
	b.constant(0)
	b.value(in.A)
	b.constant(0)
	b.op(f64Ge, selectOp)
	b.constant(float64(in.B - 1))
	b.op(f64Min)
}

// truth leaves the i32 1 or 0 of a comparison or connective.
func (b *body) truth(in sheet.Instruction) {
	switch in.Op {
	case sheet.Less, sheet.LessOrEqual, sheet.Equal:
		b.value(in.A)
		b.value(in.B)
		b.op(comparison[in.Op])
	case sheet.And:
		b.condition(in.A)
		b.condition(in.B)
		b.op(i32And)
	case sheet.Or:
		b.condition(in.A)
		b.condition(in.B)
		b.op(i32Or)
	case sheet.Not:
		b.condition(in.A)
		b.op(i32Eqz)
	}
}

func isTruth(op sheet.Op) bool { return op >= sheet.Less && op <= sheet.Not }

func (b *body) op(bytes ...byte) { b.code = append(b.code, bytes...) }

// constant is f64.const: the 8 bytes of the number, low byte first (section 5.2.3). A small whole number is shorter as
// an i32 that is converted, which is exact; 0 below zero is not one.
func (b *body) constant(v float64) {
	if v == math.Trunc(v) && math.Abs(v) < 64 && math.Float64bits(v) != 1<<63 {
		b.op(i32Const)
		b.code = appendSigned(b.code, int64(v))
		b.op(f64ConvertI32S)
		return
	}
	b.op(f64Const)
	bits := math.Float64bits(v)
	for shift := 0; shift < 64; shift += 8 {
		b.op(byte(bits >> shift))
	}
}

// local reads or writes a local of the first type or of the second.
func (b *body) local(op byte, group, index int) {
	b.op(op)
	b.code = appendUnsigned(b.code, uint64(group*b.first+index))
}

// access is a load or a store: the alignment as a power of two, then the offset (section 5.4.6). The address on the
// stack is always 0, and the cell is in the offset.
func (b *body) access(op byte, cell int) {
	b.op(op, cellAlignment)
	b.code = appendUnsigned(b.code, uint64(cell)*cellBytes)
}
