package worksheet

import (
	"fmt"
	"slices"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/construct"
)

// work puts in the example's numbers, runs the program, and fills the tables.
func (b *binder) work() {
	p := b.page
	p.Cells = make([]float64, p.Graph.Program.Cells)
	p.High = make([]float64, p.Graph.Program.Cells)
	p.parts = make([]*Bound, len(p.Graph.Uses))
	for _, bound := range b.bound {
		p.parts[bound.Use.Index] = bound
		p.byBlock[bound.Block.Index] = bound
		for name, entry := range bound.Entries {
			bound.Use.Enter(p.Cells, p.High, name, entry)
		}
		if bound.Kind == construct.Reckoner {
			bound.set(0, 0, p.Cells, p.High) // the cell that the example's own run reads is the first of the grid
		}
	}
	b.workExercises()
	p.Graph.Program.Spread(p.Cells, p.High)
	p.Sheets = slices.DeleteFunc(slices.Clone(p.parts), func(b *Bound) bool { return b.Kind == construct.Exercise })
	for _, bound := range p.Sheets {
		before := len(b.messages)
		switch {
		case b.takesFromFaulty(bound): // reported there
			b.faulty[bound.name] = true
		case !b.checkLinked(bound):
		case bound.Kind == construct.Reckoner:
			b.fillTable(bound)
		default:
			b.checkExample(bound)
		}
		if len(b.messages) > before {
			b.faulty[bound.name] = true
		}
	}
}

// checkLinked sees that what a block takes from a worksheet is within the range of its givens.
func (b *binder) checkLinked(bound *Bound) bool {
	o := b.page.Example(bound)
	for _, given := range bound.Sheet.Givens {
		link, linked := bound.links[given.Name]
		if !linked || !b.page.stated(bound, given.Name) {
			continue
		}
		r := o.Range(given.Name)
		for _, value := range []float64{r.Low, r.High} {
			if err := given.Check(value); err != nil {
				b.fault(link.span, "quantity-unfit", given.Name+": "+err.Error(),
					fmt.Sprintf("change the givens of worksheet %q", link.Use))
				return false
			}
		}
	}
	return true
}

// stated says whether a given is filled in, here or where it is taken from.
func (p *Page) stated(bound *Bound, name string) bool { return p.statedIn(bound, name, p.Cells) }

// statedIn is stated for other numbers than the example's.
func (p *Page) statedIn(bound *Bound, name string, cells []float64) bool {
	link, linked := bound.links[name]
	if !linked {
		return sheet.Outcome{Use: bound.Use, Cells: cells}.Stated(name)
	}
	return p.statedIn(p.Find(link.Use), link.Name, cells)
}

// checkExample sees that the example has an answer.
func (b *binder) checkExample(bound *Bound) {
	o := b.page.Example(bound)
	if err := o.Err(); err != nil {
		b.fault(bound.Block.Span, "example-refused", "this example has no answer: "+err.Error(),
			"change its givens, so that the page shows an answer")
	}
}

// workExercises puts in the numbers of the first card of each exercise, and the right answers as what was heard.
func (b *binder) workExercises() {
	p := b.page
	p.Exercises = b.exercises
	for _, e := range p.Exercises {
		for _, bound := range e.Bounds {
			p.parts[bound.Use.Index] = bound
		}
		e.Placed.Enter(p.Cells, 1)
		e.Placed.Enter(p.High, 1)
	}
	if len(p.Exercises) == 0 {
		return
	}
	right := slices.Clone(p.Cells)
	p.Graph.Program.Run(right)
	for _, e := range p.Exercises {
		e.Placed.HearRight(p.Cells, right)
		e.Placed.HearRight(p.High, right)
	}
}
