package proof

import (
	"slices"
	"sync"

	"acreleaf/calc/prose"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// fewTrees is how many trees are no count of a block: "on 12 trees".
const fewTrees = 100

// measures reports a number in a unit that is one of the trade only where the page works with it: the horsepower of a
// pump, the salts of a water, the trees of a block.
func (c *figureCheck) measures(p *markdown.Prose, amounts []prose.Amount) {
	if p.Aside != "" || !c.hasMeasures() {
		return
	}
	for _, n := range c.language.Counts(p.Text) {
		isAmount := slices.ContainsFunc(amounts, func(a prose.Amount) bool { return a.Start < n.End && n.Start < a.End })
		if !isAmount && !isTied(p, n.Start, n.End) && c.isMeasure(n) {
			c.loose(n.Amount(), oneLine(p.Text[n.Start:n.End]), c.around(p, n.Start, n.End), p.Span(n.Start, n.End))
		}
	}
}

// hasMeasures says whether any worksheet of the page works with such a unit. Most have none, and their prose is not
// looked through.
func (c *figureCheck) hasMeasures() bool {
	if c.measured == nil {
		has := slices.ContainsFunc(c.page.Work.Sheets, func(b *worksheet.Bound) bool {
			return slices.ContainsFunc(b.Sheet.Names(), func(name string) bool {
				u, known := b.Sheet.UnitOf(name)
				return known && fitsMeasure(u)
			})
		})
		c.measured = &has
	}
	return *c.measured
}

// fitsMeasure says whether a unit is of one of their kinds.
func fitsMeasure(u unit.Unit) bool {
	key := measured{u.Dimension(), u.String()}
	fits, known := fitting.Load(key)
	if !known {
		fits = slices.ContainsFunc(measures, func(m unit.Unit) bool {
			_, fits := prose.Convert(m, u)
			return fits
		})
		fitting.Store(key, fits)
	}
	return fits.(bool)
}

// measured tells a unit from all others.
type measured struct {
	unit.Dimension
	written string
}

var fitting sync.Map // of bool by measured: the pages of a site have the same few units

// measures are one unit of each of their kinds.
var measures = []unit.Unit{unit.MustParse("hp"), unit.MustParse("kWh"), unit.MustParse("psi"), unit.MustParse("dS/m"),
	unit.MustParse("tree")}

// isMeasure says whether a count is in such a unit, and the page works with it.
func (c *figureCheck) isMeasure(n prose.Count) bool {
	if !n.Measure || !c.hasMeasures() || n.Unit == "tree" && n.Value < fewTrees {
		return false
	}
	return slices.ContainsFunc(c.candidates(), func(k candidate) bool {
		_, _, ok := inUnitOf(n.Amount(), k.value)
		return ok && k.day == ""
	})
}
