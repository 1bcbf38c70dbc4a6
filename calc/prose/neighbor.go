package prose

import (
	"strings"
	"unicode/utf8"

	"acreleaf/calc/unit"
)

// A Neighbor is a number that takes its unit from the figure before or after it.
type Neighbor struct {
	From, To int
	spacing  bool // it does so only when the figure is a length: "18 by"
}

// SharesUnit says whether the number is one of a figure's unit.
func (n Neighbor) SharesUnit(u unit.Unit) bool {
	return u.String() != "" && (!n.spacing || u.Dimension() == ofFoot.Dimension())
}

// IsSpacing says whether the number is the first of a spacing: the 18 of "18 by 22 ft".
func (n Neighbor) IsSpacing() bool { return n.spacing }

// NumberBefore finds the number at the end of a text that goes on in the figure after it: "40 to", "40–", "18 by",
// "between 40 and".
func (l *Language) NumberBefore(text string) (Neighbor, bool) {
	if !l.endsOpen(text) {
		return Neighbor{}, false
	}
	last := lastTokens(text)
	joint, n, before := last[3], last[2], last[1]
	if n.kind != digits && (n.kind != word || l.numbers[n.lower()] < 2) || l.isNamed(before, n) {
		return Neighbor{}, false
	}
	and := joint.lower() == l.lexicon.and
	if and && before.lower() != l.lexicon.between || joint.isDash() && joint.spaced {
		return Neighbor{}, false
	}
	read, ok := l.number(text, n.from)
	spacing := !joint.isDash() && !and && !l.to[joint.lower()]
	return Neighbor{n.from, n.to, spacing}, ok && !isYear(read) && n.to == read.to
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
	return w == "×" || l.to[w] || l.joining[w] || w == l.lexicon.and && w != ""
}

// NumberAfter finds the number at the start of a text that takes its unit from the figure before it: "to 50", "–50".
func (l *Language) NumberAfter(text string) (Neighbor, bool) {
	joint := next(text, 0)
	if joint.isDash() && joint.spaced || !joint.isDash() && !l.to[joint.text] {
		return Neighbor{}, false
	}
	n := next(text, joint.to)
	if n.kind != digits {
		return Neighbor{}, false
	}
	after := next(text, n.to)
	ends := after.kind == end || after.kind == sign && after.text != "/" && !after.isDash() ||
		after.kind == word && l.per[after.lower()]&(perAny|perOne) != 0
	read, fits := l.number(text, n.from)
	return Neighbor{From: n.from, To: n.to}, ends && fits && !isYear(read)
}

var ofFoot = unit.MustParse(foot.name)

// isNamed says whether a number is the name of a thing or a part of something longer: "row 12", "May 4", "6:30".
func (l *Language) isNamed(before, n token) bool {
	part := before.kind == sign && !n.spaced && strings.Contains(":/.-–#", before.text)
	return part || l.named[before.lower()]
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
