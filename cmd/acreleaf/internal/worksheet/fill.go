package worksheet

import (
	"fmt"
	"math"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// fillTable works a reckoner: the page's program is run once for each cell of the grid, as the page's script does.
func (b *binder) fillTable(bound *Bound) {
	t := bound.Table
	cells := append([]float64{}, b.page.Cells...)
	for i, down := range t.Down.Values {
		t.Values = append(t.Values, make([]float64, len(t.Across.Values)))
		for j, across := range t.Across.Values {
			bound.Use.Set(cells, t.Down.Given, down)
			bound.Use.Set(cells, t.Across.Given, across)
			b.page.Graph.Program.Run(cells)
			o := sheet.Outcome{Use: bound.Use, Cells: cells}
			if err := o.Err(); err != nil {
				b.fault(bound.Block.Span, "example-refused",
					fmt.Sprintf("the cell at %s and %s has no answer: %v", t.Down.At(i), t.Across.At(j), err),
					"leave that value out, or change the other givens")
				return
			}
			t.Values[i][j] = o.Value(t.Show).Value
		}
	}
	// The cell that the example's own run reads is the first of the grid.
	bound.Use.Set(b.page.Cells, t.Down.Given, t.Down.Values[0])
	bound.Use.Set(b.page.Cells, t.Across.Given, t.Across.Values[0])
	b.page.Graph.Program.Run(b.page.Cells)
}

// At is a value of the axis as it was written: "6 in".
func (a Axis) At(i int) string { return unit.Quantity{Value: a.Typed[i], Unit: a.Unit}.String() }

// Marked says whether an answer lies in the band.
func (t *Table) Marked(value float64) bool {
	return t.Mark != nil && value >= t.Mark.Low && value <= t.Mark.High
}

// Nearest is the index of the value of the axis that is nearest to v; the first of two equally near.
func (a Axis) Nearest(v float64) int {
	best := 0
	for i, value := range a.Values {
		if math.Abs(value-v) < math.Abs(a.Values[best]-v) {
			best = i
		}
	}
	return best
}
