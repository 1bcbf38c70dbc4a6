package worksheet

import (
	"fmt"
	"slices"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/message"
)

// checkBelonging reports what would stay a figure of one option while a reader chooses another: a given that belongs to
// a choice and takes its number from a worksheet that chooses for itself, and one that a reckoner has while its choice
// follows a worksheet. False if there was one.
func (b *binder) checkBelonging() bool {
	good := true
	for _, bound := range b.bound {
		for _, given := range bound.Sheet.Givens {
			for _, choice := range given.For {
				if !b.checkBelongs(bound, given, choice) {
					good = false
					break
				}
			}
		}
	}
	return good
}

func (b *binder) checkBelongs(bound *Bound, given, choice *sheet.Given) bool {
	link, linked := bound.links[given.Name]
	if !linked {
		return b.checkFixed(bound, given, choice)
	}
	for _, other := range b.named(link.Use).Sheet.ChoicesBehind(link.Name) {
		if !slices.EqualFunc(other.Choices, choice.Choices, sheet.Option.Same) {
			continue
		}
		from, name := b.chosenBy(b.named(link.Use), other.Name)
		if own, ownName := b.chosenBy(bound, choice.Name); own == from && ownName == name {
			continue
		}
		b.drop(bound, link.span, "link-unfit",
			fmt.Sprintf("%s.%s is a figure of the %s of worksheet %q, and this %s chooses its own",
				link.Use, link.Name, other.Name, link.Use, bound.Block.Construct),
			fmt.Sprintf("take the choice from there too: %s: from %s.%s", choice.Name, link.Use, other.Name))
		return false
	}
	return true
}

// checkFixed reports a reckoner that has a figure of one option while the option follows a worksheet.
func (b *binder) checkFixed(bound *Bound, given, choice *sheet.Given) bool {
	link, follows := bound.links[choice.Name]
	_, written := bound.Entries[given.Name]
	if bound.Kind == construct.Worksheet || !follows || !written {
		return true
	}
	b.drop(bound, b.entrySpan(bound, given.Name), "link-unfit",
		fmt.Sprintf("%s belongs to the %s, which this reckoner takes from worksheet %q", given.Name, choice.Name, link.Use),
		fmt.Sprintf("take this line out, or take it from there too: %s: from %s.%s", given.Name, link.Use, given.Name))
	return false
}

// chosenBy is the worksheet and the given that a choice is made in, in the end.
func (b *binder) chosenBy(bound *Bound, choice string) (*Bound, string) {
	for link, linked := bound.links[choice]; linked; link, linked = bound.links[choice] {
		bound, choice = b.named(link.Use), link.Name
	}
	return bound, choice
}

// entrySpan is where an author wrote the value of a given.
func (b *binder) entrySpan(bound *Bound, name string) message.Span {
	for _, entry := range bound.Block.Entries {
		if entry.Key == name {
			return entry.ValueSpan
		}
	}
	return bound.Block.Span
}
