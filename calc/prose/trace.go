package prose

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"acreleaf/calc/unit"
)

// Trace tells how each number of a text is read, or why it is let go, in the order of the text: "48 pounds of nitrogen
// an acre: read as 48 lb N/ac", "46-0-0: let go (grade): numbers joined by dashes are the grade of a material".
func Trace(text string, l *Language) []string {
	var steps []step
	amounts := l.scan(text, func(from, to int, why reason) {
		if l.isTold(text, from, to, why) {
			steps = append(steps, l.letGo(text, from, to, why))
		}
	})
	for _, a := range amounts {
		read := unit.Range{Low: a.Low, High: a.High, Unit: a.Unit}
		steps = append(steps, step{a.Start, a.End, fmt.Sprintf("read as %s", read), true})
	}
	slices.SortStableFunc(steps, func(a, b step) int { return cmp.Compare(a.from, b.from) })
	var lines []string
	end := 0
	for _, s := range steps {
		if s.read || s.from >= end { // the others are parts of the one before: the year of a date
			lines = append(lines, oneLine(text[s.from:s.to])+": "+s.what)
			end = s.to
		}
	}
	return lines
}

// A step is a part of a text, and what is made of it.
type step struct {
	from, to int
	what     string
	read     bool // it is an amount
}

// letGo is the step of a number that is let go, with the words that say why.
func (l *Language) letGo(text string, from, to int, why reason) step {
	number := next(text, from)
	why = l.refine(text, from, to, why)
	switch isWhole := to > number.to; {
	case why == asDate && !isWhole:
		d := l.Dates(text)[l.dateAt(text, from)]
		from, to = d.Start, d.End
	case why == asName && !isWhole:
		if before := lastTokens(text[:from])[3]; before.kind == word {
			from = strings.LastIndex(text[:from], before.text)
		}
	case !isWhole:
		if after := dashed(text, to); isTimes(after) {
			to++
		} else if after.kind == word {
			to = after.to
		}
	}
	return step{from, to, fmt.Sprintf("let go (%s): %s", reasons[why].name, reasons[why].sentence), false}
}

// isTold says whether what is let go is a number. A unit without one is none, though an amount may begin with it, and
// an article is none when no unit follows.
func (l *Language) isTold(text string, from, to int, why reason) bool {
	if why == asName || why == asAddress {
		return strings.ContainsAny(text[from:to], figures)
	}
	t := next(text, from)
	if t.in(l.ones) {
		return why != asCount
	}
	return t.kind != word || l.isNumber(t) || l.fractions[t.lower()] > 0
}

// refine tells what a number is that has no unit, or of which no number can be read.
func (l *Language) refine(text string, from, to int, why reason) reason {
	t := next(text, from)
	switch {
	case t.kind == digits && (why == asOrdinal || why == asCount && to > t.to && text[t.to] != times):
		return chainReason(text, from)
	case why != asCount:
		return why
	case l.dateAt(text, from) >= 0:
		return asDate
	case l.isNamed(lastTokens(text[:from])[3], t):
		return asName
	}
	n, ok := l.number(text, from)
	switch {
	case !ok && t.kind == digits:
		return asCode
	case !ok || l.fractions[t.lower()] > 0:
		return asOrdinal
	}
	return l.countReason(text, from, n)
}

// countReason tells what a number is counted of, that is followed by no unit of the trade.
func (l *Language) countReason(text string, from int, n number) reason {
	after := dashed(text, n.to).from
	if _, s, _ := l.measures.match(text, after); s != nil {
		return asMeasure
	}
	switch high, joins := l.endOfRange(text, from, n); {
	case joins && high.Value < n.Value:
		return asBroken
	case l.isShared(text, n.to):
		return asShared
	case l.timeOf(text, after) != nil:
		return asTime
	case isYear(n):
		return asYear
	}
	return asCount
}

// dateAt gives the place of a date in the list of those of a text, -1 where there is none.
func (l *Language) dateAt(text string, at int) int {
	return slices.IndexFunc(l.Dates(text), func(d Date) bool { return d.Start <= at && at < d.End })
}

// isShared says whether a number is joined to the next one, with whose unit it is told.
func (l *Language) isShared(text string, to int) bool {
	joint := next(text, to)
	if n, leads := l.NumberBefore(text[:joint.to]); leads && n.To == to {
		_, follows := l.number(text, joint.to)
		return follows
	}
	return isTimes(joint) || l.isAnd(joint) && l.isNumber(next(text, joint.to))
}

// isTimes says whether a token is the times of a spacing with the number after it: 12x18.
func isTimes(t token) bool {
	return t.kind == word && len(t.text) > 1 && t.text[0] == times && isDigit(t.text[1])
}

// chainReason tells what digits are that hang together: a grade, a day, a time of day, or some other code.
func chainReason(text string, at int) reason {
	whole := text[at:pastNumber(text, at)]
	if _, is := isoDate(text, next(text, at)); is {
		return asDate
	}
	if strings.Contains(whole, ":") {
		return asClock
	}
	const parts, longest = 3, 2 // of a grade, and of a day without its year
	if days := strings.Split(whole, "/"); len(days) == parts && len(days[0]) <= longest && len(days[1]) <= longest {
		return asDate
	}
	grades := strings.Split(whole, "-")
	if len(grades) >= parts && !slices.ContainsFunc(grades[:parts], func(g string) bool { return len(g) > longest }) {
		return asGrade
	}
	return asCode
}

// oneLine writes a text without its line ends.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }
