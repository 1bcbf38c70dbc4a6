package worksheet

import (
	"cmp"
	"fmt"
	"slices"

	"acreleaf/calc/practice"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/markdown"
)

// steps are the steps of the work, to be put in order. There is one order only where each step needs the one before.
// They are listed by their labels, so that the list does not tell the order.
func (r *exerciseReader) steps(at markdown.Entry) []practice.Item {
	if r.unfit || len(r.made.Practice.Asks) == 0 {
		return nil // reported
	}
	plain := &practice.Exercise{Uses: r.made.Practice.Uses, Asks: r.made.Practice.Asks}
	placed, err := plain.Place(&sheet.Graph{}, "")
	if err != nil {
		return nil // it is told when the cards are dealt
	}
	var list []practice.Item
	for i, p := range placed.Steps {
		if i > 0 && !r.needs(p.Use, p.Result, placed.Steps[i-1]) {
			r.fault(at.KeySpan, "exercise-order", fmt.Sprintf("the step %q does not need %q, so there is more than one order",
				p.Label(), placed.Steps[i-1].Label()), "put numbers in order instead of the steps")
			return nil
		}
		list = append(list, practice.Item{Step: i + 1, Text: []practice.Piece{{Text: p.Label()}}})
	}
	slices.SortStableFunc(list, func(a, b practice.Item) int { return cmp.Compare(a.Text[0].Text, b.Text[0].Text) })
	return list
}

// needs says whether a result of a calculation is worked from a step, in that calculation or through what it takes.
func (r *exerciseReader) needs(use, result string, step *practice.Part) bool {
	u := r.find(use)
	if use == step.Use {
		return slices.Contains(u.Sheet.Needs(result), u.Sheet.FindResult(step.Result))
	}
	for _, given := range u.Sheet.Takes(result) {
		if link, linked := u.Links[given]; linked && r.needs(link.Use, link.Name, step) {
			return true
		}
	}
	return false
}
