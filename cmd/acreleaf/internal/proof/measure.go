package proof

import (
	"slices"

	"acreleaf/calc/said"
	"acreleaf/cmd/acreleaf/internal/markdown"
)

// fewTrees is how many trees are no count of a block: "on 12 trees".
const fewTrees = 100

// measures reports a number in a unit that is one of the trade only where the page works with it: the horsepower of a
// pump, the salts of a water, the trees of a block.
func (c *figureCheck) measures(p *markdown.Prose, amounts []said.Amount) {
	if p.Aside != "" || len(c.page.Work.Sheets) == 0 {
		return
	}
	for _, n := range c.language.Counts(p.Text) {
		isAmount := slices.ContainsFunc(amounts, func(a said.Amount) bool { return a.Start < n.End && n.Start < a.End })
		if !isAmount && !isTied(p, n.Start, n.End) && c.isMeasure(n) {
			c.loose(n.Amount(), oneLine(p.Text[n.Start:n.End]), c.around(p, n.Start, n.End), p.Span(n.Start, n.End))
		}
	}
}

// isMeasure says whether a count is in such a unit, and the page works with it.
func (c *figureCheck) isMeasure(n said.Count) bool {
	if !n.Measure || n.Unit == "tree" && n.Value < fewTrees {
		return false
	}
	return slices.ContainsFunc(c.candidates(), func(k candidate) bool {
		_, _, ok := inUnitOf(n.Amount(), k.value)
		return ok && k.day == ""
	})
}
