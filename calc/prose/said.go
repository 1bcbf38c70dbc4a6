package prose

import (
	"math"
	"slices"
	"strings"

	"acreleaf/calc/unit"
)

// An Amount is a number, or the two numbers of a range, with a unit of the trade.
type Amount struct {
	Start, End        int // bytes of the text, from the number to the end of the unit
	Low, High         float64
	LowStep, HighStep float64 // a unit in the last written place of each
	Unit              unit.Unit
	Digits            bool // the numbers are written in digits and points, as a worksheet's figures are
}

// Agrees says whether the amount is a range of the same unit, rounded to the places in which the amount is written. A
// number just between two rounds away from nothing, as everywhere.
func (a Amount) Agrees(low, high float64) bool {
	return Rounds(low, a.Low, a.LowStep) && Rounds(high, a.High, a.HighStep)
}

// roundest is how far rounding may move a figure. In another unit one can be written too coarsely to be the same: 7 in
// is not 1 ft, and 0.8 oz is not 1 oz.
const roundest = 0.05

// Quotes says whether the amount may be written for a range of the same unit: it agrees, and its rounding does not make
// another number of it.
func (a Amount) Quotes(low, high float64) bool {
	return a.Agrees(low, high) && Apart(a.Low, low) <= roundest && Apart(a.High, high) <= roundest
}

// Apart is how far two numbers are from each other, as a share of the larger. What arithmetic leaves of a nothing is
// nothing.
func Apart(a, b float64) float64 {
	const nothing = 1e-9
	a, b = math.Abs(a-b), max(math.Abs(a), math.Abs(b))
	if b < nothing {
		return 0
	}
	return a / b
}

// Rounds says whether a value is what was written when it is rounded to a multiple of step.
func Rounds(value, written, step float64) bool {
	if value < 0 {
		value, written = -value, -written
	}
	const hair = 1e-9 // for the arithmetic that led to the value
	up, down := written-value, value-written
	return up <= step/2*(1+hair)+value*1e-12 && down < step/2*(1-hair)-value*1e-12
}

// Read reads a text that is an amount and nothing else.
func (l *Language) Read(text string) (Amount, bool) {
	a, ok := l.amount(text, 0, reach{len(text), true})
	return a, ok && strings.TrimSpace(text[a.End:]) == ""
}

// Extend reads a text together with what follows it, "48" and "pounds a tree". It is false when the rest adds
// nothing. Only a substance, an area and trees are taken from the rest, unless it is wide.
func (l *Language) Extend(text, rest string, wide bool) (Amount, bool) {
	if !l.mayGoOn(text, rest) {
		return Amount{}, false
	}
	a, ok := l.amount(text+rest, 0, reach{len(text), wide})
	return a, ok && a.End > len(text)
}

// mayGoOn passes over most texts with one look at the words that a figure is followed by.
func (l *Language) mayGoOn(text, rest string) bool {
	t := next(rest, 0)
	switch {
	case t.kind == sign:
		return t.text == "/" || t.isDash() || unitSign(text+rest, len(text), t) != ""
	case t.kind != word:
		return material(rest, t) > 0
	case l.mayBe(rest, t):
		if isDigit(text[len(text)-1]) || l.substance[t.text] != "" || l.substance[t.lower()] != "" {
			return true
		}
	}
	for range 3 { // what is between: "of the", "for each"
		t = next(rest, t.to)
		if t.kind == digits {
			return true
		}
		if t.kind != word {
			return false
		}
		if l.mayBe(rest, t) {
			return true
		}
	}
	return false
}

// mayBe says whether a unit may go on with a word.
func (l *Language) mayBe(text string, t token) bool {
	return l.goesOn[t.text] || len(t.text) > 1 && l.goesOn[t.lower()] || material(text, t) > 0
}

// amount reads an amount at a place.
func (l *Language) amount(text string, at int, r reach) (Amount, bool) {
	money := strings.HasPrefix(text[at:], "$")
	start := at
	if money {
		at++
	}
	low, ok := l.number(text, at)
	if !ok {
		return l.unitAndHalf(text, at, r)
	}
	if isChain(text, at, low) {
		return Amount{}, false
	}
	high, ranged := l.second(text, start, low)
	if !ranged {
		high = low
	}
	p, ok := l.phrase(text, high.to, money, r)
	if !ok {
		return Amount{}, false
	}
	if l.isOfThing(text[:start], p) {
		return Amount{}, false
	}
	a := Amount{Start: start, End: p.to, Unit: p.unit(), Digits: low.Digits && high.Digits && !p.cents,
		Low: low.Value, High: high.Value, LowStep: low.Step, HighStep: high.Step}
	a = l.perMany(text, a, p)
	a = l.afterUnit(text, a, !ranged)
	counts := !low.one || ranged || a.High != low.Value || l.states(text, at, low, p)
	if p.cents {
		a.Low, a.High, a.LowStep, a.HighStep = a.Low/100, a.High/100, a.LowStep/100, a.HighStep/100
	}
	if p.head == "1" && (low.one || isYear(low) && !ranged) {
		return a, false
	}
	return a, counts
}

// isYear says whether a number is a year of these times: "in 2026 per acre costs rose".
func isYear(n number) bool { return n.Digits && n.Step == 1 && 1900 <= n.Value && n.Value < 2100 }

// states says whether one of a unit is an amount: "one ounce" is, since that is how a limit is told, and "one inch of
// water", but one acre or one hour is as often the measure that others are told by. After an article only a rate is:
// "the price of a pound of nitrogen" is none, nor is "an ounce of care".
func (l *Language) states(text string, at int, n number, p phrase) bool {
	rate := slices.ContainsFunc(p.below, func(b string) bool {
		return isArea(b) || isTime(b) || isMass(p.head) && isLength(b) || b == "tree" || b == "emitter" || p.head == "$"
	})
	rate = rate || !isArea(p.head) && l.isRated(text[:at], text[p.to:])
	if n.a {
		hedged := p.substance != "" && isWeighed(p.head) && l.isHedged(text[:at])
		return !needsBelow(p.head) && (rate || hedged || l.bareHalf && isShare(p.head))
	}
	ofWater := (isLength(p.head) || strings.HasPrefix(p.head, "ac-")) && slices.Contains(l.of, next(text, p.to).lower())
	return rate || ofWater || p.substance != "" || isShare(p.head) || isWeighed(p.head)
}

// isHedged says whether the words before an amount tell how near it is: "nearly a pound of N".
func (l *Language) isHedged(before string) bool {
	last := lastTokens(before)
	return slices.Contains(l.hedges, last[3].lower()) || slices.Contains(l.hedges, last[2].lower()+" "+last[3].lower())
}

// isChain says whether digits are the start of a grade, a date or a time: 46-0-0, 2026-09-14, 6:30.
func isChain(text string, at int, n number) bool {
	if !isDigit(text[at]) {
		return false
	}
	parts := 1
	for to := n.to; to+1 < len(text); {
		t := next(text, to)
		if t.text == ":" && !t.spaced && isDigit(text[t.to:][0]) {
			return true
		}
		if t.spaced || !t.isDash() || t.to >= len(text) || !isDigit(text[t.to]) {
			break
		}
		parts++
		to = t.to + numeral(text[t.to:])
	}
	return parts > 2
}

// second reads the rest of a range: "to 4", "–4", and after "between" also "and 4".
func (l *Language) second(text string, start int, low number) (number, bool) {
	t := next(text, low.to)
	joins := t.isDash()
	if t.kind == word {
		for _, w := range l.to {
			joins = joins || t.lower() == w
		}
		if t.lower() == l.and && l.and != "" {
			before := strings.TrimRight(text[:start], " \n\u00A0")
			joins = len(before) >= len(l.between) && strings.EqualFold(before[len(before)-len(l.between):], l.between)
		}
	}
	if !joins || t.to >= len(text) {
		return number{}, false
	}
	at := t.to
	if money := next(text, at); money.text == "$" {
		at = money.to
	}
	high, ok := l.number(text, at)
	return high, ok && high.Value >= low.Value && !math.IsInf(high.Value, 0)
}

// isRated says whether the words around an amount say what it is for: "give each tree one ounce", "one ounce around
// each tree".
func (l *Language) isRated(before, behind string) bool {
	const enough = 40
	before = before[max(0, len(before)-enough):]
	before = before[strings.LastIndexAny(before, ".;:!?")+1:]
	behind = behind[:min(len(behind), enough)]
	if end := strings.IndexAny(behind, ".,;:!?"); end >= 0 {
		behind = behind[:end]
	}
	around := strings.ToLower(before + "|" + behind)
	return slices.ContainsFunc(l.each, func(words string) bool { return strings.Contains(around, words) })
}

// afterUnit adds a fraction that is said after its unit: "dos onzas y media", "a pound and a half".
func (l *Language) afterUnit(text string, a Amount, single bool) Amount {
	and := next(text, a.End)
	if !single || and.kind != word || and.lower() != l.and {
		return a
	}
	t := next(text, and.to)
	if slices.Contains(l.articles, t.lower()) {
		t = next(text, t.to)
	}
	by := l.fractions[t.lower()]
	if words, _ := match(text, t.to, l.units); by == 0 || t.kind != word || words != "" {
		return a // "3 lb and a half gallon" are two amounts
	}
	a.Low, a.High, a.End, a.Digits = a.Low+1/by, a.High+1/by, t.to, false
	a.LowStep, a.HighStep = unit.FractionStep, unit.FractionStep
	return a
}

// unitAndHalf reads what Spanish says without a number: "libra y media".
func (l *Language) unitAndHalf(text string, at int, r reach) (Amount, bool) {
	if !l.bareHalf || next(text, at).kind != word {
		return Amount{}, false
	}
	p, ok := l.phrase(text, at, false, r)
	if !ok {
		return Amount{}, false
	}
	a := l.afterUnit(text, Amount{Start: at, End: p.to, Low: 1, High: 1, Unit: p.unit()}, true)
	return a, a.High > 1
}
