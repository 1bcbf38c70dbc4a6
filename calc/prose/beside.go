package prose

import (
	"slices"
	"strings"
	"unicode/utf8"

	"acreleaf/calc/unit"
)

// A Beside is a number that takes its unit from the figure before or behind it.
type Beside struct {
	From, To int
	spacing  bool // it does so only when the figure is a length: "18 by"
}

// TakesItsUnit says whether the number is one of a figure's unit.
func (b Beside) TakesItsUnit(from unit.Unit) bool {
	return from.String() != "" && (!b.spacing || from.Dimension() == foot.Dimension())
}

// IsSpacing says whether the number is the first of a spacing: the 18 of "18 by 22 ft".
func (b Beside) IsSpacing() bool { return b.spacing }

// LeadsOn finds the number at the end of a text that goes on in the figure behind it: "40 to", "40–", "18 by",
// "between 40 and".
func (l *Language) LeadsOn(text string) (Beside, bool) {
	if !l.endsOpen(text) {
		return Beside{}, false
	}
	last := lastTokens(text)
	joint, n, before := last[3], last[2], last[1]
	if n.kind != digits && (n.kind != word || l.numbers[n.lower()] < 2) || l.isNamed(before, n) {
		return Beside{}, false
	}
	if joint.lower() == l.and && before.lower() != l.between || joint.isDash() && joint.spaced {
		return Beside{}, false
	}
	read, ok := l.number(text, n.from)
	spacing := !joint.isDash() && joint.lower() != l.and && !slices.Contains(l.to, joint.lower())
	return Beside{n.from, n.to, spacing}, ok && !isYear(read) && n.to == read.to
}

// endsOpen says whether the last word of a text joins a number to what follows. Most texts are passed over with it.
func (l *Language) endsOpen(text string) bool {
	trimmed := strings.TrimRight(text, " \n\u00A0")
	if trimmed == "" {
		return false
	}
	r, _ := utf8.DecodeLastRuneInString(trimmed)
	if strings.ContainsRune(dashes, r) {
		return len(trimmed) == len(text)
	}
	w := strings.ToLower(trimmed[strings.LastIndexAny(trimmed, " \n")+1:])
	return w == "×" || slices.Contains(l.to, w) || slices.Contains(l.joining, w) || w == l.and && w != ""
}

// TrailsOn finds the number at the start of a text that takes its unit from the figure before it: "to 50", "–50".
func (l *Language) TrailsOn(text string) (Beside, bool) {
	joint := next(text, 0)
	if joint.isDash() && joint.spaced || !joint.isDash() && !slices.Contains(l.to, joint.text) {
		return Beside{}, false
	}
	n := next(text, joint.to)
	if n.kind != digits {
		return Beside{}, false
	}
	after := next(text, n.to)
	ends := after.kind == end || after.kind == sign && after.text != "/" && !after.isDash() ||
		after.kind == word && slices.Contains(l.per, after.lower())
	read, fits := l.number(text, n.from)
	return Beside{From: n.from, To: n.to}, ends && fits && !isYear(read)
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
