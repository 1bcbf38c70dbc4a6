package said

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"acreleaf/calc/unit"
)

// A number is one number of a sentence.
type number struct {
	value  float64
	step   float64 // a unit in the last written place
	to     int
	digits bool // written in digits and a point, as a worksheet's figures are
	one    bool // the word for one, which stands for less than the digit does
	a      bool // that word is an article as often as a number: a, an, una
}

// fractionStep is how finely a fraction is held against a decimal: 1/3 is 0.33.
const fractionStep = 0.01

// number reads a number at a place: digits, a fraction, or words.
func (l *Language) number(text string, at int) (number, bool) {
	t := next(text, at)
	switch t.kind {
	case digits:
		value, step, ok := decimal(t.text)
		if !ok {
			return number{}, false
		}
		n := number{value: value, step: step, to: t.to, digits: true}
		return l.scaled(text, l.withFraction(text, n)), true
	case part:
		return number{value: partOf(t), step: fractionStep, to: t.to}, true
	case word:
		return l.spoken(text, t)
	}
	return number{}, false
}

// decimal reads digits as unit.ParseNumber does. A comma that parts no thousands is taken for a decimal point, as many
// people write one, and a narrow space parts thousands.
func decimal(text string) (value, step float64, ok bool) {
	for _, space := range []string{"\u00A0", "\u202F", "\u2009"} {
		text = strings.ReplaceAll(text, space, "")
	}
	text = unit.PointDecimals(text)
	value, err := unit.ParseNumber(text)
	_, places, _ := strings.Cut(text, ".")
	return value, math.Pow(10, -float64(len(places))), err == nil
}

// partOf is the fraction that a token is by itself: ½.
func partOf(t token) float64 {
	sign, _ := utf8.DecodeRuneInString(t.text)
	return unit.FractionSign(sign)
}

// withFraction adds what stands after whole digits: 2 1/2, 2½, 1/2, 2 and a half.
func (l *Language) withFraction(text string, n number) number {
	if n.step != 1 {
		return n
	}
	t := next(text, n.to)
	below, size := stroke(text, n.to)
	switch {
	case size > 0 && !t.spaced:
		return number{value: n.value / below, step: fractionStep, to: n.to + size}
	case t.kind == part:
		return number{value: n.value + partOf(t), step: fractionStep, to: t.to}
	case t.isDash() && !t.spaced:
		t = next(text, t.to)
		if t.spaced {
			return n
		}
	}
	if below, size := stroke(text, t.to); t.kind == digits && size > 0 {
		if above, step, ok := decimal(t.text); ok && step == 1 && above < below {
			return number{value: n.value + above/below, step: fractionStep, to: t.to + size}
		}
	}
	return l.andHalf(text, n)
}

// stroke reads "/2" right at a place. It gives its length, 0 when there is none.
func stroke(text string, at int) (below float64, size int) {
	rest, found := strings.CutPrefix(text[at:], "/")
	if !found {
		rest, found = strings.CutPrefix(text[at:], "⁄")
	}
	if !found {
		return 0, 0
	}
	width := numeral(rest)
	if after := next(rest, width); !after.spaced && (after.text == "/" || after.isDash() && !isLetterAt(rest, after.to)) {
		return 0, 0 // a date
	}
	below, err := strconv.ParseFloat(rest[:width], 64)
	if err != nil || below < 2 || below > smallestPart || below != math.Trunc(below) {
		return 0, 0
	}
	return below, len(text[at:]) - len(rest) + width
}

// smallestPart is the smallest that people write as a fraction: the 1/64 inch of a drill.
const smallestPart = 64

// andHalf adds "and a half".
func (l *Language) andHalf(text string, n number) number {
	and := next(text, n.to)
	if and.kind != word || l.and == "" || and.lower() != l.and {
		return n
	}
	t := next(text, and.to)
	if slices.Contains(l.articles, t.lower()) {
		t = next(text, t.to)
	}
	if by := l.fractions[t.lower()]; by > 0 {
		return number{value: n.value + 1/by, step: fractionStep, to: t.to}
	}
	return n
}

// scaled multiplies by "hundred", "thousand" and their like after a number.
func (l *Language) scaled(text string, n number) number {
	for {
		words, to := match(text, n.to, l.scales)
		if words == "" {
			return n
		}
		n = number{value: n.value * l.scales[words], step: n.step * l.scales[words], to: to}
	}
}

// spoken reads a number in words.
func (l *Language) spoken(text string, t token) (number, bool) {
	if l.fractions[t.lower()] > 0 {
		return l.fraction(text, t, 1)
	}
	value, known := l.numbers[t.lower()]
	if !known {
		return number{}, false
	}
	n := number{value: value, step: 1, to: t.to, one: value == 1, a: value == 1 && t.lower() != "one"}
	after := next(text, t.to)
	if after.isDash() && !after.spaced {
		after = next(text, after.to)
	}
	if value < 10 && l.fractions[after.lower()] > 0 {
		if n, ok := l.fraction(text, after, value); ok {
			return n, true
		}
	}
	if value >= 20 && value <= 1000 {
		n = l.joined(text, n, after)
	}
	scaled := l.scaled(text, n)
	if scaled.to > n.to {
		return l.joined(text, scaled, next(text, scaled.to)), true
	}
	return l.andHalf(text, n), true
}

// joined adds the rest of a number: twenty-five, treinta y cinco, two hundred fifty.
func (l *Language) joined(text string, n number, t token) number {
	if t.lower() == l.and {
		t = next(text, t.to)
	}
	limit := 10.0
	switch {
	case n.value >= 1000:
		limit = 1000 // mil doscientas
	case n.value >= 100:
		limit = 100
	}
	if more := l.numbers[t.lower()]; t.kind == word && more > 0 && more < limit {
		rest := number{value: more, to: t.to}
		if more >= 20 {
			rest = l.joined(text, rest, dashed(text, t.to))
		}
		if n.value >= 1000 {
			rest = l.scaled(text, rest) // two thousand five hundred
		}
		return number{value: n.value + rest.value, step: 1, to: rest.to}
	}
	return n
}

// dashed reads the token after a dash that joins words, or the token at the place.
func dashed(text string, at int) token {
	t := next(text, at)
	if t.isDash() && !t.spaced {
		return next(text, t.to)
	}
	return t
}

// fraction reads what may stand between a fraction and its unit: two thirds *of an* ounce.
func (l *Language) fraction(text string, t token, above float64) (number, bool) {
	n := number{value: above / l.fractions[t.lower()], step: fractionStep, to: t.to}
	after := next(text, t.to)
	of := after.kind == word && slices.Contains(l.of, after.lower())
	if !of && !slices.Contains(l.halves, t.lower()) {
		return number{}, false
	}
	if of {
		n.to = after.to
		after = next(text, after.to)
	}
	if after.kind == word && slices.Contains(l.articles, after.lower()) {
		n.to = after.to
	}
	return n, true
}
