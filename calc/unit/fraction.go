package unit

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// fractions are the fractions that are one sign.
var fractions = map[rune]float64{'½': 1. / 2, '⅓': 1. / 3, '⅔': 2. / 3, '¼': 1. / 4, '¾': 3. / 4, '⅕': 1. / 5,
	'⅖': 2. / 5, '⅗': 3. / 5, '⅘': 4. / 5, '⅙': 1. / 6, '⅚': 5. / 6, '⅛': 1. / 8, '⅜': 3. / 8, '⅝': 5. / 8, '⅞': 7. / 8}

// FractionSign is the value of a fraction that is one sign; 0 for any other.
func FractionSign(r rune) float64 { return fractions[r] }

// partsOfOne are what people divide one by: halves, thirds, the sixteenths of a ruler.
var partsOfOne = []int{2, 3, 4, 5, 6, 8, 10, 12, 16, 32, 64}

// isFraction says whether two whole numbers on a stroke are a fraction where no unit need follow: 4/15 is a day.
func isFraction(above, below int) bool {
	return 0 < above && above < below && slices.Contains(partsOfOne, below)
}

// isFractionOfUnit reports whether a number before a unit in a sentence is a fraction: 3/2 lb, 4/15 ac, 1/128 ac.
func isFractionOfUnit(above, below int) bool {
	const smallest, smallestOfOne = 64, 1000
	return 0 < above && 1 < below && (below <= smallest || above == 1 && below <= smallestOfOne)
}

// fraction reads the fraction that a text starts with, ½ or 1/2, and gives its length; 0 when there is none.
func fraction(text string, is func(above, below int) bool) (value float64, size int) {
	sign, width := utf8.DecodeRuneInString(text)
	if fractions[sign] > 0 {
		return fractions[sign], width
	}
	above := run(text, isDigit)
	rest := text[above:]
	stroke := 0
	for _, s := range []string{"/", "⁄"} {
		if strings.HasPrefix(rest, s) {
			stroke = len(s)
		}
	}
	below := run(rest[stroke:], isDigit)
	const most = 4 // digits
	if above == 0 || below == 0 || above > most || below > most {
		return 0, 0
	}
	end := above + stroke + below
	if after := text[end:]; after != "" && strings.ContainsAny(after[:1], "/.") && startsDigit(after[1:]) {
		return 0, 0 // a date
	}
	upper, _ := strconv.Atoi(text[:above])
	lower, _ := strconv.Atoi(rest[stroke : stroke+below])
	if !is(upper, lower) {
		return 0, 0
	}
	return float64(upper) / float64(lower), end
}

// withFraction reads what may come after whole digits: the ½ of 2½, the 1/2 of 2 1/2 or 2-1/2.
func withFraction(rest string) (value float64, size int) {
	if value, size := fraction(rest, isFraction); size > 0 && !isDigit(rune(rest[0])) {
		return value, size
	}
	after := strings.TrimLeftFunc(rest, unicode.IsSpace)
	if len(after) == len(rest) {
		after = strings.TrimPrefix(rest, "-")
	}
	if len(after) == len(rest) {
		return 0, 0
	}
	value, size = fraction(after, isFraction)
	if size == 0 {
		return 0, 0
	}
	return value, len(rest) - len(after) + size
}

// feetInches reads a length in feet and inches, 18' 6" or 5 ft 6 in, as inches. False for anything else.
func feetInches(text string) (Range, bool) {
	feet, rest, ok := leading(text)
	if !ok {
		return Range{}, false
	}
	mark := run(rest, func(r rune) bool { return !isDigit(r) && fractions[r] == 0 })
	if found, _, known := lookUp(strings.Trim(rest[:mark], " .\u00a0")); !known || found.text != "ft" {
		return Range{}, false
	}
	inches, rest, ok := leading(rest[mark:])
	if found, _, known := lookUp(strings.Trim(rest, " .\u00a0")); !ok || !known || found.text != "in" || inches >= 12 {
		return Range{}, false
	}
	value := float64(feet*12) + inches
	return Range{value, value, MustParse("in")}, feet == math.Trunc(feet)
}

// leading reads the plain number that a text starts with, with its fraction.
func leading(text string) (value float64, rest string, ok bool) {
	r := newReader(strings.TrimSpace(text))
	n, err := r.number()
	return n.Value, r.text[r.at:], err == nil && !r.money && n.Value >= 0
}
