package prose

import "strings"

// substanceOf reads what the unit is of: "lb N", "pounds of actual nitrogen".
func (l *Language) substanceOf(text string, p *phrase) bool {
	of := p.head
	if of == dollar && len(p.below) > 0 {
		of = p.below[len(p.below)-1] // a price of a pound of nitrogen
	}
	if p.substance != "" || of == dollar || !of.is(massUnit|nominalUnit|shareUnit) {
		return false
	}
	t := next(text, p.to)
	at := p.to
	switch {
	case t.in(l.of):
		at = t.to
		for t = next(text, at); l.pointing[t.lower()]; t = next(text, at) {
			at = t.to
		}
	case (of.is(shareUnit) || of == milligram && len(p.below) > 0) && l.as[t.lower()]:
		at = t.to // a laboratory's "12 ppm as NO3"; "48 lb as urea" is nitrogen all the same
	}
	if to := material(text, next(text, at)); to > 0 {
		p.substance, p.to = product, to
		return true
	}
	words, s, to := l.substances.match(text, at)
	if words == "" {
		return false
	}
	p.substance, p.to = s, to
	return true
}

// SubstanceInParentheses gives the substance or the material that a text has in parentheses at its start, as if there
// were none of them around it: "12 ppm" and " (as NO3)". It is "" when something else is there.
func (l *Language) SubstanceInParentheses(text string) string {
	inside, found := strings.CutPrefix(text, " (")
	inside, _, closed := strings.Cut(inside, ")")
	if !found || !closed {
		return ""
	}
	for other := range l.first() {
		if words := other.pastAs(inside); other.isSubstance(words) {
			return " " + words
		}
	}
	return ""
}

// pastAs leaves out the word before a form: "as NO3".
func (l *Language) pastAs(text string) string {
	if t := next(text, 0); l.as[t.text] && t.from == 0 {
		return strings.TrimPrefix(text[t.to:], " ")
	}
	return text
}

// isSubstance says whether a text is the name of a substance or a material.
func (l *Language) isSubstance(text string) bool {
	if words, _, to := l.substances.match(text, 0); words != "" && to == len(text) {
		return true
	}
	return text != "" && material(text, next(text, 0)) == len(text)
}

// material reads the name of a material by its grade, 46-0-0 or UAN-32 or UAN32, that begins with a token. It gives the
// end of the name, 0 when there is none.
func material(text string, t token) int {
	if t.kind == digits && len(t.text) <= 2 {
		return grade(text, t.from)
	}
	if t.kind != word || strings.IndexByte(materialInitials, t.text[0]) < 0 {
		return 0
	}
	name := strings.TrimRight(t.text, figures)
	alone, known := materials[name]
	if to := pastWord(text, t.to); known && (to > t.to || alone || name != t.text) {
		return to
	}
	return 0
}

const figures = "0123456789"

// grade reads the name of a material by its numbers, 46-0-0, and gives its end.
func grade(text string, at int) int {
	parts := 0
	for t := next(text, at); t.kind == digits; t = next(text, t.to) {
		parts++
		at = t.to
		if t = next(text, at); !t.hangs() {
			break
		}
	}
	if parts < 3 {
		return 0
	}
	return at
}
