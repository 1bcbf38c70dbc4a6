package prose

import "strings"

// unitSign reads a unit that is a sign right after digits: 48 #, 62¢, 2″, 6′ and what a keyboard has for them.
func unitSign(text string, at int, t token) string {
	if isLetterAt(text, t.to) || t.to < len(text) && isDigit(text[t.to]) {
		return ""
	}
	switch t.text {
	case "#":
		return "lb"
	case "¢":
		return "cent"
	}
	if t.spaced || at == 0 || !isDigit(text[at-1]) && text[at-1] < 0x80 {
		return ""
	}
	switch before := text[:at]; t.text {
	case "″":
		return "in"
	case "′":
		return "ft"
	case `"`:
		return unless(strings.Count(before, `"`)%2 == 1, "in")
	case "”":
		return unless(strings.Count(before, "“") > strings.Count(before, "”"), "in")
	case "'":
		return unless(isQuoted(before, "'"), "ft")
	case "’":
		return unless(isQuoted(before, "‘"), "ft")
	}
	return ""
}

// isQuoted says whether a single quotation that began before has no end yet. Between letters the sign is an apostrophe.
func isQuoted(before, quote string) bool {
	at := strings.LastIndex(before, quote)
	if at < 0 || at+len(quote) == len(before) {
		return false
	}
	return opens(before[:at])
}

// unless gives a unit's symbol, or "" when the sign closes a quotation.
func unless(quoted bool, symbol string) string {
	if quoted {
		return ""
	}
	return symbol
}
