package wasm

import (
	"encoding/binary"
	"math"
	"slices"
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

// A module is what is put together.
type module struct {
	cells   int
	figures []float64 // of the tables, after the cells
	tables  bool      // there are any
	bodies  [][]byte  // of the functions
}

// pages is how many pages of memory the cells and the figures need.
func (m *module) pages() uint64 {
	const perPage = pageBytes / cellBytes
	return (uint64(m.cells+len(m.figures)) + perPage - 1) / perPage
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
func (m *module) tableData() []byte {
	content := []byte{1, 0, i32Const}
	content = appendSigned(content, int64(m.cells)*cellBytes)
	content = append(content, end)
	content = appendUnsigned(content, uint64(len(m.figures)*cellBytes))
	for _, figure := range m.figures {
		content = binary.LittleEndian.AppendUint64(content, math.Float64bits(figure))
	}
	return content
}

// assemble puts the function bodies and their surroundings together (section 5.5.16).
func (m *module) assemble() []byte {
	functions, code := []byte{byte(len(m.bodies))}, []byte{byte(len(m.bodies))}
	for _, body := range m.bodies {
		functions = append(functions, 0) // each is of type 0
		code = append(appendUnsigned(code, uint64(len(body))), body...)
	}
	module := []byte("\x00asm\x01\x00\x00\x00")
	module = appendSection(module, typeSection, []byte{1, 0x60, 0, 0}) // one type: nothing to nothing
	module = appendSection(module, functionSection, functions)
	module = appendSection(module, memorySection, appendUnsigned([]byte{1, 0}, m.pages())) // one memory, no maximum
	module = appendSection(module, exportSection, exports(len(m.bodies)))
	module = appendSection(module, codeSection, code)
	if !m.tables {
		return module
	}
	return appendSection(module, dataSection, m.tableData())
}

// exports is the content of the export section: the memory numbered 0, and the functions from number 0 on (section
// 5.5.10).
func exports(functions int) []byte {
	const function, memory = 0, 2
	content := append(appendName([]byte{byte(1 + functions)}, MemoryName), memory, 0)
	for i, name := range []string{FunctionName, SecondName}[:functions] {
		content = append(appendName(content, name), function, byte(i))
	}
	return content
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
