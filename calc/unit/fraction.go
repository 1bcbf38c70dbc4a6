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

// fraction reads the fraction that a text starts with, ½ or 1/2, and gives its length; 0 when there is none.
func fraction(text string) (value float64, size int) {
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
	if above == 0 || stroke == 0 || below == 0 || above > 2 || below > 2 {
		return 0, 0
	}
	end := above + stroke + below
	if after := text[end:]; after != "" && strings.ContainsAny(after[:1], "/.") && startsDigit(after[1:]) {
		return 0, 0 // a date
	}
	upper, _ := strconv.Atoi(text[:above])
	lower, _ := strconv.Atoi(rest[stroke : stroke+below])
	if upper == 0 || upper >= lower || !slices.Contains(partsOfOne, lower) {
		return 0, 0
	}
	return float64(upper) / float64(lower), end
}

// withFraction reads what may stand after whole digits: the ½ of 2½, the 1/2 of 2 1/2 or 2-1/2.
func withFraction(rest string) (value float64, size int) {
	if value, size := fraction(rest); size > 0 && !isDigit(rune(rest[0])) {
		return value, size
	}
	after := strings.TrimLeftFunc(rest, unicode.IsSpace)
	if len(after) == len(rest) {
		after = strings.TrimPrefix(rest, "-")
	}
	if len(after) == len(rest) {
		return 0, 0
	}
	value, size = fraction(after)
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
	value, err := r.number()
	return value, r.text[r.at:], err == nil && !r.money && value >= 0
}

// PointDecimals writes the decimal commas of a text as points, for a page in a language that has them: 12,5 is 12.5. A
// comma that parts thousands stays, since numbers are printed with it: 1,200.
func PointDecimals(text string) string {
	var b strings.Builder
	for text != "" {
		size := run(text, func(r rune) bool { return !isNumberRune(r) })
		b.WriteString(text[:size])
		text = text[size:]
		size = run(text, isNumberRune)
		number := text[:size]
		text = text[size:]
		whole, after, one := strings.Cut(number, ",")
		after = strings.TrimRight(after, ".,")
		if one && whole != "" && after != "" && !strings.ContainsAny(after, ".,") && !strings.Contains(whole, ".") &&
			!thousands(whole+","+after) {
			number = strings.Replace(number, ",", ".", 1)
		}
		b.WriteString(number)
	}
	return b.String()
}
