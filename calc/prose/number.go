package prose

import (
	"slices"

	"acreleaf/calc/unit"
)

// A number is one number of a sentence.
type number struct {
	unit.Number
	to  int
	one bool // the word for one, which stands for less than the digit does
	a   bool // that word is an article as often as a number: a, an, una
}

// number reads a number at a place: digits, a fraction, or words. What the digits and the signs are worth, calc/unit
// says; the words are the language's own.
func (l *Language) number(text string, at int) (number, bool) {
	t := next(text, at)
	switch t.kind {
	case digits, part:
		n, ok := written(text, t)
		return l.scaled(text, l.andHalf(text, n)), ok
	case word:
		return l.spoken(text, t)
	}
	return number{}, false
}

// written is a number in digits and signs.
func written(text string, t token) (number, bool) {
	if n, size := unit.LeadingFraction(text[t.from:]); size > 0 {
		return number{Number: n, to: t.from + size}, true
	}
	n, ok := unit.Written(t.text)
	if !ok {
		return number{}, false
	}
	sum, size := n.WithFraction(text[t.to:])
	return number{Number: sum, to: t.to + size}, true
}

// wholeIn is the whole number that a token is in digits.
func wholeIn(t token) (value float64, is bool) {
	n, ok := unit.Written(t.text)
	return n.Value, ok && t.kind == digits && n.Step == 1
}

// counted is a number in words.
func counted(value float64, to int) number {
	return number{Number: unit.Number{Value: value, Step: 1}, to: to}
}

// parted is a number with a fraction, in words.
func parted(value float64, to int) number {
	return number{Number: unit.Number{Value: value, Step: unit.FractionStep}, to: to}
}

// andHalf adds "and a half".
func (l *Language) andHalf(text string, n number) number {
	and := next(text, n.to)
	if n.Step != 1 || and.kind != word || l.and == "" || and.lower() != l.and {
		return n
	}
	t := next(text, and.to)
	if slices.Contains(l.articles, t.lower()) {
		t = next(text, t.to)
	}
	if by := l.fractions[t.lower()]; by > 0 {
		return parted(n.Value+1/by, t.to)
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
		n = number{Number: unit.Number{Value: n.Value * l.scales[words], Step: n.Step * l.scales[words]}, to: to}
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
	n := counted(value, t.to)
	n.one, n.a = value == 1, value == 1 && t.lower() != "one"
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
	case n.Value >= 1000:
		limit = 1000 // mil doscientas
	case n.Value >= 100:
		limit = 100
	}
	if more := l.numbers[t.lower()]; t.kind == word && more > 0 && more < limit {
		rest := counted(more, t.to)
		if more >= 20 {
			rest = l.joined(text, rest, dashed(text, t.to))
		}
		if n.Value >= 1000 {
			rest = l.scaled(text, rest) // two thousand five hundred
		}
		return counted(n.Value+rest.Value, rest.to)
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
	n := parted(above/l.fractions[t.lower()], t.to)
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
