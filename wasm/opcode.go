package wasm

import "acreleaf/calc/sheet"

// The instructions in use (sections 5.4.1 control, 5.4.3 parametric, 5.4.4 variable, 5.4.6 memory, 5.4.7 numeric).
const (
	end            = 0x0B
	selectOp       = 0x1B
	localGet       = 0x20
	localTee       = 0x22
	f64Load        = 0x2B
	f64Store       = 0x39
	i32Const       = 0x41
	f64Const       = 0x44
	i32Eqz         = 0x45
	f64Ne          = 0x62
	i32And         = 0x71
	f64Ge          = 0x66
	i32Or          = 0x72
	i32Shl         = 0x74
	f64Min         = 0xA4
	i32TruncF64S   = 0xAA
	f64ConvertI32S = 0xB7
	f64ConvertI32U = 0xB8
)

// arithmetic has the instruction of each operation that is one f64 instruction.
var arithmetic = [...]byte{
	sheet.Absolute:   0x99, // f64.abs
	sheet.Negate:     0x9A, // f64.neg
	sheet.Ceiling:    0x9B, // f64.ceil
	sheet.Floor:      0x9C, // f64.floor
	sheet.SquareRoot: 0x9F, // f64.sqrt
	sheet.Add:        0xA0, // f64.add
	sheet.Subtract:   0xA1, // f64.sub
	sheet.Multiply:   0xA2, // f64.mul
	sheet.Divide:     0xA3, // f64.div
	sheet.Minimum:    0xA4, // f64.min
	sheet.Maximum:    0xA5, // f64.max
}

// comparison has the instruction of each comparison; it leaves an i32.
var comparison = [...]byte{
	sheet.Equal:       0x61, // f64.eq
	sheet.Less:        0x63, // f64.lt
	sheet.LessOrEqual: 0x65, // f64.le
}
