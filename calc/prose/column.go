package prose

import (
	"strings"

	"acreleaf/calc/unit"
)

// ColumnUnit finds the unit in the head of a table's column: "Rate (lb/ac)", "Nitrogen, lb N/ac", "Pounds an acre". It
// gives the unit as it is written there, "" for none.
func (l *Language) ColumnUnit(head string) string {
	if _, inside, found := strings.Cut(head, "("); found {
		if u := l.unitAt(inside); u != "" {
			return u
		}
	}
	if comma := strings.LastIndexByte(head, ','); comma >= 0 {
		if u := l.unitAt(head[comma+1:]); u != "" {
			return u
		}
	}
	const short = 2
	if u := l.unitAt(head); len(u) > short || symbols[u].is(columnHead) {
		return u
	}
	return "" // a column of times in and out, or of the letters of bins
}

// unitAt reads the unit that a text begins with.
func (l *Language) unitAt(text string) string {
	text = strings.TrimSpace(text)
	if t := next(text, 0); t.kind == word && !l.nexts.has(t.text) {
		return "" // most heads begin with no unit
	}
	const two = "2 "
	a, why := l.amount(two+text, 0, reach{len(two + text), true})
	if why != taken || a.Start != 0 || a.End <= len(two) {
		return ""
	}
	return text[:a.End-len(two)]
}

// IsSize says whether a unit is a length, an area, a volume or a weight alone, of nothing: what a size is told in.
func IsSize(u unit.Unit) bool { return symbols[u.String()].is(sizeUnit) }
