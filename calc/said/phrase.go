package said

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
}

// reach says how far a phrase goes on after a place: there, what stands below the line is taken only when it is an
// area or a tree, so that "2 lb/ac" before "per ppm" stays what it is.
type reach struct {
	from int
	wide bool
}

func (r reach) takes(symbol string, at int) bool {
	return r.wide || at < r.from || symbol == "ac" || symbol == "ha" || symbol == "tree"
}

// phrase reads a unit at a place.
func (l *Language) phrase(text string, at int, money bool, r reach) (phrase, bool) {
	p := phrase{head: "$", to: at}
	if !money {
		var ok bool
		if p, ok = l.head(text, at); !ok {
			return p, false
		}
	}
	for l.substanceOf(text, &p) || l.belowLine(text, &p, r) {
	}
	if len(p.below) == 0 {
		t := next(text, p.to)
		if needsBelow(p.head) || slices.Contains(l.things, strings.TrimSuffix(t.lower(), "s")) {
			return p, false
		}
	}
	return p, true
}

// head reads the unit above the line.
func (l *Language) head(text string, at int) (phrase, bool) {
	if t := next(text, at); slices.Contains(l.between2, t.lower()) {
		at = t.to
	} else if t.isDash() && !t.spaced && !next(text, t.to).spaced {
		at = t.to
	}
	if t := next(text, at); t.text == "$" {
		return phrase{head: "$", to: t.to}, true
	}
	words, to := match(text, at, l.units)
	p := phrase{head: l.units[words], to: to}
	switch {
	case words == "" || words == "in" && l == English && !isInches(text, to):
		return p, false
	case len(p.head) == 1 && p.head != "%" && p.head != "$" && tailed(text, to):
		return p, false
	}
	if p.head == "cent" {
		p.head, p.cents = "$", true
	}
	return p, true
}

// tailed says whether a letter that may be a unit is the start of something else: "4 L-shaped", "3 m's".
func tailed(text string, to int) bool {
	t := next(text, to)
	return !t.spaced && (t.isDash() || t.text == "'" || t.text == "’")
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

func isMass(symbol string) bool {
	return slices.Contains([]string{"lb", "oz", "ton", "kg", "g", "mg", "t", "$"}, symbol)
}

func isShare(symbol string) bool {
	return symbol == "%" || symbol == "ppm" || symbol == "ppb"
}

// substanceOf reads what the unit is of: "lb N", "pounds of actual nitrogen".
func (l *Language) substanceOf(text string, p *phrase) bool {
	mass := p.head
	if p.head == "$" && len(p.below) > 0 {
		mass = p.below[len(p.below)-1] // a price of a pound of nitrogen
	}
	if p.substance != "" || mass == "$" || !isMass(mass) && !isShare(mass) {
		return false
	}
	t := next(text, p.to)
	at := p.to
	if of := t.kind == word && slices.Contains(l.of, t.lower()); of {
		at = t.to
		if t = next(text, at); slices.Contains(l.pointing, t.lower()) {
			at = t.to
		}
		if to := grade(text, at); to > at {
			p.substance, p.to = "product", to
			return true
		}
	}
	words, to := match(text, at, l.substance)
	if words == "" {
		return false
	}
	p.substance, p.to = l.substance[words], to
	if words == "UAN" || words == "CAN" {
		p.to = pastWord(text, to) // UAN-32
	}
	return true
}

// grade reads the name of a material by its numbers, 46-0-0, and gives its end.
func grade(text string, at int) int {
	parts := 0
	for t := next(text, at); t.kind == digits; t = next(text, t.to) {
		parts++
		at = t.to
		if t = next(text, at); !t.isDash() || t.spaced {
			break
		}
	}
	if parts < 3 {
		return 0
	}
	return at
}

// belowLine reads "/ac", "per acre", "a tree".
func (l *Language) belowLine(text string, p *phrase, r reach) bool {
	t := next(text, p.to)
	at, any := t.to, true
	if t.text != "/" {
		words, to := matchList(text, p.to, l.per)
		if words == "" {
			return false
		}
		at, any = to, words == l.per[0]
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
	switch {
	case words == "" || symbol == "cent" || !r.takes(symbol, t.from):
		return false
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

func isTime(symbol string) bool {
	return slices.Contains([]string{"h", "min", "s", "day", "week"}, symbol)
}

// matchList finds the longest entry of a list of words at a place.
func matchList(text string, at int, list []string) (found string, to int) {
	for _, entry := range list {
		place := at
		fits := true
		for _, w := range strings.Fields(entry) {
			t := next(text, place)
			if fits = t.kind == word && t.lower() == w; !fits {
				break
			}
			place = t.to
		}
		if fits && len(entry) > len(found) {
			found, to = entry, place
		}
	}
	return found, to
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
