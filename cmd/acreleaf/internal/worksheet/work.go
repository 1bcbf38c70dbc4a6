package worksheet

import (
	"acreleaf/calc/sheet"
)

// work puts in the example's numbers, runs the program, and fills the tables.
func (b *binder) work() {
	p := b.page
	p.Cells = make([]float64, p.Graph.Program.Cells)
	p.Sheets = make([]*Bound, len(p.Graph.Uses))
	for _, bound := range b.bound {
		p.Sheets[bound.Use.Index] = bound
		p.byBlock[bound.Block.Index] = bound
		for name, entry := range bound.Entries {
			bound.Use.Set(p.Cells, name, entry.Value)
		}
	}
	p.Graph.Program.Run(p.Cells)
	for _, bound := range p.Sheets {
		if bound.Table != nil {
			b.fillTable(bound)
			continue
		}
		b.checkExample(bound)
	}
}

// checkExample sees that the example has an answer, and that what it takes from another worksheet is within range.
func (b *binder) checkExample(bound *Bound) {
	o := sheet.Outcome{Use: bound.Use, Cells: b.page.Cells}
	for _, given := range bound.Sheet.Givens {
		link, linked := bound.links[given.Name]
		if !linked {
			continue
		}
		if err := given.Check(o.Value(given.Name).Value); err != nil {
			b.fault(link.span, "quantity-unfit", given.Name+": "+err.Error(),
				"change the givens of worksheet \""+link.Use+"\"")
			return
		}
	}
	if err := o.Err(); err != nil {
		b.fault(bound.Block.Span, "example-refused", "this example has no answer: "+err.Error(),
			"change its givens, so that the page shows an answer")
	}
}
