package prose

import (
	"slices"
	"strconv"
	"strings"
)

// A Date is a day of a sentence: "April 20, 2027", "Apr 20", "20 de abril", "2027-04-20".
type Date struct {
	Start, End       int
	Year, Month, Day int    // Year is 0 when it is left out
	Before           string // the word before it, in small letters
}

// months gives the names of the months, and what they are cut short to.
var months = map[*Language][]string{
	English: strings.Fields("january february march april may june july august september october november december"),
	Spanish: strings.Fields("enero febrero marzo abril mayo junio julio agosto septiembre octubre noviembre diciembre"),
}

// Dates finds the days of a text.
func (l *Language) Dates(text string) []Date {
	var found []Date
	var before token
	for at := 0; at < len(text); {
		t := next(text, at)
		if t.kind == end {
			break
		}
		at = t.to
		if d, ok := l.date(text, t); ok {
			d.Before = before.lower()
			found = append(found, d)
			at = d.End
		}
		before = t
	}
	return found
}

func (l *Language) date(text string, t token) (Date, bool) {
	d := Date{Start: t.from, End: t.to}
	switch t.kind {
	case digits:
		if isoDate(text, t, &d) || l == Spanish && l.dayFirst(text, t, &d) {
			return d, true
		}
	case word:
		day := next(text, t.to)
		if day.text == "." {
			day = next(text, day.to)
		}
		if d.Month = l.month(t); d.Month == 0 || l != English {
			return d, false
		}
		if value, ok := wholeIn(day); ok && isDay(value) {
			d.Day, d.End = int(value), day.to
			comma := next(text, d.End)
			if year := next(text, comma.to); comma.text == "," && isYearText(year) {
				d.Year, d.End = whole(year.text), year.to
			}
			return d, true
		}
	}
	return d, false
}

// isoDate reads 2027-04-20.
func isoDate(text string, t token, d *Date) bool {
	const size = len("2027-04-20")
	if len(t.text) != 4 || t.from+size > len(text) || t.from+size < len(text) && isDigit(text[t.from+size]) {
		return false
	}
	written := text[t.from : t.from+size]
	if written[4] != '-' || written[7] != '-' || strings.Trim(written, "0123456789-") != "" {
		return false
	}
	d.Year, d.Month, d.Day, d.End = whole(written[:4]), whole(written[5:7]), whole(written[8:]), t.from+size
	return 1 <= d.Month && d.Month <= 12 && isDay(float64(d.Day))
}

// dayFirst reads "20 de abril de 2027".
func (l *Language) dayFirst(text string, t token, d *Date) bool {
	value, ok := wholeIn(t)
	of := next(text, t.to)
	name := next(text, of.to)
	if !ok || !isDay(value) || of.lower() != "de" || name.kind != word || l.month(name) == 0 {
		return false
	}
	d.Day, d.Month, d.End = int(value), l.month(name), name.to
	of = next(text, name.to)
	if year := next(text, of.to); slices.Contains(l.of, of.lower()) && isYearText(year) {
		d.Year, d.End = whole(year.text), year.to
	}
	return true
}

// month gives the number of a month by its name or its first three letters or more, 0 for another word.
func (l *Language) month(t token) int {
	name := t.lower()
	if len(name) < 3 {
		return 0
	}
	for i, m := range months[l] {
		if name == m || name == m[:3] || name == m[:min(4, len(m))] {
			return i + 1
		}
	}
	return 0
}

func isDay(v float64) bool { return 1 <= v && v <= 31 }

func isYearText(t token) bool {
	return t.kind == digits && len(t.text) == 4 && strings.Trim(t.text, "0123456789") == ""
}

// whole gives the number of a few digits.
func whole(digits string) int {
	n, _ := strconv.Atoi(digits)
	return n
}
