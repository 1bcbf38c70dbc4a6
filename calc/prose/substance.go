package prose

import (
	"slices"
	"strings"
)

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
	switch {
	case t.kind == word && slices.Contains(l.of, t.lower()):
		at = t.to
		for t = next(text, at); slices.Contains(l.pointing, t.lower()); t = next(text, at) {
			at = t.to
		}
	case (isShare(mass) || mass == "mg" && len(p.below) > 0) && (t.lower() == "as" || t.lower() == "como"):
		at = t.to // a laboratory's "12 ppm as NO3"; "48 lb as urea" is nitrogen all the same
	}
	if to := material(text, next(text, at)); to > 0 {
		p.substance, p.to = "product", to
		return true
	}
	words, to := match(text, at, l.substance)
	if words == "" {
		return false
	}
	p.substance, p.to = l.substance[words], to
	return true
}

// InParentheses gives the substance or the material that a text has in parentheses at its start, as if there were none
// of them around it: "12 ppm" and " (as NO3)". It is "" when something else stands there.
func InParentheses(text string) string {
	inside, found := strings.CutPrefix(text, " (")
	words, _, closed := strings.Cut(inside, ")")
	words = strings.TrimPrefix(strings.TrimPrefix(words, "as "), "como ")
	if !found || !closed || !isSubstance(words) {
		return ""
	}
	return " " + words
}

// isSubstance says whether a text is the name of a substance or a material, in either language.
func isSubstance(text string) bool {
	for _, l := range []*Language{English, Spanish} {
		if words, to := match(text, 0, l.substance); words != "" && to == len(text) {
			return true
		}
	}
	return text != "" && material(text, next(text, 0)) == len(text)
}

// material reads the name of a material by its grade, 46-0-0 or UAN-32 or UAN32, that begins with a token. It gives the
// end of the name, 0 when there is none.
func material(text string, t token) int {
	if t.kind == digits && len(t.text) <= 2 {
		return grade(text, t.from)
	}
	if t.kind != word || strings.IndexByte("ACU", t.text[0]) < 0 {
		return 0
	}
	switch name := strings.TrimRight(t.text, "0123456789"); name {
	case "UAN", "CAN", "AN", "UN":
		if to := pastWord(text, t.to); to > t.to || len(name) == 3 || name != t.text {
			return to
		}
	}
	return 0
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
