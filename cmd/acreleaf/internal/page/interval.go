package page

import (
	"fmt"
	"regexp"
	"strconv"
	"time"

	"acreleaf/cmd/acreleaf/internal/config"
)

// Interval is a time between two reviews, in parts of the calendar.
type Interval struct{ Months, Days int }

// After is the day that lies an interval after another. A day that its month does not have becomes the month's last:
// one month after 31 January is the last of February.
func (i Interval) After(day time.Time) time.Time {
	first := time.Date(day.Year(), day.Month(), 1, 0, 0, 0, 0, time.UTC).AddDate(0, i.Months, 0)
	last := first.AddDate(0, 1, -1).Day()
	return first.AddDate(0, 0, min(day.Day(), last)-1+i.Days)
}

var intervalText = regexp.MustCompile(`^([0-9]{1,4}) (day|week|month|year)s?$`)

func interval(t *config.Table, key string) Interval {
	text := t.Text(key)
	if text == "" {
		return Interval{}
	}
	found := intervalText.FindStringSubmatch(text)
	count := 0
	if found != nil {
		count, _ = strconv.Atoi(found[1]) // at most four digits, so it always fits
	}
	if count == 0 {
		t.Fault(key, "interval", fmt.Sprintf("%q needs a time between reviews, and this is %q", key, text),
			fmt.Sprintf("type a whole number and days, weeks, months or years, as in \"%s: 24 months\"", key))
		return Interval{}
	}
	return map[string]Interval{
		"day": {Days: count}, "week": {Days: 7 * count}, "month": {Months: count}, "year": {Months: 12 * count},
	}[found[2]]
}
