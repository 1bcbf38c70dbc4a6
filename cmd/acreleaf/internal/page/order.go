package page

import (
	"cmp"
	"slices"
)

// kinds is the order of the kinds of pages: what growers read first, what is for authors last.
var kinds = []Kind{Home, Guide, Workshop, Course, Manual}

// Compare puts pages in the order of the season, kind by kind: those with an order first and by it, then the others by
// title. Equal ones go by name, so the order is always the same.
func Compare(a Address, am Metadata, b Address, bm Metadata) int {
	if by := cmp.Compare(slices.Index(kinds, a.Kind), slices.Index(kinds, b.Kind)); by != 0 {
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
