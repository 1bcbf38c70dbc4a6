package wasmtest

import (
	"math"
	"math/rand/v2"

	"acreleaf/calc/sheet"
)

// InputCells gives the cells that p reads, in the order of its terms.
func InputCells(p *sheet.Program) []int {
	var cells []int
	for _, in := range p.Code {
		if in.Op == sheet.Input {
			cells = append(cells, in.A)
		}
	}
	return cells
}

// Number gives a random number of one of the sorts that matter: as growers type them, any bit pattern at all
// (NaN, subnormals and infinities among them), or one of the classic special cases.
func Number(r *rand.Rand) float64 {
	switch r.IntN(10) {
	case 0:
		return math.Float64frombits(r.Uint64())
	case 1, 2:
		return specials[r.IntN(len(specials))]
	case 3:
		return (r.Float64() - 0.5) * math.Pow(10, float64(r.IntN(40)-20))
	default:
		return float64(r.IntN(200_000)) / 1000
	}
}

// Same says whether two results agree: equal bits, or both NaN. The sign and payload of a NaN are the engine's own
// choice (WebAssembly Core Specification 2.0, section 4.3.3), and no page ever shows one.
func Same(a, b float64) bool {
	return math.Float64bits(a) == math.Float64bits(b) || a != a && b != b
}
