package prose

import (
	"strconv"
	"strings"
)

// A Date is a day of a sentence: "April 20, 2027", "Apr 20", "20 de abril", "2027-04-20".
type Date struct {
	Start, End       int
	Year, Month, Day int    // Year is 0 when it is left out
	Before           string // the word before it, in small letters
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

// date reads the day that begins with a token.
func (l *Language) date(text string, t token) (Date, bool) {
	switch {
	case t.kind == digits:
		d, ok := isoDate(text, t)
		if !ok && l.lexicon.dayFirst != "" {
			return l.dayFirst(text, t)
		}
		return d, ok
	case t.kind == word && l.lexicon.dayFirst == "":
		return l.monthFirst(text, t)
	}
	return Date{}, false
}

// isoDate reads 2027-04-20.
func isoDate(text string, t token) (Date, bool) {
	const size = len("2027-04-20")
	if len(t.text) != 4 || t.from+size > len(text) || t.from+size < len(text) && isDigit(text[t.from+size]) {
		return Date{}, false
	}
	written := text[t.from : t.from+size]
	if written[4] != '-' || written[7] != '-' || strings.Trim(written, figures+"-") != "" {
		return Date{}, false
	}
	d := Date{Start: t.from, End: t.from + size, Year: whole(written[:4]), Month: whole(written[5:7]),
		Day: whole(written[8:])}
	return d, 1 <= d.Month && d.Month <= 12 && isDay(float64(d.Day))
}

// monthFirst reads "April 20, 2027".
func (l *Language) monthFirst(text string, t token) (Date, bool) {
	month := l.month(t)
	if month == 0 {
		return Date{}, false
	}
	day := next(text, t.to)
	if day.text == "." {
		day = next(text, day.to)
	}
	value, ok := wholeIn(day)
	if !ok || !isDay(value) {
		return Date{}, false
	}
	d := Date{Start: t.from, End: day.to, Month: month, Day: int(value)}
	comma := next(text, d.End)
	if year := next(text, comma.to); comma.text == "," && isYearText(year) {
		d.Year, d.End = whole(year.text), year.to
	}
	return d, true
}

// dayFirst reads "20 de abril de 2027".
func (l *Language) dayFirst(text string, t token) (Date, bool) {
	value, ok := wholeIn(t)
	of := next(text, t.to)
	name := next(text, of.to)
	month := l.month(name)
	if !ok || !isDay(value) || of.lower() != l.lexicon.dayFirst || month == 0 {
		return Date{}, false
	}
	d := Date{Start: t.from, End: name.to, Month: month, Day: int(value)}
	of = next(text, name.to)
	if year := next(text, of.to); l.of[of.lower()] && isYearText(year) {
		d.Year, d.End = whole(year.text), year.to
	}
	return d, true
}

// month gives the number of a month by its name or its first three letters or more, 0 for another word.
func (l *Language) month(t token) int {
	if t.kind != word || !l.dated.has(t.text) {
		return 0
	}
	return l.months[t.lower()]
}

func isDay(v float64) bool { return 1 <= v && v <= 31 }

func isYearText(t token) bool {
	return t.kind == digits && len(t.text) == 4 && strings.Trim(t.text, figures) == ""
}

// whole gives the number of a few digits.
func whole(digits string) int {
	n, _ := strconv.Atoi(digits)
	return n
}
