package prose

import (
	"slices"
	"strings"

	"acreleaf/calc/unit"
)

// A Count is a number of things or of time, which is no amount of the trade alone: "5 feeds", "14 nights", "two
// hours". Only a page that works one out can say whether it is right.
type Count struct {
	Start, End int // bytes of the text, from the number to the end of the word after it
	Number     int // the end of the number
	Value      float64
	Step       float64
	Unit       string // "h", "day", "week", "min", "month", or of a measure; "" for things
	Noun       string // the word after the number, in small letters; "" for none
	After      string // the word after that one, in small letters
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
	if !l.counting[strings.ToLower(text[c.Start:c.Number])] {
		return false
	}
	last := lastTokens(text[:c.Start])[3]
	u := l.units[last.lower()]
	if last.kind == digits || l.often[last.lower()] || u != nil && !u.is(rateOnly) {
		return true
	}
	if len(before) == 0 {
		return false
	}
	between := text[before[len(before)-1].Number:c.Start]
	const enough = 3 // words between a count and what it is counted by
	words := strings.Fields(strings.ToLower(between))
	return len(words) <= enough && !strings.ContainsAny(between, ".,;:!?") &&
		!slices.ContainsFunc(words, func(w string) bool { return l.lasting[w] })
}

// IsOne says whether it is one by a word, which may say no more than "a" does.
func (c Count) IsOne() bool { return c.one }

// counts finds the counts of a text, and one of a thing too.
func (l *Language) counts(text string) []Count {
	var found []Count
	for t := next(text, 0); t.kind != end; t = next(text, t.to) {
		if t.kind == sign || t.kind == part || !l.isNumber(t) {
			continue
		}
		if !l.counting[t.lower()] && l.goesOnFrom(text, t) {
			continue
		}
		n, ok := l.number(text, t.from)
		if !ok || isChain(text, t.from, n) {
			continue
		}
		t.to = n.to
		if c, is := l.countOf(text, t, n); is {
			found = append(found, c)
		}
	}
	return found
}

// countOf reads what is counted by a number.
func (l *Language) countOf(text string, t token, n number) (Count, bool) {
	noun := dashed(text, n.to)
	if !noun.spaced && noun.from == n.to && noun.kind != end && noun.kind != sign || noun.text == percent.name {
		return Count{}, false
	}
	c := Count{Start: t.from, Number: n.to, End: n.to, Value: n.Value, Step: n.Step, one: n.one, digits: n.Digits}
	if noun.kind == word {
		c.End, c.Noun = noun.to, noun.lower()
		if s := l.timeOf(text, noun.from); s != nil {
			c.Unit = s.name
		}
		if after := next(text, noun.to); after.kind == word {
			c.After = after.lower()
		}
		l.measureOf(text, noun.from, &c)
	}
	return c, true
}

// measureOf reads a unit of a measure after a count, if there is one.
func (l *Language) measureOf(text string, at int, c *Count) {
	if words, s, to := l.measures.match(text, at); words != "" {
		c.Unit, c.End, c.Measure = s.name, to, true
	}
	for _, name := range conductivities {
		if strings.HasPrefix(text[at:], name) && !isLetterAt(text, at+len(name)) {
			c.Unit, c.End, c.Measure = name, at+len(name), true
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
	return l.named[strings.ToLower(trimmed[strings.LastIndexAny(trimmed, " \n(")+1:])]
}

// timeOf gives the unit of a time at a place, nil for none.
func (l *Language) timeOf(text string, at int) *symbol {
	if _, s, _ := l.bases.match(text, at); s.is(timeUnit) {
		return s
	}
	if _, s, _ := l.longer.match(text, at); s != nil {
		return s
	}
	t := next(text, at)
	if one, plural := strings.CutSuffix(t.lower(), l.lexicon.plural); t.kind == word && plural {
		if s := l.bases[one]; s.is(timeUnit) {
			return s
		}
	}
	return nil
}
