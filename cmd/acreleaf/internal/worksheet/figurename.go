package worksheet

import (
	"slices"

	"acreleaf/cmd/acreleaf/internal/construct"
)

// Worked lists the names of a worksheet that a figure in the prose can state, its answers first and then its steps:
// those that are there for the numbers of the example, and are neither chosen from a list nor a day.
func (p *Page) Worked(b *Bound) []string {
	if b.Kind == construct.Reckoner || b.Block.Name == "" {
		return nil
	}
	var answers, steps, givens []string
	for _, r := range p.Example(b).Answers() {
		if !b.Sheet.IsDate(r.Name) {
			answers = append(answers, r.Name)
		}
	}
	for _, name := range figureNames(b.Sheet) {
		switch given := b.Sheet.FindGiven(name); {
		case b.Sheet.IsDate(name) || !p.Example(b).There(name):
		case given == nil && !slices.Contains(answers, name):
			steps = append(steps, name)
		case given == nil:
		case p.stated(b, name):
			givens = append(givens, name)
		}
	}
	return slices.Concat(answers, steps, givens)
}

// Days lists the days of the calendar that a worksheet of the page is given or answers.
func (p *Page) Days(b *Bound) []string {
	if b.Kind == construct.Reckoner || b.Block.Name == "" {
		return nil
	}
	return slices.DeleteFunc(b.Sheet.Names(), func(name string) bool {
		given := b.Sheet.FindGiven(name) != nil
		return !b.Sheet.IsDate(name) || !p.Example(b).There(name) || given && !p.stated(b, name)
	})
}
