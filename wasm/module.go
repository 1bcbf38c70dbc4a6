package wasm

import (
	"encoding/binary"
	"math"
	"slices"

	"acreleaf/calc/sheet"
)

const (
	f64           = 0x7C // the value types in use (section 5.3.1)
	i32           = 0x7F
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

// pages is how many pages of memory the cells and the figures of the tables need.
func pages(p *sheet.Program, figures int) uint64 {
	const perPage = pageBytes / cellBytes
	return (uint64(p.Cells+figures) + perPage - 1) / perPage
}

// pack lays the tables into one list, and gives where each begins. One that lies within another takes no room, since
// sheets about one choice, with or without an option before the others, look into the same figures.
func pack(tables [][]float64) (figures []float64, starts []int) {
	starts = make([]int, len(tables))
	order := make([]int, len(tables))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return len(tables[b]) - len(tables[a]) })
	for _, i := range order {
		starts[i] = find(figures, tables[i])
		missing := starts[i] + len(tables[i]) - len(figures)
		figures = append(figures, tables[i][len(tables[i])-max(missing, 0):]...)
	}
	return figures, starts
}

// find is the first place where a table lies in the figures, or would if the figures went on with the rest of it.
func find(figures, table []float64) int {
	for at := range figures {
		n := min(len(table), len(figures)-at)
		if slices.EqualFunc(figures[at:at+n], table[:n], sameBits) {
			return at
		}
	}
	return len(figures)
}

func sameBits(a, b float64) bool { return math.Float64bits(a) == math.Float64bits(b) }

// tableData is the content of the data section: one segment with all figures, after the cells (section 5.5.14).
func tableData(p *sheet.Program, figures []float64) []byte {
	content := []byte{1, 0, i32Const}
	content = appendSigned(content, int64(p.Cells)*cellBytes)
	content = append(content, end)
	content = appendUnsigned(content, uint64(len(figures)*cellBytes))
	for _, figure := range figures {
		content = binary.LittleEndian.AppendUint64(content, math.Float64bits(figure))
	}
	return content
}

// assemble puts a function body and its surroundings together (section 5.5.16).
func assemble(p *sheet.Program, figures []float64, body []byte) []byte {
	module := []byte("\x00asm\x01\x00\x00\x00")
	module = appendSection(module, typeSection, []byte{1, 0x60, 0, 0}) // one type: nothing to nothing
	module = appendSection(module, functionSection, []byte{1, 0})      // one function, of type 0
	memory := appendUnsigned([]byte{1, 0}, pages(p, len(figures)))     // one memory, no maximum
	module = appendSection(module, memorySection, memory)
	module = appendSection(module, exportSection, exports())
	code := appendUnsigned([]byte{1}, uint64(len(body)))
	module = appendSection(module, codeSection, append(code, body...))
	if len(p.Tables) == 0 {
		return module
	}
	return appendSection(module, dataSection, tableData(p, figures))
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

// appendSigned writes v, which is never below -0x40, as signed LEB128: the last byte has the sign in its second bit
// (section 5.2.2).
func appendSigned(to []byte, v int64) []byte {
	for v >= 0x40 {
		to = append(to, byte(v)|0x80)
		v >>= 7
	}
	return append(to, byte(v)&0x7f)
}
