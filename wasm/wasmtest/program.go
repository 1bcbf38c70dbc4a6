// Package wasmtest makes random programs and random cells to hold compiled modules against sheet.Program.Run. The
// same seed always gives the same program, so that every engine under test is asked the same things. It is for
// tests only: nothing that is pressed into a page may import it.
package wasmtest

import (
	"encoding/binary"
	"math"
	"math/rand/v2"

	"acreleaf/calc/sheet"
)

const (
	termBytes = 4    // of the byte string, for one term
	farAway   = 9000 // a cell beyond the first page of memory, whose address takes a longer offset
)

// Program gives the random program numbered seed, of 4 to 200 terms.
func Program(seed uint64) *sheet.Program {
	r := rand.New(rand.NewPCG(seed, 0x5eed))
	data := make([]byte, 3+termBytes*(4+r.IntN(197)))
	for i := range data {
		data[i] = byte(r.Uint32())
	}
	return FromBytes(data)
}

// FromBytes reads any byte string as a program that can be compiled; fuzz tests start from it. The first three bytes
// give the number of inputs and of outputs and where the cells lie; each four bytes after them are one term.
func FromBytes(data []byte) *sheet.Program {
	var head [3]byte
	terms := data[copy(head[:], data):]
	p := &sheet.Program{Tables: tables()}
	base := 0
	if head[2]%8 == 0 {
		base = farAway
	}
	inputs := 1 + int(head[0]%12)
	for k := range inputs {
		p.Code = append(p.Code, sheet.Instruction{Op: sheet.Input, A: base + 2*k})
	}
	for ; len(terms) >= termBytes; terms = terms[termBytes:] {
		p.Code = append(p.Code, fit(term(terms[:termBytes], len(p.Code), inputs), p.Code))
	}
	outputs := min(1+int(head[1]%8), len(p.Code))
	for k := range outputs {
		p.Outputs = append(p.Outputs, sheet.Output{From: len(p.Code) - 1 - 2*k%len(p.Code), Cell: base + 2*k + 1})
	}
	p.Cells = base + 2*max(inputs, outputs) + 1
	return p
}

// term reads one term. Its operands are mostly near by, so that values are built up rather than left behind, and
// sometimes the inputs. Literals are kept few: a program of constants says little.
func term(data []byte, i, inputs int) sheet.Instruction {
	op := sheet.Op(data[0] % byte(sheet.Lookup+1))
	if op == sheet.Input || op == sheet.Literal && data[0] > 128 {
		op = sheet.Multiply
	}
	if op == sheet.Literal {
		return sheet.Instruction{Op: op, Value: literal(data[1:])}
	}
	in := sheet.Instruction{Op: op}
	for n, operand := range []*int{&in.A, &in.B, &in.C}[:op.Operands()] {
		b := int(data[1+n])
		if b%4 == 0 {
			*operand = b / 4 % inputs
			continue
		}
		*operand = i - 1 - b/4%min(i, 16)
	}
	return in
}

// tables are what random programs look into.
func tables() [][]float64 { return [][]float64{specials[:], {0.5}, {1, 2, 3, 4, 5, 6, 7}} }

// fit sees that an index has a size, and that a lookup looks with the last index before it, into a table that has
// room for it. Without one it becomes an index itself.
func fit(in sheet.Instruction, code []sheet.Instruction) sheet.Instruction {
	sizes := [...]int{7, 1, len(specials)}
	if in.Op == sheet.Lookup {
		for i := len(code) - 1; i >= 0; i-- {
			if code[i].Op == sheet.Index {
				table := map[int]int{7: 2, 1: 1, len(specials): 0}[code[i].B]
				return sheet.Instruction{Op: sheet.Lookup, A: i, B: table}
			}
		}
		in.Op = sheet.Index
	}
	if in.Op == sheet.Index {
		in.B = sizes[in.A%len(sizes)]
	}
	return in
}

// specials are the numbers at which floating-point code goes wrong.
var specials = [...]float64{
	0, math.Copysign(0, -1), 1, -1, 0.5, -0.5, 1.5, 2.5, -2.5, 3, 0.1, 0.226613, 43_560, 1 << 53, 1<<53 + 2,
	math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, -math.MaxFloat64, math.SmallestNonzeroFloat64,
	-math.SmallestNonzeroFloat64, 0x1p-1022, 1 - 0x1p-53, 1 + 0x1p-52, 1e15, -1e-6,
}

func literal(data []byte) float64 {
	if data[0]%2 == 0 {
		return specials[int(data[1])%len(specials)]
	}
	return float64(int16(binary.LittleEndian.Uint16(data[1:]))) / 64
}
