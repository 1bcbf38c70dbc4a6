package proof

import (
	"fmt"
	"slices"

	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/page"
)

// changes sees that what changed on a page is told in order, the newest first, and that nothing changed after the last
// review.
func (c *textCheck) changes() {
	list, reviewed := c.page.Metadata.Changes, c.page.Metadata.Reviewed
	if len(list) == 0 {
		return
	}
	if c.page.Address.Kind == kind.Home {
		c.fault(list[0].Span, "changes-elsewhere", "the home page does not show what changed",
			"take these lines out, or write them on the page that changed")
	}
	for i, change := range list {
		if i > 0 && change.Day.After(list[i-1].Day) {
			c.fault(change.Span, "changes-order",
				fmt.Sprintf("the change of %s is below that of %s, and the newest comes first", day(change.Day),
					day(list[i-1].Day)),
				fmt.Sprintf("move this line above line %d", c.page.Source.Line(list[i-1].Span.Start)))
		}
		if !reviewed.IsZero() && change.Day.After(reviewed) {
			c.fault(change.Span, "changes-late",
				fmt.Sprintf("this change was on %s, and the last review before it, on %s", day(change.Day), day(reviewed)),
				fmt.Sprintf("write the day of a review after the change, as in \"reviewed: %s\", or correct this day",
					day(change.Day)))
		}
	}
}

// changes sees that a translation tells of the same changes as its original.
func (t *translation) changes() {
	theirs, ours := t.original.Metadata.Changes, t.page.Metadata.Changes
	on := func(list []page.Change, of page.Change) bool {
		return slices.ContainsFunc(list, func(c page.Change) bool { return c.Day.Equal(of.Day) })
	}
	for _, c := range theirs {
		if !on(ours, c) {
			t.fault(t.page.Metadata.Places.Changes, "translation-changes",
				fmt.Sprintf("the original changed on %s (%s), and this translation does not say so", day(c.Day),
					t.at(c.Span.Start)),
				fmt.Sprintf("see that the change is made here, too, and add a line below \"changes:\" as in "+
					"\"  %s: ...\", with what changed", day(c.Day)))
		}
	}
	for _, c := range ours {
		if !on(theirs, c) {
			t.fault(c.Span, "translation-changes",
				fmt.Sprintf("this translation lists a change on %s, and its original %s does not", day(c.Day),
					t.original.Source.Name),
				"take the line out, or add the change to the original")
		}
	}
}
