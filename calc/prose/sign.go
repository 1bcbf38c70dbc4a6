package prose

import "strings"

// signUnit reads a unit that is a sign right after digits: 48 #, 62¢, 2″, 6′ and what a keyboard has for them.
func signUnit(text string, at int, t token) *symbol {
	if isLetterAt(text, t.to) || t.to < len(text) && isDigit(text[t.to]) {
		return nil
	}
	for _, s := range signUnits {
		if s.sign != t.text {
			continue
		}
		far := t.spaced || at == 0 || !isDigit(text[at-1]) && text[at-1] < 0x80
		if far && !s.anywhere || isOpen(text[:at], s.opening, s.sign) {
			return nil
		}
		return s.unit
	}
	return nil
}

// isOpen says whether a quotation that began before has no end yet. Between letters a single quotation mark is an
// apostrophe.
func isOpen(before, opening, closing string) bool {
	switch {
	case opening == "":
		return false
	case closing == apostrophe || closing == curlyApostrophe:
		at := strings.LastIndex(before, opening)
		return at >= 0 && at+len(opening) < len(before) && opens(before[:at])
	case opening == closing:
		return strings.Count(before, opening)%2 == 1
	}
	return strings.Count(before, opening) > strings.Count(before, closing)
}

const (
	apostrophe      = "'"
	curlyApostrophe = "’"
)

// opens says whether a word may begin after a text.
func opens(before string) bool {
	return before == "" || strings.IndexByte(" \n(", before[len(before)-1]) >= 0
}
