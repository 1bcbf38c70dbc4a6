package page

import (
	"slices"
	"time"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A Change is what somebody changed on a page, and on which day.
type Change struct {
	Day  time.Time // at midnight UTC
	Text string
	Span message.Span // of the day
}

// Changed is the day of the last change, or of the last review where the page tells of no change; the zero time when it
// says neither.
func (m Metadata) Changed() time.Time {
	if len(m.Changes) > 0 {
		return m.Changes[0].Day
	}
	return m.Reviewed
}

// readChanges reads what changed, in the order of the file. A day that is none is left out.
func readChanges(t *config.Table) []Change {
	if !slices.Contains(t.Keys(), "changes") {
		return nil
	}
	if !t.IsTable("changes") {
		t.Fault("changes", "value-kind", `"changes" needs lines that begin with a day`,
			`type them below it, each indented by two spaces, as in "  2026-09-14: The limit of a feed is lower."`)
		return nil
	}
	told := t.Table("changes", "the changes of a page", nil)
	var list []Change
	for _, day := range told.Keys() {
		c := Change{Day: told.KeyDate(day), Span: told.KeySpan(day), Text: told.Need(day,
			`type what changed after the colon, as in "2026-09-14: The limit of a feed is lower."`)}
		if !c.Day.IsZero() {
			list = append(list, c)
		}
	}
	return list
}
