package prose

import (
	"slices"
	"strings"

	"acreleaf/calc/unit"
)

// A Count is a number of things or of time, which is no amount of the trade by itself: "5 feeds", "14 nights", "two
// hours". Only a page that works one out can say whether it is right.
type Count struct {
	Start, End int // bytes of the text, from the number to the end of the word behind it
	Number     int // the end of the number
	Value      float64
	Step       float64
	Unit       string // "h", "day", "week", "min", "month", or of a measure; "" for things
	Noun       string // the word behind the number, in small letters; "" for none
	After      string // the word behind that one, in small letters
	Measure    bool   // the unit is none of time: horsepower, trees
	one        bool
	digits     bool
}

// Amount is the count as an amount, of time or of a plain number.
func (c Count) Amount() Amount {
	u, _ := unit.Parse(c.Unit)
	return Amount{Start: c.Start, End: c.End, Low: c.Value, High: c.Value, LowStep: c.Step, HighStep: c.Step, Unit: u,
		Digits: c.digits}
}

// Counts finds the counts of a text, but for one of a thing: "one feed" is as often the measure of others.
func (l *Language) Counts(text string) []Count {
	return slices.DeleteFunc(l.counts(text), func(c Count) bool { return c.one })
}

// Times finds the counts of time of a text, and one of it too where it is no rate: "a month before" and "un mes antes",
// not "twice a week".
func (l *Language) Times(text string) []Count {
	all := l.counts(text)
	var times []Count
	for i, c := range all {
		if c.Unit != "" && !c.Measure && !l.isBelow(text, all[:i], c) {
			times = append(times, c)
		}
	}
	return times
}

// isBelow says whether "a month" tells what something is counted by: "2 gallons a week", "two small feeds a month",
// "once a day". Spanish has other words for that.
func (l *Language) isBelow(text string, before []Count, c Count) bool {
	if !l.indefinite[strings.ToLower(text[c.Start:c.Number])] {
		return false
	}
	last := lastTokens(text[:c.Start])[3]
	unit := l.units[last.lower()]
	if last.kind == digits || slices.Contains(l.often, last.lower()) || unit != "" && !needsBelow(unit) {
		return true
	}
	if len(before) == 0 {
		return false
	}
	between := text[before[len(before)-1].Number:c.Start]
	const enough = 3 // words between a count and what it is counted by
	words := strings.Fields(strings.ToLower(between))
	return len(words) <= enough && !strings.ContainsAny(between, ".,;:!?") &&
		!slices.ContainsFunc(words, func(w string) bool { return slices.Contains(l.lasting, w) })
}

// One says whether it is one by a word, which may say no more than "a" does.
func (c Count) One() bool { return c.one }

// counts finds the counts of a text, and one of a thing too.
func (l *Language) counts(text string) []Count {
	var found []Count
	for at := 0; at < len(text); {
		t := next(text, at)
		if t.kind == end {
			break
		}
		at = t.to
		if t.kind != digits && (t.kind != word || l.numbers[t.lower()] == 0) ||
			!l.indefinite[t.lower()] && l.goesOnFrom(text, t) {
			continue
		}
		n, ok := l.number(text, t.from)
		if !ok || isChain(text, t.from, n) {
			continue
		}
		at = n.to
		noun := next(text, n.to)
		if noun.isDash() && !noun.spaced {
			noun = next(text, noun.to)
		}
		if !noun.spaced && noun.from == n.to && noun.kind != end && noun.kind != sign || noun.text == "%" {
			continue
		}
		c := Count{Start: t.from, Number: n.to, End: n.to, Value: n.Value, Step: n.Step, one: n.one, digits: n.Digits}
		if noun.kind == word {
			c.End, c.Noun, c.Unit = noun.to, noun.lower(), l.timeOf(text, noun.from)
			if after := next(text, noun.to); after.kind == word {
				c.After = after.lower()
			}
			l.measureOf(text, noun.from, &c)
		}
		found = append(found, c)
	}
	return found
}

// measureOf reads a unit of a measure behind a count, if there is one.
func (l *Language) measureOf(text string, at int, c *Count) {
	if words, to := match(text, at, l.measures); words != "" {
		c.Unit, c.End, c.Measure = l.measures[words], to, true
	}
	for _, symbol := range salts {
		if strings.HasPrefix(text[at:], symbol) && !isLetterAt(text, at+len(symbol)) {
			c.Unit, c.End, c.Measure = symbol, at+len(symbol), true
		}
	}
}

// goesOnFrom says whether a number depends on what comes before it: UAN-32, 2.5-3, row 12, April 20.
func (l *Language) goesOnFrom(text string, t token) bool {
	const enough = 40
	before := text[max(0, t.from-enough):t.from]
	trimmed := strings.TrimRight(before, " \n\u00A0")
	if trimmed == before && before != "" && strings.IndexByte(" \n(", before[len(before)-1]) < 0 {
		return true
	}
	word := strings.ToLower(trimmed[strings.LastIndexAny(trimmed, " \n(")+1:])
	return l.isNamed(token{text: word}, token{})
}

// timeOf gives the symbol of a unit of time at a place, "" for none.
func (l *Language) timeOf(text string, at int) string {
	if words, _ := match(text, at, l.below); isTime(l.below[words]) {
		return l.below[words]
	}
	if words, _ := match(text, at, l.longer); words != "" {
		return l.longer[words]
	}
	t := next(text, at)
	if short, plural := strings.CutSuffix(t.lower(), "s"); t.kind == word && plural && isTime(l.below[short]) {
		return l.below[short]
	}
	return ""
}

// Names says whether a word is a number, a unit or a form of a nutrient, so that it says nothing of what an amount is
// of. The name of a material does.
func (l *Language) Names(word string) bool {
	for _, table := range []map[string]string{l.units, l.below, l.perWords} {
		if table[word] != "" {
			return true
		}
	}
	switch l.substance[word] {
	case "", "product", "lime", "kernels":
		return l.numbers[word] > 0 || l.fractions[word] > 0
	}
	return true
}
