package sheet

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"acreleaf/calc/unit"
	"acreleaf/calc/words"
)

// A date is counted in days from 1970-01-01, in the calendar that is in use (Gregorian, ISO 8601).

// The days that are taken: the years 2000 to 2099.
const (
	FirstDay = 10957
	LastDay  = 47481
)

// onCalendar says whether a number is a day from 1970 to 9999.
func onCalendar(day float64) bool { return day >= 0 && day < 2_932_897 }

// DateText writes a day in English: "Apr 15, 2027". A part of a day is dropped, and a number that is no day is said to
// be none.
func DateText(day float64) string { return dayText(words.InGeneral(words.English), day) }

func dayText(say *words.General, day float64) string {
	if !onCalendar(day) {
		return say.NoDay
	}
	return say.DayText(civil(int(day)))
}

// ISODate writes a day as 2027-04-15, and a number that is no day as DateText does.
func ISODate(day float64) string {
	if !onCalendar(day) {
		return DateText(day)
	}
	year, month, date := civil(int(day))
	return fmt.Sprintf("%04d-%02d-%02d", year, month, date)
}

// ReadDay reads a day as an author writes it, 2027-04-15, as a number of days. The error says what to write.
func ReadDay(text string) (unit.Quantity, error) {
	day, err := parseDate(text)
	return unit.Quantity{Value: day, Unit: unit.MustParse("days")}, err
}

// parseDate reads 2027-04-15.
func parseDate(text string) (float64, error) {
	day, written, there := writtenDate(text)
	switch {
	case there:
		return day, nil
	case written:
		return 0, fmt.Errorf("there is no day %s in the calendar; %s", text, dateForm)
	}
	return 0, fmt.Errorf("%q is not a date; %s", text, meantDay(text))
}

var dateDigits = regexp.MustCompile(`^(\d{4})-(\d{2})-(\d{2})$`)

// writtenDate reads a day that is written as 2027-04-15, if it is, and if it is in the calendar.
func writtenDate(text string) (day float64, written, there bool) {
	found := dateDigits.FindStringSubmatch(text)
	if found == nil {
		return 0, false, false
	}
	var number [3]int
	for i, digits := range found[1:] {
		number[i], _ = strconv.Atoi(digits) // four digits at most
	}
	at := dayOf(number[0], number[1], number[2])
	y, m, d := civil(at)
	return float64(at), true, [3]int{y, m, d} == number
}

// dateForm says how a day is written.
const dateForm = "write the year, the month and the day in digits, as in 2027-04-15"

var otherDate = regexp.MustCompile(`^(\d{1,4})[-/. ](\d{1,2})[-/. ](\d{1,4})$`)

// meantDay says what to write for a day that is written in another order: both days where either may be meant.
func meantDay(text string) string {
	found := otherDate.FindStringSubmatch(text)
	if found == nil {
		return dateForm
	}
	var days []string
	a, b, c := found[1], found[2], found[3]
	for _, order := range [][3]string{{a, b, c}, {c, a, b}, {c, b, a}} {
		if len(order[0]) != len("2027") {
			continue
		}
		day := fmt.Sprintf("%s-%02s-%02s", order[0], order[1], order[2])
		if _, _, there := writtenDate(day); there && !slices.Contains(days, day) {
			days = append(days, day)
		}
	}
	if len(days) == 0 {
		return dateForm
	}
	return "write " + strings.Join(days, " or ")
}

// dayOf counts the days to a date. The year is taken to begin in March, so that the leap day is its last: the months
// before it then have 30.6 days on average, rounded.
func dayOf(year, month, date int) int {
	if month <= 2 {
		year--
		month += 12
	}
	return 365*year + year/4 - year/100 + year/400 + (153*(month-3)+2)/5 + date - 719469
}

// civil is the date of a day: dayOf the other way round, by trying the year and the month.
func civil(day int) (year, month, date int) {
	for year = 1970 + (day-365)/366; dayOf(year+1, 1, 1) <= day; {
		year++
	}
	for month = 12; dayOf(year, month, 1) > day; {
		month--
	}
	return year, month, day - dayOf(year, month, 1) + 1
}
