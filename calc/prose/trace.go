package prose

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"acreleaf/calc/unit"
)

// Trace tells how each number of a text is read, or why it is let go, in the order of the text: "48 lb/ac: read as 48
// lb an acre", "46-0-0: let go (grade): numbers joined by dashes are the grade of a material".
func Trace(text string, l *Language) []string {
	type step struct {
		at   int
		line string
	}
	var steps []step
	amounts := l.scan(text, func(from, to int, why reason) {
		if !l.isTold(text, from, to, why) {
			return
		}
		why = l.refine(text, from, to, why)
		line := fmt.Sprintf("%s: let go (%s): %s", l.quote(text, from, to, why), reasons[why].name, reasons[why].sentence)
		steps = append(steps, step{from, line})
	})
	for _, a := range amounts {
		numbers := unit.Range{Low: a.Low, High: a.High, Unit: a.Unit}.Numbers()
		read := a.Unit.Spoken(numbers, english.code)
		steps = append(steps, step{a.Start, fmt.Sprintf("%s: read as %s", oneLine(text[a.Start:a.End]), read)})
	}
	slices.SortStableFunc(steps, func(a, b step) int { return cmp.Compare(a.at, b.at) })
	lines := make([]string, len(steps))
	for i, s := range steps {
		lines[i] = s.line
	}
	return lines
}

// isTold says whether what is let go is a number. A unit without one is none, though an amount may begin with it.
func (l *Language) isTold(text string, from, to int, why reason) bool {
	if why == asName || why == asAddress {
		return strings.ContainsAny(text[from:to], figures)
	}
	t := next(text, from)
	return t.kind != word || l.isNumber(t) || l.fractions[t.lower()] > 0
}

// refine tells what a number is that has no unit, or of which no number can be read.
func (l *Language) refine(text string, from, to int, why reason) reason {
	t := next(text, from)
	if t.kind == digits && (why == asOrdinal || why == asCount && to > t.to && text[t.to] != times) {
		return chainReason(text, from)
	}
	if why != asCount {
		return why
	}
	if slices.ContainsFunc(l.Dates(text), func(d Date) bool { return d.Start <= from && from < d.End }) {
		return asDate
	}
	if before := lastTokens(text[:from])[3]; l.isNamed(before, t) {
		return asName
	}
	n, ok := l.number(text, from)
	if !ok {
		return asOrdinal
	}
	if _, s, _ := l.measures.match(text, dashed(text, n.to).from); s != nil {
		return asMeasure
	}
	switch high, joins := l.endOfRange(text, from, n); {
	case joins && high.Value < n.Value:
		return asBroken
	case l.isShared(text, n.to):
		return asShared
	case l.timeOf(text, dashed(text, n.to).from) != nil:
		return asTime
	case isYear(n):
		return asYear
	}
	return asCount
}

// isShared says whether a number is joined to the next one, with whose unit it is told.
func (l *Language) isShared(text string, to int) bool {
	joint := next(text, to)
	if n, leads := l.NumberBefore(text[:joint.to]); leads && n.To == to {
		_, follows := l.number(text, joint.to)
		return follows
	}
	if joint.kind == word && joint.text[0] == times && len(joint.text) > 1 {
		return isDigit(joint.text[1])
	}
	return l.isAnd(joint) && l.isNumber(next(text, joint.to))
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

// quote gives what is let go with the word that says why: the one before a name, the one after another number.
func (l *Language) quote(text string, from, to int, why reason) string {
	switch t := next(text, to); {
	case why == asName && !strings.ContainsAny(text[from:from+1], figures):
	case why == asName || why == asDate && t.kind != word:
		if before := lastTokens(text[:from])[3]; before.kind == word {
			from = strings.LastIndex(text[:from], before.text)
		}
	case why == asGrade || why == asCode || why == asClock || why == asAddress:
	default:
		if t = dashed(text, to); t.kind == word {
			to = t.to
		}
	}
	return oneLine(text[from:to])
}

// oneLine writes a text without its line ends.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }
