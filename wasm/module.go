package wasm

import (
	"encoding/binary"
	"math"

	"acreleaf/calc/sheet"
)

const (
	f64           = 0x7C // the value type (section 5.3.1)
	cellBytes     = 8
	cellAlignment = 3 // as a power of two
	pageBytes     = 65_536
)

// Section numbers (section 5.5.2).
const (
	typeSection     = 1
	functionSection = 3
	memorySection   = 5
	exportSection   = 7
	codeSection     = 10
	dataSection     = 11
)

// pages is how many pages of memory the cells and the tables need.
func pages(p *sheet.Program) uint64 {
	const perPage = pageBytes / cellBytes
	return (uint64(p.Cells+tableStart(p, len(p.Tables))) + perPage - 1) / perPage
}

// tableStart is where a table begins, in cells after the program's own.
func tableStart(p *sheet.Program, table int) int {
	start := 0
	for _, t := range p.Tables[:table] {
		start += len(t)
	}
	return start
}

// tableData is the content of the data section: one segment with all tables, after the cells (section 5.5.14).
func tableData(p *sheet.Program) []byte {
	content := []byte{1, 0, i32Const}
	content = appendSigned(content, int64(p.Cells)*cellBytes)
	content = append(content, end)
	content = appendUnsigned(content, uint64(tableStart(p, len(p.Tables))*cellBytes))
	for _, table := range p.Tables {
		for _, figure := range table {
			content = binary.LittleEndian.AppendUint64(content, math.Float64bits(figure))
		}
	}
	return content
}

// assemble puts a function body and its surroundings together (section 5.5.16).
func assemble(p *sheet.Program, body []byte) []byte {
	const preamble = "\x00asm\x01\x00\x00\x00"
	module := make([]byte, 0, len(preamble)+48+len(body))
	module = append(module, preamble...)
	module = appendSection(module, typeSection, []byte{1, 0x60, 0, 0})                    // one type: nothing to nothing
	module = appendSection(module, functionSection, []byte{1, 0})                         // one function, of type 0
	module = appendSection(module, memorySection, appendUnsigned([]byte{1, 0}, pages(p))) // one memory, no maximum
	module = appendSection(module, exportSection, exports())
	code := appendUnsigned([]byte{1}, uint64(len(body)))
	module = appendSection(module, codeSection, append(code, body...))
	if len(p.Tables) == 0 {
		return module
	}
	return appendSection(module, dataSection, tableData(p))
}

// exports is the content of the export section: the memory numbered 0 and the function numbered 0 (section 5.5.10).
func exports() []byte {
	const function, memory = 0, 2
	content := []byte{2}
	content = append(appendName(content, MemoryName), memory, 0)
	return append(appendName(content, FunctionName), function, 0)
}

func appendSection(module []byte, number byte, content []byte) []byte {
	module = appendUnsigned(append(module, number), uint64(len(content)))
	return append(module, content...)
}

func appendName(to []byte, name string) []byte {
	return append(appendUnsigned(to, uint64(len(name))), name...)
}

// appendUnsigned writes v as unsigned LEB128: seven bits a byte, the low ones first (section 5.2.2).
func appendUnsigned(to []byte, v uint64) []byte {
	for v >= 0x80 {
		to = append(to, byte(v)|0x80)
		v >>= 7
	}
	return append(to, byte(v))
}

// appendSigned writes v as signed LEB128: the last byte has the sign in its second bit (section 5.2.2).
func appendSigned(to []byte, v int64) []byte {
	for v < -0x40 || v >= 0x40 {
		to = append(to, byte(v)|0x80)
		v >>= 7
	}
	return append(to, byte(v)&0x7f)
}
