package worksheet

import (
	"fmt"
	"math"
	"slices"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// fillTable works a reckoner: the page's program is run once for each cell of the grid, as the page's script does.
func (b *binder) fillTable(bound *Bound) {
	t := bound.Table
	for i, down := range t.Down.Values {
		t.Values = append(t.Values, make([]float64, len(t.Across.Values)))
		t.High = append(t.High, make([]float64, len(t.Across.Values)))
		for j, across := range t.Across.Values {
			o, err := b.page.at(bound, down, across)
			if err != nil {
				b.fault(bound.Block.Span, "example-refused",
					fmt.Sprintf("the cell at %s and %s has no answer: %v", t.Down.At(i), t.Across.At(j), err),
					"leave that value out, or change the other givens")
				return
			}
			shown := o.Range(t.Show)
			if !o.There(t.Show) {
				shown.Low, shown.High = math.NaN(), math.NaN() // a dash, in no band
			}
			t.Values[i][j], t.High[i][j] = shown.Low, shown.High
		}
	}
	// The cell that the example's own run reads is the first of the grid.
	o, err := b.page.at(bound, t.Down.Values[0], t.Across.Values[0])
	if err != nil {
		panic(err) // it was worked above
	}
	b.page.Cells, b.page.High = o.Cells, o.High
}

// at works the page with two numbers of a reckoner set.
func (p *Page) at(bound *Bound, down, across float64) (sheet.Outcome, error) {
	o := sheet.Outcome{Use: bound.Use, Cells: slices.Clone(p.Cells), High: slices.Clone(p.High)}
	for _, cells := range [][]float64{o.Cells, o.High} {
		bound.Use.Set(cells, bound.Table.Down.Given, down)
		bound.Use.Set(cells, bound.Table.Across.Given, across)
		bound.Use.SetKind(cells, bound.Table.Down.Given, bound.Table.Down.kind)
		bound.Use.SetKind(cells, bound.Table.Across.Given, bound.Table.Across.kind)
	}
	if err := p.Graph.Program.Spread(o.Cells, o.High); err != nil {
		return o, err
	}
	return o, o.Err()
}

// At is a value of the axis as it was written: "6 in".
func (a Axis) At(i int) string { return unit.Quantity{Value: a.Typed[i], Unit: a.Unit}.String() }

// Marked says whether all of the answer in a row and a column lies in the band.
func (t *Table) Marked(row, column int) bool {
	return t.Mark != nil && t.Values[row][column] >= t.Mark.Low && t.High[row][column] <= t.Mark.High
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
