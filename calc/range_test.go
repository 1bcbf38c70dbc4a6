package calc_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
)

// points is how many random numbers of its ranges each calculation is worked for, and boxes in how many ranges.
const points, boxes = 10_000, 25

// draw fills in a use with ranges of what it takes, of whole days for days, and gives their ends by cell.
func draw(r *rand.Rand, use *sheet.Use, cells int, ranges int) (low, high []float64) {
	low, high = make([]float64, cells), make([]float64, cells)
	for _, i := range r.Perm(len(use.Sheet.Givens)) {
		given := use.Sheet.Givens[i]
		if given.Optional && r.IntN(2) == 0 {
			continue
		}
		from := given.Low + (given.High-given.Low)*r.Float64()*r.Float64()
		to := from + (given.High-from)*r.Float64()*r.Float64()
		switch {
		case len(given.Choices) > 0:
			from = float64(r.IntN(len(given.Choices)))
			to = from
		case given.Date:
			from, to = float64(int(from)), float64(int(to))
		}
		if ranges--; ranges < 0 {
			to = from
		}
		use.Enter(low, high, given.Name, sheet.Entry{Value: from, High: to})
	}
	return low, high
}

// No number that a calculation gives for numbers of its ranges lies outside the range that is told, and no truth is
// found that was told not to be. The misses of the judge are printed.
func TestRangesHoldEveryPoint(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 26))
	worked, misses, unsure := 0, 0, 0
	for _, s := range calc.Standard().All() {
		g := &sheet.Graph{}
		use := g.Add(s.Name, s, nil)
		if err := g.Close(); err != nil {
			t.Fatal(err)
		}
		cells := make([]float64, g.Program.Cells)
		for n := range boxes {
			from, to := draw(r, use, len(cells), 1+n%5)
			low, high := slices.Clone(from), slices.Clone(to)
			g.Program.Spread(low, high)
			for range points / boxes {
				for cell := range cells {
					at := []float64{0, 1, r.Float64(), float64(r.IntN(17)) / 16}[r.IntN(4)]
					cells[cell] = from[cell] + at*(to[cell]-from[cell])
				}
				g.Program.Run(cells)
				worked++
				misses += strays(t, use, cells, [2][]float64{low, high}, g.Program)
			}
			for _, out := range g.Program.Outputs {
				if high[out.Cell] == sheet.Doubt {
					unsure++
				}
			}
		}
	}
	t.Logf("%d numbers of ranges worked: %d misses of the judge; %d truths of %d sets of ranges told as may be", worked,
		misses, unsure, boxes*len(calc.Standard().All()))
}

// strays counts the values that are there and lie outside what was told.
func strays(t *testing.T, use *sheet.Use, cells []float64, told [2][]float64, p *sheet.Program) (misses int) {
	t.Helper()
	for _, out := range p.Outputs {
		if guard, guarded := p.Guards[out.Cell]; guarded && cells[guard] == 0 {
			continue
		}
		v, ends := cells[out.Cell], [2]float64{told[0][out.Cell], told[1][out.Cell]}
		near := 1e-9 * max(v, -v, ends[0], ends[1])
		if math.IsNaN(v) || math.IsInf(v, 0) {
			near = 0 // it is refused, and no range
		}
		if math.IsNaN(v) || v == 1 && ends[1] == sheet.Doubt || v >= ends[0]-near && v <= ends[1]+near {
			continue
		}
		misses++
		t.Errorf("%s: cell %d is %v, told as %v to %v", use.Sheet.Name, out.Cell, v, ends[0], ends[1])
	}
	return misses
}

// Ranges of worksheets that are not linked change nothing: each answers what it answers alone, to the last bit.
func TestUnlinkedRangesChangeNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 27))
	all := calc.Standard().All()
	for range 200 {
		page := &sheet.Graph{}
		for i := range 2 + r.IntN(5) {
			page.Add(string(rune('a'+i)), all[r.IntN(len(all))], nil)
		}
		if err := page.Close(); err != nil {
			t.Fatal(err)
		}
		low, high := make([]float64, page.Program.Cells), make([]float64, page.Program.Cells)
		alone := map[*sheet.Use]sheet.Outcome{}
		for _, use := range page.Uses {
			g := &sheet.Graph{}
			one := g.Add("one", use.Sheet, nil)
			if err := g.Close(); err != nil {
				t.Fatal(err)
			}
			from, to := draw(r, one, g.Program.Cells, r.IntN(4))
			copyInputs(one, use, from, low)
			copyInputs(one, use, to, high)
			g.Program.Spread(from, to)
			alone[use] = sheet.Outcome{Use: one, Cells: from, High: to}
		}
		page.Program.Spread(low, high)
		for _, use := range page.Uses {
			sameOutcome(t, alone[use], sheet.Outcome{Use: use, Cells: low, High: high})
		}
	}
}

// copyInputs fills in a use with what another use of its sheet has.
func copyInputs(from, to *sheet.Use, cells, into []float64) {
	for _, given := range from.Sheet.Givens {
		for _, cell := range []func(*sheet.Use) (int, bool){
			func(u *sheet.Use) (int, bool) { return u.Cell(given.Name) },
			func(u *sheet.Use) (int, bool) { return u.Presence(given.Name) },
			func(u *sheet.Use) (int, bool) { return u.OtherCell(given.Name) },
		} {
			if a, is := cell(from); is {
				b, _ := cell(to)
				into[b] = cells[a]
			}
		}
	}
}

func sameOutcome(t *testing.T, alone, among sheet.Outcome) {
	t.Helper()
	for _, name := range alone.Use.Sheet.Names() {
		a, b := alone.Range(name), among.Range(name)
		if math.Float64bits(a.Low) != math.Float64bits(b.Low) || math.Float64bits(a.High) != math.Float64bits(b.High) {
			t.Errorf("%s.%s is %v alone and %v among others", alone.Use.Sheet.Name, name, a, b)
		}
	}
	if a, b := alone.Said(), among.Said(); !slices.Equal(a, b) {
		t.Errorf("%s says %q alone and %q among others", alone.Use.Sheet.Name, a, b)
	}
}
