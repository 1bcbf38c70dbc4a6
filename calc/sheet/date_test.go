package sheet_test

import (
	"math"
	"testing"
	"time"

	"acreleaf/calc/sheet"
)

// Every day that is taken, against the calendar of the standard library.
func TestDatesAreThoseOfTheCalendar(t *testing.T) {
	s := sheet.New("day", func(s *sheet.Sheet) {
		day := s.Given("day", "days", sheet.Field{Label: "Day", Typical: 20_558, Low: sheet.FirstDay, High: sheet.LastDay,
			Date: true})
		week := s.Constant("week", "7 days", known)
		s.Answer("later", "days", day.Plus(week), sheet.Says{Date: true})
	})
	g := s.FindGiven("day")
	for day := sheet.FirstDay; day <= sheet.LastDay; day++ {
		then := time.Unix(int64(day)*86_400, 0).UTC()
		e, err := g.Read(then.Format(time.DateOnly))
		if err != nil || e.Value != float64(day) {
			t.Fatalf("%s is day %v (%v), want %d", then, e.Value, err, day)
		}
		if got, want := sheet.DateText(float64(day)), then.Format("Jan 2, 2006"); got != want {
			t.Fatalf("day %d is %s, want %s", day, got, want)
		}
		if got, want := sheet.ISODate(float64(day)), then.Format(time.DateOnly); got != want {
			t.Fatalf("day %d is %s, want %s", day, got, want)
		}
	}
	o := workedOut(t, s, "day=2028-02-25 to 2028-02-27")
	if got := o.Text("later"); got != "Mar 3, 2028 to Mar 5, 2028" {
		t.Errorf("a week later is %s", got)
	}
	if work := o.Work(); work[0] != "later = day + 7 days; at least Feb 25, 2028 + 7 days = Mar 3, 2028; "+
		"at most Feb 27, 2028 + 7 days = Mar 5, 2028" {
		t.Errorf("the work is %q", work)
	}
	for text, want := range map[string]string{
		"2027-02-29": "there is no day 2027-02-29 in the calendar; write the year, " +
			"the month and the day in digits, as in 2027-04-15",
		"April 15": "\"April 15\" is not a date; write the year, the month and the day in digits, " +
			"as in 2027-04-15",
		"4/15/27": "\"4/15/27\" is not a date; write the year, the month and the day in digits, " +
			"as in 2027-04-15",
		"2027-02-140": "\"2027-02-140\" is not a date; write the year, the month and the day in digits, " +
			"as in 2027-04-15",
		"140-02-2027": "\"140-02-2027\" is not a date; write the year, the month and the day in digits, " +
			"as in 2027-04-15",
		"2027-+4-15": "\"2027-+4-15\" is not a date; write the year, the month and the day in digits, " +
			"as in 2027-04-15",
		"2027-4-15":                `"2027-4-15" is not a date; write 2027-04-15`,
		"4/15/2027":                `"4/15/2027" is not a date; write 2027-04-15`,
		"4.5.2027":                 `"4.5.2027" is not a date; write 2027-04-05 or 2027-05-04`,
		"2027-04-20 to 2027-04-15": "Apr 15, 2027 is before Apr 20, 2027; write the earlier day first",
		"1999-12-31":               "1999-12-31 is outside what this calculation takes: 2000-01-01 to 2099-12-31",
	} {
		if _, err := g.Read(text); err == nil || err.Error() != want {
			t.Errorf("%q gives %v, want %s", text, err, want)
		}
	}
}

// A number that is no day is not looked up in the calendar, which has no end to stop at.
func TestNumbersThatAreNoDays(t *testing.T) {
	for day, want := range map[float64]string{
		0: "Jan 1, 1970", 2_932_896: "Dec 31, 9999", -1: "no day", 2_932_897: "no day",
		1e300: "no day", math.Inf(1): "no day", math.Inf(-1): "no day",
	} {
		if got := sheet.DateText(day); got != want {
			t.Errorf("day %v is %s, want %s", day, got, want)
		}
	}
	if got := sheet.ISODate(math.NaN()); got != "no day" {
		t.Errorf("no number at all is %s", got)
	}
}
