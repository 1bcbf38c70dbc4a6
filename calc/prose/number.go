package prose

import "acreleaf/calc/unit"

// A number is one number of a sentence.
type number struct {
	unit.Number
	to      int
	one     bool // the word for one, which stands for less than the digit does
	article bool // that word is as often an article: a, an, una
}

// number reads a number at a place: digits, a fraction, or words. What the digits and the signs are worth is up to
// calc/unit; the words are the language's own.
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

// inWords is a number in words.
func inWords(value float64, to int) number {
	return number{Number: unit.Number{Value: value, Step: 1}, to: to}
}

// parted is a number with a fraction, in words.
func parted(value float64, to int) number {
	return number{Number: unit.Number{Value: value, Step: unit.FractionStep}, to: to}
}

// isAnd says whether a token joins a number to its fraction.
func (l *Language) isAnd(t token) bool { return t.kind == word && t.lower() == l.lexicon.and }

// andHalf adds "and a half".
func (l *Language) andHalf(text string, n number) number {
	and := next(text, n.to)
	if n.Step != 1 || !l.isAnd(and) {
		return n
	}
	t := next(text, and.to)
	if t.in(l.articles) {
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
		words, by, to := l.scales.match(text, n.to)
		if words == "" {
			return n
		}
		n = number{Number: unit.Number{Value: n.Value * by, Step: n.Step * by}, to: to}
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
	n := inWords(value, t.to)
	n.one, n.article = value == 1, t.in(l.ones)
	after := dashed(text, t.to)
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
	if l.isAnd(t) {
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
		rest := inWords(more, t.to)
		if more >= 20 {
			rest = l.joined(text, rest, dashed(text, t.to))
		}
		if n.Value >= 1000 {
			rest = l.scaled(text, rest) // two thousand five hundred
		}
		return inWords(n.Value+rest.Value, rest.to)
	}
	return n
}

// fraction reads what may be between a fraction and its unit: two thirds *of an* ounce.
func (l *Language) fraction(text string, t token, above float64) (number, bool) {
	n := parted(above/l.fractions[t.lower()], t.to)
	after := next(text, t.to)
	of := after.in(l.of)
	if !of && !l.halves[t.lower()] {
		return number{}, false
	}
	if of {
		n.to = after.to
		after = next(text, after.to)
	}
	if after.in(l.articles) {
		n.to = after.to
	}
	return n, true
}
