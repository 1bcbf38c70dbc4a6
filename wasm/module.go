package wasm

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
)

// pages is how many pages of memory the cells need.
func pages(cells int) uint64 {
	const perPage = pageBytes / cellBytes
	return (uint64(cells) + perPage - 1) / perPage
}

// assemble puts a function body and its surroundings together (section 5.5.16).
func assemble(pages uint64, body []byte) []byte {
	const preamble = "\x00asm\x01\x00\x00\x00"
	module := make([]byte, 0, len(preamble)+48+len(body))
	module = append(module, preamble...)
	module = appendSection(module, typeSection, []byte{1, 0x60, 0, 0})                 // one type: nothing to nothing
	module = appendSection(module, functionSection, []byte{1, 0})                      // one function, of type 0
	module = appendSection(module, memorySection, appendUnsigned([]byte{1, 0}, pages)) // one memory, no maximum
	module = appendSection(module, exportSection, exports())
	code := appendUnsigned([]byte{1}, uint64(len(body)))
	return appendSection(module, codeSection, append(code, body...))
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
