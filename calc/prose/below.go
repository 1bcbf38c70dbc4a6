package prose

import (
	"math"
	"slices"
)

// elliptic reads a rate that leaves its unit out: "48 per acre", "110/ac".
func (l *Language) elliptic(text string, at int, t token, r reach) (phrase, bool) {
	p := phrase{head: plain, to: at}
	if t.text != "/" {
		if _, class, _ := l.per.match(text, at); class&perBare == 0 {
			return p, false
		}
	}
	return p, l.belowLine(text, &p, r) && (p.below[0] == acre || p.below[0] == hectare)
}

// belowLine reads "/ac", "per acre", "a tree".
func (l *Language) belowLine(text string, p *phrase, r reach) bool {
	t := next(text, p.to)
	at, class := t.to, perAny
	stroke := t.text == "/"
	if !stroke {
		var words string
		if words, class, at = l.per.match(text, p.to); words == "" {
			return false
		}
	}
	base, to := l.base(text, at, stroke, class)
	if base == nil || isCompound(text, to) || !r.takes(p, base, t.from) || !isRate(p, base, stroke, class) {
		return false
	}
	if base == tree && next(text, to).in(l.rows) {
		return false // "each tree row"
	}
	p.below, p.to = append(p.below, base), to
	return true
}

// base reads what a rate is for.
func (l *Language) base(text string, at int, stroke bool, class perClass) (*symbol, int) {
	if words, s, to := l.bases.match(text, at); words != "" {
		return s, to
	}
	words, s, to := l.units.match(text, at)
	switch {
	case words != "" && class&perAny == 0 && l.isPlaceWord(text, words, to):
		return nil, 0
	case words != "":
		return s, to
	case stroke && next(text, at).text == acreBelow && !isLetterAt(text, at+1):
		return acre, at + 1
	}
	return nil, 0
}

// isRate says whether a unit may be on a base. Any base may follow a stroke. After words a weight is on no time, and
// after "each" only what is said to be there for each one is a base: an acre, a tree, an hour.
func isRate(p *phrase, base *symbol, stroke bool, class perClass) bool {
	switch {
	case p.head.is(shareUnit), p.head.is(lengthUnit) && base.is(areaUnit), base.is(moneyUnit | nominalUnit):
		return false
	case class&perAgain != 0 && slices.Contains(p.below, base):
		return false // "2 gal/tree on each tree"
	case stroke:
		return true
	case p.head.is(massUnit|nominalUnit) && base.is(timeUnit):
		return false
	}
	return class&perAny != 0 || base.is(fieldBase|pieceUnit|timeUnit) || p.head == dollar
}

// perMany reads what a rate is for when that is more than one: 8 fl oz/100 gal, 2 lb per 1000 sq ft.
func (l *Language) perMany(text string, a Amount, p phrase) Amount {
	t := next(text, p.to)
	at := t.to
	if t.text != "/" {
		var class perClass
		if _, class, at = l.per.match(text, p.to); class&(perAny|perEach) == 0 {
			return a
		}
	}
	if len(p.below) > 0 || at >= len(text) {
		return a
	}
	n, ok := l.number(text, at)
	if !ok || n.Value < 2 || n.Value != math.Trunc(n.Value) {
		return a
	}
	words, base, to := l.units.match(text, n.to)
	if words == "" {
		return a
	}
	p.below = []*symbol{base}
	u := p.unit()
	if u.Dimension() == a.Unit.Dimension() {
		return a // calc/unit does not know it
	}
	a = a.dividedBy(n.Value)
	a.Unit, a.End, a.Digits = u, to, false
	return a
}
