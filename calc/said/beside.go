package said

import (
	"slices"
	"strings"

	"acreleaf/calc/unit"
)

// LeadsOn finds the number at the end of a text that takes its unit from the figure behind it: "40 to", "40–", "18 by",
// "between 40 and".
func (l *Language) LeadsOn(text string, wanted unit.Unit) (from, to int, ok bool) {
	last := lastTokens(text)
	joint, n, before := last[3], last[2], last[1]
	if n.kind != digits && (n.kind != word || l.numbers[n.lower()] < 2) {
		return 0, 0, false
	}
	switch {
	case joint.isDash():
		ok = !joint.spaced && joint.to == len(text)
	case slices.Contains(l.joining, joint.lower()) || joint.text == "×":
		ok = wanted.Dimension() == foot.Dimension() || slices.Contains(l.to, joint.lower())
	case joint.lower() == l.and && l.and != "":
		ok = before.lower() == l.between
	default:
		ok = slices.Contains(l.to, joint.lower())
	}
	read, fits := l.number(text, n.from)
	return n.from, n.to, ok && fits && !isYear(read) && n.to == read.to && !l.isNamed(before, n)
}

// TrailsOn finds the number at the start of a text that takes its unit from the figure before it: "to 50", "–50".
func (l *Language) TrailsOn(text string) (from, to int, ok bool) {
	joint := next(text, 0)
	if joint.isDash() && joint.spaced || !joint.isDash() && !slices.Contains(l.to, joint.lower()) {
		return 0, 0, false
	}
	n := next(text, joint.to)
	if n.kind != digits {
		return 0, 0, false
	}
	after := next(text, n.to)
	ends := after.kind == end || after.kind == sign && after.text != "/" && !after.isDash() ||
		after.kind == word && slices.Contains(l.per, after.lower())
	read, fits := l.number(text, n.from)
	return n.from, n.to, ends && fits && !isYear(read)
}

var foot = unit.MustParse("ft")

// isNamed says whether a number is the name of a thing or a part of something longer: "row 12", "May 4", "6:30".
func (l *Language) isNamed(before, n token) bool {
	part := before.kind == sign && !n.spaced && strings.Contains(":/.-–#", before.text)
	return part || slices.Contains(l.named, before.lower())
}

// lastTokens gives the last four tokens of a text.
func lastTokens(text string) (last [4]token) {
	const enough = 60
	at := max(0, len(text)-enough)
	if space := strings.IndexByte(text[at:], ' '); at > 0 {
		at += max(space, 0)
	}
	for t := next(text, at); t.kind != end; t = next(text, t.to) {
		copy(last[:], last[1:])
		last[3] = t
	}
	return last
}
