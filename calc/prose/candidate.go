package prose

import (
	"strings"
	"unicode/utf8"

	"acreleaf/calc/unit"
)

// The classes of bytes: what an amount may begin with, and what goes on with a word.
const (
	letterByte = 1 << iota // of a letter, the first byte
	digitByte
	laterByte // of a letter of several bytes, the others
	dollarByte
	partByte  // ½ and its like begin with one of these, and so do dashes and the no-break space
	pointByte // of a number such as .5

	wordByte = letterByte | digitByte | laterByte
)

var byteClasses = func() (c [256]uint8) {
	for i := range c {
		b := byte(i)
		switch {
		case isLetter(b):
			c[i] = letterByte
		case isDigit(b):
			c[i] = digitByte
		case 0x80 <= b && b < 0xC0:
			c[i] = laterByte
		case b == '$':
			c[i] = dollarByte
		case b == 0xC2 || b == 0xE2:
			c[i] = partByte
		case b == '.':
			c[i] = pointByte
		}
	}
	return c
}()

// candidate says whether an amount may begin at a place, or why none does, and where to look next.
func (l *Language) candidate(text string, at int) (to int, why reason) {
	switch byteClasses[text[at]] {
	case letterByte:
		return l.wordCandidate(text, at)
	case digitByte:
		return l.digitCandidate(text, at)
	case dollarByte:
		if t := next(text, at+1); t.kind == digits && t.from <= at+2 {
			return pastNumber(text, t.from), taken
		}
	case partByte:
		r, size := utf8.DecodeRuneInString(text[at:])
		return at + size, unless(unit.FractionSign(r) > 0, asNothing)
	case pointByte:
		if pointed(text, at) {
			return pastNumber(text, at+1), l.follow(text, at+numeral(text[at:]))
		}
	}
	return at + 1, asNothing
}

// wordCandidate is candidate at a letter.
func (l *Language) wordCandidate(text string, at int) (to int, why reason) {
	to = at + 1
	if text[at] == times && at > 0 && isDigit(text[at-1]) {
		return to, asNothing
	}
	for to < len(text) && byteClasses[text[to]]&wordByte != 0 {
		to++
	}
	w := text[at:to]
	why = asNothing
	if l.starts.has(w) {
		why = l.wordStart(text, w, to)
	}
	if to == len(text) || text[to] == ' ' {
		return to, why
	}
	past, name := to, asName
	switch {
	case text[to] == ':':
		past, name = pastAddress(text, to), asAddress
	case text[to] != '-' || !l.joining[w]:
		past = pastWord(text, to)
	}
	if past > to && why == asNothing {
		why = name
	}
	return past, why
}

// wordStart says whether an amount may begin with a word that ends at a place.
func (l *Language) wordStart(text, w string, to int) reason {
	if !l.counting[w] {
		return l.follow(text, to)
	}
	// Trees and acres are mostly what an amount is for: "48 lb an acre".
	t := next(text, to)
	return unless(t.kind == word && l.nexts.has(t.text) && l.counted[t.text], asNothing)
}

// digitCandidate is candidate at a digit.
func (l *Language) digitCandidate(text string, at int) (to int, why reason) {
	if at > 1 && text[at-1] == '/' && isLetter(text[at-2]) {
		return pastNumber(text, at), asBase // what a rate is for: 22 meq/100 g
	}
	return pastNumber(text, at), l.follow(text, at+numeral(text[at:]))
}

// signsOfUnits may be between a number and its unit, or are the unit.
const signsOfUnits = "/⁄$#¢+\"'″′”’"

// follow passes over most numbers with one look at what follows them.
func (l *Language) follow(text string, at int) reason {
	switch t := next(text, at); t.kind {
	case end:
		return asCount
	case sign:
		return unless(t.isDash() || strings.Contains(signsOfUnits, t.text), asCount)
	case word:
		if !l.nexts.has(t.text) {
			return asCount
		}
		return unless(l.follows[t.text] || len(t.text) > 1 && l.follows[t.lower()], asCount)
	}
	return taken
}

// pastAddress goes on to the end of the address of a page, whose numbers are none of the text.
func pastAddress(text string, at int) int {
	if !strings.HasPrefix(text[at:], "://") {
		return at
	}
	for at < len(text) && text[at] > ' ' {
		at++
	}
	return at
}

func isLetterAt(text string, at int) bool { return at < len(text) && isLetter(text[at]) }

// isLetter knows a letter by its first byte: those of ASCII, and those of À and what is after it up to the signs.
func isLetter(c byte) bool {
	return 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || 0xC3 <= c && c < 0xE2
}

// pastWord goes on to the end of a name such as UAN-32 or RL_2, whose digits are no numbers.
func pastWord(text string, at int) int {
	for at+1 < len(text) && strings.IndexByte("-_#.", text[at]) >= 0 && isDigit(text[at+1]) {
		at = pastNumber(text, at+1)
	}
	return at
}

// pastNumber goes on to the end of digits and what depends on them: a grade, a date, a time, a version.
func pastNumber(text string, at int) int {
	for at < len(text) {
		c := text[at]
		joins := strings.IndexByte("-/:.,_$", c) >= 0 && at+1 < len(text) && (isDigit(text[at+1]) || c == '$')
		spacing := c == times && at+1 < len(text) && isDigit(text[at+1])
		if spacing || !isDigit(c) && !isLetter(c) && !joins {
			return at // "12x18 ft" are two numbers
		}
		at++
	}
	return at
}
