package prose

import (
	"slices"
	"strings"

	"acreleaf/calc/unit"
)

// A phrase is a unit in words: what it is, of what, on what.
type phrase struct {
	head, substance string
	below           []string
	to              int
	cents           bool
	hangs           bool // the unit hangs on its number: 10-ton
}

// reach says how far a phrase goes on after a place: there, what is below the line is taken only when it is an
// area or a tree, so that "2 lb/ac" before "per ppm" stays what it is, or the time in which water runs: 2 inches are
// not 2 inches an hour.
type reach struct {
	from int
	wide bool
}

func (r reach) takes(p *phrase, symbol string, at int) bool {
	runs := (symbol == "h" || symbol == "min" || symbol == "s") && len(p.below) == 0
	return r.wide || at < r.from || symbol == "ac" || symbol == "ha" || symbol == "tree" || runs
}

// phrase reads a unit at a place.
func (l *Language) phrase(text string, at int, money bool, r reach) (phrase, bool) {
	p := phrase{head: "$", to: at}
	if !money {
		t := next(text, at)
		if t.kind != sign && (t.kind != word || !l.nexts[mark(t.text)]) {
			return p, false // most numbers are of no unit
		}
		var ok bool
		if p, ok = l.head(text, at, t); !ok {
			return l.elliptic(text, at, t, r)
		}
	}
	l.goOn(text, &p, r)
	if t := next(text, p.to); len(p.below) == 0 && slices.Contains(l.adjective, t.lower()) {
		more := p
		more.to = t.to
		if l.goOn(text, &more, r); more.to > t.to {
			p = more
		}
	}
	if p.head == "unit" {
		p.head = "lb" // a unit of nitrogen is a pound
		return p, p.substance != "" && p.substance != "product"
	}
	return p, len(p.below) > 0 || !needsBelow(p.head) && !l.isName(text, p)
}

// goOn reads what a unit is of and on.
func (l *Language) goOn(text string, p *phrase, r reach) {
	for l.substanceOf(text, p) || l.belowLine(text, p, r) {
	}
}

// isName says whether the words after a unit make it a part of something else: the name of a thing (a 5-gallon bucket),
// a way ("ten feet away"), a share of people ("10 percent of the growers"), "100 percent sure".
func (l *Language) isName(text string, p phrase) bool {
	t := next(text, p.to)
	switch {
	case slices.Contains(l.things, strings.TrimSuffix(t.lower(), "s")) || p.hangs && !isArea(p.head) && l.isKind(t):
		return true
	case isLength(p.head):
		return t.lower() == "away"
	case p.head != "%" || t.kind != word:
		return false
	case slices.Contains(l.offers, t.lower()):
		return true
	case slices.Contains(l.of, t.lower()):
		t = next(text, t.to)
		if slices.Contains(l.pointing, t.lower()) || t.lower() == "los" {
			t = next(text, t.to)
		}
		return slices.Contains(l.people, t.lower())
	}
	return false
}

// isKind says whether a word makes a kind of thing of a unit that hangs on its number: a 10-ton spreader, two 2-gph
// emitters. A 2-inch irrigation is an amount.
func (l *Language) isKind(t token) bool {
	return len(l.doses) > 0 && t.kind == word && t.spaced && l.substance[t.lower()] == "" &&
		!slices.Contains(l.per, t.lower()) && !slices.Contains(l.of, t.lower()) && !slices.Contains(l.to, t.lower()) &&
		t.lower() != l.and &&
		!slices.Contains(l.doses, strings.TrimSuffix(t.lower(), "s"))
}

// isOfThing says whether the words before an amount make a part of a name of it: a bucket of 5 gallons, a discount of
// 20 percent.
func (l *Language) isOfThing(before string, p phrase) bool {
	last := lastTokens(before)
	of, noun := last[3], last[2]
	if !slices.Contains(l.of, of.lower()) || noun.kind != word || len(p.below) > 0 {
		return false
	}
	if p.head == "%" {
		return slices.Contains(l.offers, noun.lower())
	}
	return slices.Contains(l.things, strings.TrimSuffix(noun.lower(), "s")) && p.substance == ""
}

// head reads the unit above the line.
func (l *Language) head(text string, at int, t token) (phrase, bool) {
	if t.kind == sign {
		if symbol := unitSign(text, at, t); symbol != "" {
			return phrase{head: symbol, to: t.to, cents: symbol == "cent"}.counted(), true
		}
	}
	hangs := t.isDash() && !t.spaced
	if after := l.pastFillers(text, at, t); after > at {
		at, t = after, next(text, after)
	}
	if t.text == "$" {
		below := next(text, t.to)
		return phrase{head: "$", to: t.to}, below.text == "/"
	}
	words, to := match(text, at, l.units)
	p := phrase{head: l.units[words], to: to, hangs: hangs}
	switch {
	case words == "" || words == "in" && l == English && !isInches(text, to):
		return p, false
	case len(p.head) == 1 && p.head != "%" && p.head != "$" && tailed(text, to) || isCompound(text, to):
		return p, false
	}
	p.cents = p.head == "cent"
	return p.counted(), true
}

// counted is a phrase with cents counted as money.
func (p phrase) counted() phrase {
	if p.cents {
		p.head = "$"
	}
	return p
}

// pastFillers goes past what may stand between a number and its unit: 48-lb, 48 more lb, 50+ lb, 50 or so lb.
func (l *Language) pastFillers(text string, at int, t token) int {
	for ; ; t = next(text, at) {
		if t.text == "+" || t.isDash() && !t.spaced && !next(text, t.to).spaced {
			at = t.to
			continue
		}
		if t.kind != word {
			return at
		}
		words, to := match(text, at, l.fillers)
		if words == "" {
			return at
		}
		at = to
	}
}

// tailed says whether a letter that may be a unit is the start of something else: "4 L-shaped", "3 m's".
func tailed(text string, to int) bool {
	t := next(text, to)
	return !t.spaced && (t.isDash() || t.text == "'" || t.text == "’")
}

// isCompound says whether a word goes on with a dash in a word that is no part of its unit: acre-hour.
func isCompound(text string, to int) bool {
	dash := next(text, to)
	if !dash.isDash() || dash.spaced || dash.text != "-" {
		return false
	}
	return isLetterAt(text, dash.to)
}

// afterInches are words that follow "in" where it means inches and not a place.
var afterInches = strings.Fields("of deep wide long thick apart high tall down to and or by per x across is are was " +
	"were below above from between")

// isInches tells the unit "in" from the word. "12 in." and "12 in of water" are inches, "4 in the last row" are not.
func isInches(text string, to int) bool {
	t := next(text, to)
	switch t.kind {
	case word:
		return slices.Contains(afterInches, t.lower())
	case digits, part:
		return false
	}
	return true
}

// unit gives the unit of a phrase. What calc/unit does not know is left out, from the end.
func (p phrase) unit() unit.Unit {
	below := ""
	for _, symbol := range p.below {
		below += "/" + symbol
	}
	tries := []string{p.head + below, p.head}
	if p.substance != "" {
		tries = slices.Insert(tries, 0, p.head+" "+p.substance+below)
		if p.head == "$" {
			tries[0] = p.head + below + " " + p.substance
		}
		if p.head == "mg" {
			tries = slices.Insert(tries, 0, p.head+below+" "+p.substance)
		}
	}
	for _, text := range tries {
		if u, err := unit.Parse(text); err == nil {
			return u
		}
	}
	return unit.Unit{}
}
