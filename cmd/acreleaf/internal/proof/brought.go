package proof

import (
	"fmt"
	"slices"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// brought says whether the example of a block tells of a hazard: what of the block brings it, and where that is.
func brought(p *Page, b *markdown.Block, h *hazard) (at message.Span, what string, is bool) {
	bound := p.Work.Bound(b)
	if bound == nil || bound.Use == nil {
		return message.Span{}, "", false
	}
	example := p.Work.Example(bound)
	if !example.Tells(h.ID) {
		return message.Span{}, "", false
	}
	block := "this table"
	if bound.Kind == construct.Worksheet {
		block = fmt.Sprintf("worksheet %q", b.Name)
	}
	key, what := "calculation", fmt.Sprintf("%s (%s) involves %s", block, bound.Sheet.Name, h.Name.In("en"))
	if choice := bringer(bound, example, h.ID); choice != nil {
		option := choice.Choices[int(example.Value(choice.Name).Value)].Name
		key, what = choice.Name, fmt.Sprintf("%s works with %s, which brings %s", block, option, h.Name.In("en"))
	}
	for _, entry := range b.Entries {
		if entry.Key == key {
			return entry.ValueSpan, what, true
		}
	}
	return b.NameSpan, what, true
}

// bringer is the choice without which a sheet does not tell of a hazard: with another of its options, and all else the
// same, the hazard is gone. It is nil where the sheet tells of it whatever is chosen.
func bringer(bound *worksheet.Bound, example sheet.Outcome, hazard string) *sheet.Given {
	tells := func(values map[string]float64) (does, works bool) {
		o, err := bound.Sheet.Evaluate(values)
		return err == nil && o.Tells(hazard), err == nil
	}
	if does, _ := tells(valuesOf(bound.Sheet, example, nil)); !does {
		return nil // it comes with numbers of a range, or of a second kind
	}
	for _, choice := range bound.Sheet.Givens {
		for other := range choice.Choices {
			values := valuesOf(bound.Sheet, example, choice)
			values[choice.Name] = float64(other)
			if does, works := tells(values); works && !does {
				return choice
			}
		}
	}
	return nil
}

// valuesOf are the numbers of an example, without those that belong to a choice.
func valuesOf(s *sheet.Sheet, example sheet.Outcome, choice *sheet.Given) map[string]float64 {
	values := map[string]float64{}
	for _, g := range s.Givens {
		if example.Stated(g.Name) && !(g.Optional && slices.Contains(g.For, choice)) {
			values[g.Name] = example.Value(g.Name).Value
		}
	}
	return values
}
