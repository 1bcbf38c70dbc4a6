package book

import (
	"slices"

	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/page"
)

// orderSeason ties each guide to the ones before and after it in the season's work, and so the pages of the manual and
// the lessons of a course.
func (b *library) orderSeason(before *library, kept []*draft) {
	if !b.keepOrder(before, kept) {
		b.pages = slices.SortedFunc(slices.Values(b.walked), inSeason)
	}
	for i, d := range b.pages {
		d.rank, d.previous, d.next, d.number, d.course = i, nil, nil, 0, nil
	}
	type row struct {
		kind     kind.Kind
		language string
		course   string
	}
	last := map[row]*draft{}
	for _, d := range b.pages {
		if !d.address.Kind.Row().Turns {
			continue
		}
		r := row{d.address.Kind, d.address.Language, d.address.Course()}
		d.number = 1
		if before := last[r]; before != nil {
			before.next, d.previous = d, before
			d.number += before.number
		}
		last[r] = d
	}
	for _, d := range b.pages {
		d.of = 0
		if end := last[row{d.address.Kind, d.address.Language, d.address.Course()}]; end != nil {
			d.of = end.number
		}
	}
	b.findCourses()
}

// keepOrder takes over the order of the season, if no page may have left its place in it. To order 10,000 pages takes
// longer than most of what a save asks for.
func (b *library) keepOrder(before *library, kept []*draft) bool {
	if before == nil || b.tree != before.tree {
		return false
	}
	for i, d := range b.walked {
		if kept[i] == nil || d != kept[i] && inSeason(d, kept[i]) != 0 {
			return false
		}
	}
	b.pages = slices.Clone(before.pages)
	for i, d := range b.walked {
		b.pages[kept[i].rank] = d
	}
	return true
}

func inSeason(a, b *draft) int { return page.Compare(a.address, a.metadata, b.address, b.metadata) }
