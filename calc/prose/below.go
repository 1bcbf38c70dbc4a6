package prose

import (
	"math"
	"slices"
	"strings"
)

// elliptic reads a rate that leaves its unit out: "48 per acre", "110/ac".
func (l *Language) elliptic(text string, at int, t token, r reach) (phrase, bool) {
	p := phrase{head: "1", to: at}
	if t.text != "/" && !strings.EqualFold(t.text, l.per[0]) && !l.isTo(text, t) {
		return p, false
	}
	return p, l.belowLine(text, &p, r) && (p.below[0] == "ac" || p.below[0] == "ha")
}

// isTo says whether the words at a token are "to the", as in "64 to the acre".
func (l *Language) isTo(text string, t token) bool {
	return t.lower() == "to" && l.perWords["to the"] != "" && next(text, t.to).lower() == "the"
}

// belowLine reads "/ac", "per acre", "a tree".
func (l *Language) belowLine(text string, p *phrase, r reach) bool {
	t := next(text, p.to)
	at, any, again := t.to, true, false
	if t.text != "/" {
		words, to := match(text, p.to, l.perWords)
		if words == "" {
			return false
		}
		at, any, again = to, words == l.per[0], strings.Contains(words, " ")
	}
	words, to := match(text, at, l.below)
	symbol := l.below[words]
	if words == "" {
		words, to = match(text, at, l.units)
		symbol = l.units[words]
		if l == English && words == "in" && !any && !isInches(text, to) {
			return false
		}
	}
	if words == "" && t.text == "/" && next(text, at).text == "A" && !isLetterAt(text, at+1) {
		words, symbol, to = "A", "ac", at+1
	}
	switch {
	case words == "" || isCompound(text, to) || isLength(p.head) && isArea(symbol) ||
		symbol == "$" || symbol == "cent" || symbol == "unit" || !r.takes(p, symbol, t.from):
		return false
	case symbol == "tree" && isRow(next(text, to)) || again && slices.Contains(p.below, symbol):
		return false // "2 gal/tree on each tree"
	case t.text == "/":
	case isTime(symbol) && (isMass(p.head) && p.head != "$" || isShare(p.head)):
		return false
	case !any && !slices.Contains([]string{"ac", "ha", "tree", "emitter"}, symbol) && !isTime(symbol) && p.head != "$":
		return false
	}
	if isShare(p.head) {
		return false
	}
	p.below, p.to = append(p.below, symbol), to
	return true
}

// isRow says whether what follows makes a row of the trees before it: "each tree row".
func isRow(t token) bool { return t.lower() == "row" || t.lower() == "rows" || t.lower() == "line" }

func isTime(symbol string) bool {
	return slices.Contains([]string{"h", "min", "s", "day", "week"}, symbol)
}

// perMany reads what a rate is for when that is more than one: 8 fl oz/100 gal, 2 lb per 1000 sq ft.
func (l *Language) perMany(text string, a Amount, p phrase) Amount {
	t := next(text, p.to)
	at := t.to
	if t.text != "/" {
		words, to := match(text, p.to, l.perWords)
		if at = to; words != l.per[0] && !slices.Contains(l.perEach, words) {
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
	by := n.Value
	words, to := match(text, n.to, l.units)
	if words == "" {
		return a
	}
	p.below = []string{l.units[words]}
	u := p.unit()
	if u.Dimension() == a.Unit.Dimension() {
		return a // calc/unit does not know it
	}
	a.Low, a.High, a.LowStep, a.HighStep = a.Low/by, a.High/by, a.LowStep/by, a.HighStep/by
	a.Unit, a.End, a.Digits = u, to, false
	return a
}
