package worksheet

import "slices"

// Worked lists the names of a worksheet that a figure in the prose can state, its answers first: those that are there
// for the numbers of the example, and are neither chosen from a list nor a day.
func (p *Page) Worked(b *Bound) []string {
	if b.Table != nil || b.Block.Name == "" {
		return nil
	}
	var names, givens []string
	for _, name := range figureNames(b.Sheet) {
		switch given := b.Sheet.FindGiven(name); {
		case b.Sheet.IsDate(name) || !p.Example(b).There(name):
		case given == nil:
			names = append(names, name)
		case p.stated(b, name):
			givens = append(givens, name)
		}
	}
	return slices.Concat(names, givens)
}
