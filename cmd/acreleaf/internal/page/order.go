package page

import (
	"cmp"

	"acreleaf/cmd/acreleaf/internal/kind"
)

// Compare puts pages in the order of the season, kind by kind: those with an order first and by it, then the others by
// title. The lessons of a course stay together. Equal ones go by name, so the order is always the same.
func Compare(a Address, am Metadata, b Address, bm Metadata) int {
	if by := cmp.Compare(a.Kind, b.Kind); by != 0 {
		return by
	}
	if by := cmp.Compare(a.Course(), b.Course()); by != 0 && a.Kind == kind.Lesson {
		return by
	}
	if am.Ordered != bm.Ordered {
		if am.Ordered {
			return -1
		}
		return 1
	}
	return cmp.Or(
		cmp.Compare(am.Order, bm.Order),
		cmp.Compare(am.Title, bm.Title),
		cmp.Compare(a.Name, b.Name),
		cmp.Compare(a.Language, b.Language),
	)
}
