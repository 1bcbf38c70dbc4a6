package prose

import (
	"strings"

	"acreleaf/calc/unit"
)

// extend reads a text together with what follows it, "48" and "pounds a tree". It is false when the rest adds
// nothing. Only a substance, an area and trees are taken from the rest, unless it is wide.
func (l *Language) extend(text, rest string, wide bool) (Amount, bool) {
	if !l.mayGoOn(text, rest) {
		return Amount{}, false
	}
	a, why := l.amount(text+rest, 0, reach{len(text), wide})
	return a, why == taken && a.End > len(text)
}

// longest is extend in the language or another; the longest reading counts.
func (l *Language) longest(text, rest string, wide bool) (longest Amount, found bool) {
	for other := range l.first() {
		if a, ok := other.extend(text, rest, wide); ok && a.End > longest.End {
			longest, found = a, true
		}
	}
	return longest, found
}

// mayGoOn passes over most texts with one look at the words that a figure is followed by.
func (l *Language) mayGoOn(text, rest string) bool {
	t := next(rest, 0)
	switch {
	case t.kind == sign:
		return t.text == "/" || t.isDash() || signUnit(text+rest, len(text), t) != nil
	case t.kind != word:
		return material(rest, t) > 0
	case l.mayBe(rest, t):
		if isDigit(text[len(text)-1]) || l.substances[t.text] != "" || l.substances[t.lower()] != "" {
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

// StartsWithNumber says whether a text begins with a number in digits that is no grade, date or time: "5 devices".
func (l *Language) StartsWithNumber(text string) bool {
	n, ok := l.number(text, 0)
	return ok && n.Digits && !isChain(text, 0, n)
}

// ReadRate reads a figure of a rate whose words before it say what it is for: "a tree gets" 1 lb, where pounds a tree
// are wanted.
func (l *Language) ReadRate(before, text, rest string, wanted unit.Unit) (Figure, bool) {
	if at := strings.LastIndexAny(before, ".;:!?"); at >= 0 {
		before = before[at+1:]
	}
	base := l.lastBase(before)
	if base == nil || strings.Contains(text, "/") {
		return Figure{}, false
	}
	for _, below := range l.waysToTell(base) {
		f, err := l.ReadFigure(text+below, rest, wanted)
		if err != nil {
			f, _ = l.ReadApproximate(text+below, rest, wanted)
		}
		if f.Fits {
			f.Text = text
			return f, true
		}
	}
	return Figure{}, false
}

// lastBase finds the last words of a text that say what a rate is for: "each tree", "un acre".
func (l *Language) lastBase(text string) *symbol {
	var last *symbol
	for t := next(text, 0); t.kind != end; {
		noun := next(text, t.to)
		for other := range l.first() {
			if one := other.one[noun.lower()]; one.is(areaUnit|pieceUnit) && other.isDeterminer(t) {
				last = one
			}
		}
		t = noun
	}
	return last
}

// waysToTell gives what a rate for one of a base goes on with: "/tree", " per tree".
func (l *Language) waysToTell(base *symbol) []string {
	ways := []string{"/" + base.name}
	for other := range l.first() {
		if noun := other.nouns[base]; noun != "" {
			ways = append(ways, " "+other.lexicon.per+" "+noun)
		}
	}
	return ways
}

// isDeterminer says whether a word is one before one thing: each, a.
func (l *Language) isDeterminer(t token) bool {
	w := t.lower()
	return l.per[w]&perOne != 0 || l.ones[w]
}

// ReadApproximate reads a figure with words before it: "about 48 lb/ac". All that follows its number is its unit.
func (l *Language) ReadApproximate(text, rest string, wanted unit.Unit) (Figure, bool) {
	for other := range l.first() {
		if found := other.Find(text); len(found) == 1 && found[0].Start > 0 && found[0].End == len(text) &&
			!strings.ContainsAny(text[:found[0].Start], figures) {
			f, err := l.ReadFigure(text[found[0].Start:], rest, wanted)
			return f, err == nil
		}
	}
	return Figure{}, false
}

// ReadFirst reads a figure that has other words around it: an amount ("about 68 lb"), or else the plain number that a
// text begins with ("5 devices").
func (l *Language) ReadFirst(text, rest string, wanted unit.Unit) (Figure, error) {
	if found := l.findAny(text); len(found) > 0 {
		a := found[0]
		if len(found) > 1 || strings.TrimSpace(text[a.End:]) != "" {
			rest = ""
		}
		return l.ReadFigure(text[a.Start:a.End], rest, wanted)
	}
	n, _ := l.number(text, 0)
	return l.ReadFigure(text[:n.to], text[n.to:]+rest, wanted)
}
