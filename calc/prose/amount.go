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

// amountOf is an amount of a phrase, from one number to another.
func amountOf(start int, low, high number, p phrase) Amount {
	return Amount{Start: start, End: p.to, Unit: p.unit(), Digits: low.Digits && high.Digits && !p.cents,
		Low: low.Value, High: high.Value, LowStep: low.Step, HighStep: high.Step}
}

// dividedBy is the amount with its numbers divided.
func (a Amount) dividedBy(by float64) Amount {
	a.Low, a.High, a.LowStep, a.HighStep = a.Low/by, a.High/by, a.LowStep/by, a.HighStep/by
	return a
}

// read reads a text that is an amount and nothing else.
func (l *Language) read(text string) (Amount, bool) {
	a, why := l.amount(text, 0, reach{len(text), true})
	return a, why == taken && strings.TrimSpace(text[a.End:]) == ""
}

// amount reads an amount at a place, or says why there is none.
func (l *Language) amount(text string, at int, r reach) (Amount, reason) {
	start := at
	hasSign := strings.HasPrefix(text[at:], dollar.name)
	if hasSign {
		at++
	}
	low, ok := l.number(text, at)
	if !ok {
		return l.unitAndHalf(text, at, r)
	}
	if isChain(text, at, low) {
		return Amount{}, chainReason(text, at)
	}
	high, ranged := l.second(text, start, low)
	if !ranged {
		high = low
	}
	p, why := l.phrase(text, high.to, hasSign, r)
	if why == taken {
		why = l.partOfThing(text[:start], p)
	}
	if why != taken {
		return Amount{Start: start, End: p.to}, why
	}
	a := l.perMany(text, amountOf(start, low, high, p), p)
	a = l.afterUnit(text, a, !ranged)
	one := low.one && !ranged && a.High == low.Value
	if p.cents {
		a = a.dividedBy(100)
	}
	switch {
	case p.head == plain && low.one:
		return a, asBase
	case p.head == plain && isYear(low) && !ranged:
		return a, asYear
	case one:
		return a, l.oneOf(text, at, low, p)
	}
	return a, taken
}

// isYear says whether a number is a year of these times: "in 2026 per acre costs rose".
func isYear(n number) bool { return n.Digits && n.Step == 1 && 1900 <= n.Value && n.Value < 2100 }

// oneOf says whether one of a unit is an amount: "one ounce" is, since that is how a limit is told, and "one inch of
// water", but one acre or one hour is as often the measure that others are told by. After an article only a rate is:
// "the price of a pound of nitrogen" is none, nor is "an ounce of care".
func (l *Language) oneOf(text string, at int, n number, p phrase) reason {
	rate := p.head == dollar && len(p.below) > 0 || slices.ContainsFunc(p.below, func(b *symbol) bool {
		return b.is(areaUnit|timeUnit|pieceUnit) || p.head.is(massUnit) && b.is(lengthUnit)
	})
	rate = rate || !p.head.is(areaUnit) && l.isRated(text[:at], text[p.to:])
	if n.article {
		hedged := p.substance != "" && p.head.is(doseUnit) && l.isHedged(text[:at])
		return unless(!p.head.is(rateOnly) && (rate || hedged || l.lexicon.bareHalf && p.head.is(shareUnit)), asBase)
	}
	ofWater := p.head.is(lengthUnit|layerUnit) && l.of[next(text, p.to).lower()]
	return unless(rate || ofWater || p.substance != "" || p.head.is(shareUnit|doseUnit), asBase)
}

// isHedged says whether the words before an amount tell how near it is: "nearly a pound of N".
func (l *Language) isHedged(before string) bool {
	last := lastTokens(before)
	return l.hedges[last[3].lower()] || l.hedges[last[2].lower()+" "+last[3].lower()]
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
	for words := range l.forEach {
		if strings.Contains(around, words) {
			return true
		}
	}
	return false
}

// afterUnit adds a fraction that follows its unit: "dos onzas y media", "a pound and a half".
func (l *Language) afterUnit(text string, a Amount, single bool) Amount {
	and := next(text, a.End)
	if !single || !l.isAnd(and) {
		return a
	}
	t := next(text, and.to)
	if t.in(l.articles) {
		t = next(text, t.to)
	}
	by := l.fractions[t.lower()]
	if words, _, _ := l.units.match(text, t.to); by == 0 || t.kind != word || words != "" {
		return a // "3 lb and a half gallon" are two amounts
	}
	a.Low, a.High, a.End, a.Digits = a.Low+1/by, a.High+1/by, t.to, false
	a.LowStep, a.HighStep = unit.FractionStep, unit.FractionStep
	return a
}

// unitAndHalf reads what a language may say without a number: "libra y media".
func (l *Language) unitAndHalf(text string, at int, r reach) (Amount, reason) {
	if !l.lexicon.bareHalf || next(text, at).kind != word {
		return Amount{}, asOrdinal
	}
	p, why := l.phrase(text, at, false, r)
	if why != taken {
		return Amount{}, why
	}
	a := l.afterUnit(text, Amount{Start: at, End: p.to, Low: 1, High: 1, Unit: p.unit()}, true)
	return a, unless(a.High > 1, asBase)
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
	high, joins := l.endOfRange(text, start, low)
	return high, joins && high.Value >= low.Value && !math.IsInf(high.Value, 0)
}

// endOfRange reads a number that is joined to the one before it, be it smaller.
func (l *Language) endOfRange(text string, start int, low number) (number, bool) {
	t := next(text, low.to)
	joins := t.isDash() || t.in(l.to)
	if l.isAnd(t) {
		before := strings.TrimRight(text[:start], " \n\u00A0")
		between := l.lexicon.between
		joins = len(before) >= len(between) && strings.EqualFold(before[len(before)-len(between):], between)
	}
	if !joins || t.to >= len(text) {
		return number{}, false
	}
	at := t.to
	if sign := next(text, at); sign.text == dollar.name {
		at = sign.to
	}
	return l.number(text, at)
}
