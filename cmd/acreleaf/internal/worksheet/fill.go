package worksheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// fillTable works a reckoner: what its answer needs of the page's program is run once for each cell of the grid.
func (b *binder) fillTable(bound *Bound) {
	t := bound.Table
	p := b.page.Graph.Program.Slice(bound.answerCells())
	low, high := slices.Clone(b.page.Cells), slices.Clone(b.page.High)
	for i := range t.Down.Values {
		t.Values = append(t.Values, make([]float64, len(t.Across.Values)))
		t.High = append(t.High, make([]float64, len(t.Across.Values)))
		for j := range t.Across.Values {
			bound.set(i, j, low, high)
			p.Spread(low, high)
			o := sheet.Outcome{Use: bound.Use, Cells: low, High: high}
			if err := cmp.Or(o.Refused(), o.Finite(t.Show)); err != nil {
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
}

// set fills in the two numbers of a reckoner that a cell of its grid is worked for.
func (b *Bound) set(row, column int, low, high []float64) {
	for _, cells := range [][]float64{low, high} {
		b.Use.Set(cells, b.Table.Down.Given, b.Table.Down.Values[row])
		b.Use.Set(cells, b.Table.Across.Given, b.Table.Across.Values[column])
		b.Use.SetKind(cells, b.Table.Down.Given, b.Table.Down.kind)
		b.Use.SetKind(cells, b.Table.Across.Given, b.Table.Across.kind)
	}
}

// answerCells lists the cells that the answer of a reckoner is read from: it, whether it is there, and what refuses it.
func (b *Bound) answerCells() []int {
	cells := refusals(b)
	names := []string{b.Table.Show}
	for _, remark := range b.Sheet.Remarks {
		if remark.Signal == sheet.Refusal {
			for _, piece := range remark.Pieces() {
				names = append(names, piece.Name)
			}
		}
	}
	for _, name := range names {
		if cell, ok := b.Use.Cell(name); ok {
			cells = append(cells, cell)
		}
		if cell, ok := b.Use.There(name); ok {
			cells = append(cells, cell)
		}
	}
	return cells
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
