package proof

import (
	"fmt"
	"time"
)

// review compares the day on which a page was looked through with the calendar.
func (c *textCheck) review() {
	m, today := c.page.Metadata, c.rules.Today
	if m.Reviewed.IsZero() {
		if c.rules.Advice && c.page.Address.Kind.Row().Reviewed && !m.Faulty {
			c.advise(m.Places.Reviewed, "review-missing", "this guide does not say when it was last reviewed",
				"add a line such as \"reviewed: 2026-09-14\", with the day on which somebody reviewed it")
		}
		return
	}
	if today.IsZero() {
		return
	}
	if m.Reviewed.After(today) {
		c.fault(m.Places.Reviewed, "review-future",
			fmt.Sprintf("the review was on %s, and today is %s", day(m.Reviewed), day(today)),
			"write the day on which the page was reviewed; see also that this computer's clock is right")
		return
	}
	if due, set := m.Due(); set && today.After(due) {
		c.fault(m.Places.Reviewed, "review-overdue",
			fmt.Sprintf("a review was due by %s, and today is %s", day(due), day(today)),
			"review the page, correct what is no longer right, and write the day here: reviewed: "+day(today))
	}
}

func day(d time.Time) string { return d.Format(time.DateOnly) }
