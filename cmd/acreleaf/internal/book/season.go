package book

import (
	"slices"

	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/page"
)

// orderSeason ties each guide to the ones before and after it in the season's work, and so the pages of the manual.
func (b *library) orderSeason(before *library) {
	if !b.keepOrder(before) {
		b.pages = slices.SortedFunc(slices.Values(b.walked), inSeason)
	}
	for i, d := range b.pages {
		d.rank, d.previous, d.next = i, nil, nil
	}
	type row struct {
		kind     kind.Kind
		language string
	}
	last := map[row]*draft{}
	for _, d := range b.pages {
		if !d.address.Kind.Row().Turns {
			continue
		}
		r := row{d.address.Kind, d.address.Language}
		if before := last[r]; before != nil {
			before.next, d.previous = d, before
		}
		last[r] = d
	}
}

// keepOrder takes over the order of the season, if no page may have left its place in it.
func (b *library) keepOrder(before *library) bool {
	if !b.sameTree {
		return false
	}
	for _, i := range b.fresh {
		if inSeason(b.walked[i], b.kept[i]) != 0 {
			return false
		}
	}
	b.pages = slices.Clone(before.pages)
	for _, i := range b.fresh {
		b.walked[i].rank = b.kept[i].rank
		b.pages[b.kept[i].rank] = b.walked[i]
	}
	return true
}

func inSeason(a, b *draft) int { return page.Compare(a.address, a.metadata, b.address, b.metadata) }
