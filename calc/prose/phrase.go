package prose

import (
	"slices"

	"acreleaf/calc/unit"
)

// A phrase is a unit in words: what it is, of what, on what.
type phrase struct {
	head      *symbol
	substance string
	below     []*symbol
	to        int
	cents     bool
	hangs     bool // the unit depends on its number: 10-ton
}

// reach says how far a phrase goes on after a place: there, what is below the line is taken only when it is an
// area or a tree, so that "2 lb/ac" before "per ppm" stays what it is, or the time in which water runs: 2 inches are
// not 2 inches an hour.
type reach struct {
	from int
	wide bool
}

func (r reach) takes(p *phrase, s *symbol, at int) bool {
	runs := s.is(flowBase) && len(p.below) == 0
	return r.wide || at < r.from || s.is(fieldBase) || runs
}

// phrase reads a unit at a place, after a number or, with a sign of money before that, without a head of its own.
func (l *Language) phrase(text string, at int, hasSign bool, r reach) (phrase, reason) {
	p := phrase{head: dollar, to: at}
	if !hasSign {
		t := next(text, at)
		if t.kind != sign && (t.kind != word || !l.heads.has(t.text)) {
			return p, asCount // most numbers are of no unit
		}
		var why reason
		if p, why = l.head(text, at, t); why != taken {
			bare, is := l.elliptic(text, at, t, r)
			if is {
				return bare, taken
			}
			return bare, why
		}
	}
	l.goOn(text, &p, r)
	if t := next(text, p.to); len(p.below) == 0 && t.in(l.adjectives) {
		more := p
		more.to = t.to
		if l.goOn(text, &more, r); more.to > t.to {
			p = more
		}
	}
	switch {
	case p.head.is(nominalUnit):
		p.head = pound
		return p, unless(p.substance != "" && p.substance != product, asNominal)
	case len(p.below) > 0:
		return p, taken
	case p.head.is(rateOnly):
		return p, asRateOnly
	}
	return p, l.nameReason(text, p)
}

// goOn reads what a unit is of and on.
func (l *Language) goOn(text string, p *phrase, r reach) {
	for l.substanceOf(text, p) || l.belowLine(text, p, r) {
	}
}

// nameReason says whether the words after a unit make it a part of something else: the name of a thing (a 5-gallon
// bucket), a distance ("ten feet away"), a share of people ("10 percent of the growers"), "100 percent sure".
func (l *Language) nameReason(text string, p phrase) reason {
	t := next(text, p.to)
	switch {
	case l.things[l.singular(t)] || p.hangs && !p.head.is(areaUnit) && l.isKind(t):
		return asThing
	case p.head.is(lengthUnit):
		return unless(!l.away[t.lower()], asDistance)
	case p.head != percent || t.kind != word:
		return taken
	case l.offers[t.lower()]:
		return asEveryday
	case l.of[t.lower()]:
		t = next(text, t.to)
		if l.thePeople[t.lower()] {
			t = next(text, t.to)
		}
		return unless(!l.people[t.lower()], asPeople)
	}
	return taken
}

// isKind says whether a word makes a kind of thing of a unit that depends on its number: a 10-ton spreader, two 2-gph
// emitters. A 2-inch irrigation is an amount.
func (l *Language) isKind(t token) bool {
	w := t.lower()
	return len(l.doses) > 0 && t.kind == word && t.spaced && l.substances[w] == "" &&
		l.per[w]&(perAny|perOne) == 0 && !l.of[w] && !l.to[w] && !l.isAnd(t) && !l.doses[l.singular(t)]
}

// partOfThing says whether the words before an amount make a part of a name of it: a bucket of 5 gallons, a discount of
// 20 percent.
func (l *Language) partOfThing(before string, p phrase) reason {
	if !l.of[lastLetters(before)] {
		return taken
	}
	last := lastTokens(before)
	of, noun := last[3], last[2]
	switch {
	case !l.of[of.lower()] || noun.kind != word || len(p.below) > 0:
		return taken
	case p.head == percent:
		return unless(!l.offers[noun.lower()], asEveryday)
	}
	return unless(!l.things[l.singular(noun)] || p.substance != "", asThing)
}

// head reads the unit above the line.
func (l *Language) head(text string, at int, t token) (phrase, reason) {
	if t.kind == sign {
		if s := signUnit(text, at, t); s != nil {
			return phrase{head: s, to: t.to}.counted(), taken
		}
	}
	hangs := t.hangs()
	if after := l.pastFillers(text, at, t); after > at {
		at, t = after, next(text, after)
	}
	if t.text == dollar.name {
		below := next(text, t.to)
		return phrase{head: dollar, to: t.to}, unless(below.text == "/", asCount)
	}
	words, s, to := l.units.match(text, at)
	p := phrase{head: s, to: to, hangs: hangs}
	switch {
	case words == "":
		return p, asCount
	case l.isPlaceWord(text, words, to):
		return p, asPlaceWord
	case s.isLetter() && tailed(text, to) || isCompound(text, to):
		return p, asLongerWord
	}
	return p.counted(), taken
}

// isLetter says whether a symbol is one letter, as the start of other words is.
func (s *symbol) isLetter() bool { return len(s.name) == 1 && isLetter(s.name[0]) }

// counted is a phrase with cents counted as money.
func (p phrase) counted() phrase {
	if p.head == cent {
		p.head, p.cents = dollar, true
	}
	return p
}

// pastFillers goes past what may be between a number and its unit: 48-lb, 48 more lb, 50+ lb, 50 or so lb.
func (l *Language) pastFillers(text string, at int, t token) int {
	for ; ; t = next(text, at) {
		if t.text == "+" || t.hangs() && !next(text, t.to).spaced {
			at = t.to
			continue
		}
		if t.kind != word {
			return at
		}
		words, _, to := l.fillers.match(text, at)
		if words == "" {
			return at
		}
		at = to
	}
}

// tailed says whether a letter that may be a unit is the start of something else: "4 L-shaped", "3 m's".
func tailed(text string, to int) bool {
	t := next(text, to)
	return !t.spaced && (t.isDash() || t.text == apostrophe || t.text == curlyApostrophe)
}

// isCompound says whether a word goes on with a dash in a word that is no part of its unit: acre-hour.
func isCompound(text string, to int) bool {
	dash := next(text, to)
	return dash.hangs() && dash.text == "-" && isLetterAt(text, dash.to)
}

// isPlaceWord tells a unit from a word of place that is spelled alike. "12 in." and "12 in of water" are inches, "4 in
// the last row" are not.
func (l *Language) isPlaceWord(text, words string, to int) bool {
	followers, alike := l.onlyBefore[words]
	if !alike {
		return false
	}
	switch t := next(text, to); t.kind {
	case word:
		return !followers[t.lower()]
	case digits, part:
		return true
	}
	return false
}

// unit gives the unit of a phrase. What calc/unit does not know is left out, from the end.
func (p phrase) unit() unit.Unit {
	below := ""
	for _, s := range p.below {
		below += "/" + s.name
	}
	head := p.head.name
	tries := []string{head + below, head}
	if p.substance != "" {
		tries = slices.Insert(tries, 0, head+" "+p.substance+below)
		if p.head == dollar {
			tries[0] = head + below + " " + p.substance
		}
		if p.head == milligram {
			tries = slices.Insert(tries, 0, head+below+" "+p.substance)
		}
	}
	for _, text := range tries {
		if u, err := unit.Parse(text); err == nil {
			return u
		}
	}
	return unit.Unit{}
}
