package prose

import (
	"slices"
	"strings"
)

// UnitIn finds the unit in the head of a table's column: "Rate (lb/ac)", "Nitrogen, lb N/ac", "Pounds an acre". It
// gives the unit as it is written there, "" for none.
func (l *Language) UnitIn(head string) string {
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
	if u := l.unitAt(head); len(u) > len("in") || slices.Contains([]string{"%", "lb", "oz", "ft"}, u) {
		return u
	}
	return "" // a column of times in and out, or of the letters of bins
}

// unitAt reads the unit that a text begins with.
func (l *Language) unitAt(text string) string {
	text = strings.TrimSpace(text)
	const two = "2 "
	if a, ok := l.amount(two+text, 0, reach{len(two + text), true}); ok && a.Start == 0 && a.End > len(two) {
		return text[:a.End-len(two)]
	}
	return ""
}
