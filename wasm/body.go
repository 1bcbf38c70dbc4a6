package wasm

import (
	"math"

	"acreleaf/calc/sheet"
)

// A body writes the code of the one function. It starts from what is stored and asks for operands as it goes, so a
// term that reaches no output is never written. A term used once leaves its value on the operand stack; a term used
// more often is kept in a local the first time, because reading a local takes two bytes. All of it is pure, so the
// order in which terms are met does not matter.
type body struct {
	program *sheet.Program
	uses    []int    // by term, counting only users that reach an output
	local   []uint32 // by term: its local + 1, or 0 while it has none
	locals  uint32
	code    []byte
}

// compileBody gives the function body without its size: the locals and the expression (section 5.5.13).
func compileBody(p *sheet.Program) []byte {
	b := &body{
		program: p,
		uses:    countUses(p),
		local:   make([]uint32, len(p.Code)),
		code:    make([]byte, 0, 8*len(p.Code)+8*len(p.Outputs)),
	}
	for _, out := range p.Outputs {
		b.op(i32Const, 0)
		b.value(out.From)
		b.access(f64Store, out.Cell)
	}
	b.op(end)
	return append(b.declaration(), b.code...)
}

// declaration is the vector of locals: none, or one group of f64.
func (b *body) declaration() []byte {
	if b.locals == 0 {
		return []byte{0}
	}
	return append(appendUnsigned([]byte{1}, uint64(b.locals)), f64)
}

// countUses counts, from the last term to the first, how often each is taken by an output or by a term that is
// itself used.
func countUses(p *sheet.Program) []int {
	uses := make([]int, len(p.Code))
	for _, out := range p.Outputs {
		uses[out.From]++
	}
	for i := len(p.Code) - 1; i >= 0; i-- {
		if uses[i] == 0 {
			continue
		}
		in := p.Code[i]
		operands := [3]int{in.A, in.B, in.C}
		for _, operand := range operands[:in.Op.Operands()] {
			uses[operand]++
		}
		if in.Op == sheet.Index {
			uses[in.A]++ // it asks for its operand twice
		}
	}
	return uses
}

// value leaves the f64 of term i on the stack.
func (b *body) value(i int) {
	if b.local[i] != 0 {
		b.localAccess(localGet, b.local[i]-1)
		return
	}
	b.fresh(i)
	if b.uses[i] > 1 {
		b.localAccess(localTee, b.locals)
		b.locals++
		b.local[i] = b.locals
	}
}

// fresh computes the f64 of term i.
func (b *body) fresh(i int) {
	in := b.program.Code[i]
	switch in.Op {
	case sheet.Literal:
		b.constant(in.Value)
	case sheet.Input:
		b.op(i32Const, 0)
		b.access(f64Load, in.A)
	case sheet.Index:
		b.index(in)
	case sheet.Lookup:
		b.value(in.A)
		b.op(i32TruncF64S, i32Const, cellAlignment, i32Shl)
		b.access(f64Load, b.program.Cells+tableStart(b.program, in.B))
	case sheet.Select:
		b.value(in.B)
		b.value(in.C)
		b.condition(in.A)
		b.op(selectOp)
	default:
		if isTruth(in.Op) {
			b.truth(in)
			b.op(f64ConvertI32U)
			return
		}
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

// condition leaves an i32 on the stack that is 0 just when term i is 0. A truth that nobody else needs never becomes
// an f64.
func (b *body) condition(i int) {
	in := b.program.Code[i]
	if isTruth(in.Op) && b.uses[i] == 1 {
		b.truth(in)
		return
	}
	b.value(i)
	b.constant(0)
	b.op(f64Ne)
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

func (b *body) localAccess(op byte, index uint32) {
	b.op(op)
	b.code = appendUnsigned(b.code, uint64(index))
}

// access is a load or a store: the alignment as a power of two, then the offset (section 5.4.6). The address on the
// stack is always 0, and the cell stands in the offset.
func (b *body) access(op byte, cell int) {
	b.op(op, cellAlignment)
	b.code = appendUnsigned(b.code, uint64(cell)*cellBytes)
}
