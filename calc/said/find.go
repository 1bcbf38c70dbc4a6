package said

import (
	"slices"
	"strings"
)

// Find gives the amounts of a text in their order. Most words and numbers are passed over with one look.
func (l *Language) Find(text string) []Amount {
	var found []Amount
	for at := 0; at < len(text); {
		to, begins := l.candidate(text, at)
		if begins {
			if a, ok := l.amount(text, at, reach{len(text), true}); ok {
				at = a.End
				if last := len(found) - 1; last >= 0 && l.joins(text, found[last], a) {
					a.Start, a.Low, a.LowStep = found[last].Start, found[last].Low, found[last].LowStep
					a.Digits = a.Digits && found[last].Digits
					found = found[:last]
				}
				found = append(found, a)
				continue
			}
		}
		at = to
	}
	return found
}

// joins says whether two amounts are the ends of a range whose unit stands with both: "3 oz to 4 oz".
func (l *Language) joins(text string, a, b Amount) bool {
	t := next(text, a.End)
	if next(text, t.to).from != b.Start || a.Low != a.High || b.Low != b.High || a.Low >= b.Low || !a.Unit.Same(b.Unit) {
		return false
	}
	return t.isDash() || t.kind == word && slices.Contains(l.to, t.lower())
}

// The classes of bytes: what an amount may begin with, and what goes on with a word.
const (
	letterByte = 1 << iota // of the letters of English and Spanish, the first byte
	digitByte
	laterByte // of a letter of several bytes, the others
	dollarByte
	partByte // ½ and its like begin with it, and so does the no-break space
)

var classes = func() (c [256]uint8) {
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
		case b == 0xC2:
			c[i] = partByte
		}
	}
	return c
}()

// candidate says whether an amount may begin at a place, and where to look next if none does.
func (l *Language) candidate(text string, at int) (to int, begins bool) {
	switch classes[text[at]] {
	case letterByte:
		to = at + 1
		for to < len(text) && classes[text[to]]&(letterByte|digitByte|laterByte) != 0 {
			to++
		}
		begins = l.starts[mark(text[at:to])] && l.mayFollow(text, to)
		if to < len(text) && text[to] != ' ' {
			to = pastWord(text, to)
		}
		return to, begins
	case digitByte:
		return pastNumber(text, at), l.mayFollow(text, at+numeral(text[at:]))
	case dollarByte:
		if at+1 < len(text) && isDigit(text[at+1]) {
			return pastNumber(text, at+1), true
		}
	case partByte:
		for _, sign := range []string{"½", "¼", "¾"} {
			if strings.HasPrefix(text[at:], sign) {
				return at + len(sign), true
			}
		}
	}
	return at + 1, false
}

// mayFollow passes over most numbers with one look at what stands after them.
func (l *Language) mayFollow(text string, at int) bool {
	switch t := next(text, at); t.kind {
	case end:
		return false
	case sign:
		return t.text == "/" || t.text == "$" || t.isDash()
	case word:
		return l.follows[t.text] || len(t.text) > 1 && l.follows[t.lower()]
	}
	return true
}

// isLetter knows the letters of English and Spanish by their first byte.
func isLetter(c byte) bool {
	return 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || 0xC3 <= c && c < 0xE0
}

// pastWord goes on to the end of a name such as UAN-32 or RL_2, whose digits are no numbers.
func pastWord(text string, at int) int {
	for at+1 < len(text) && strings.IndexByte("-_#.", text[at]) >= 0 && isDigit(text[at+1]) {
		at = pastNumber(text, at+1)
	}
	return at
}

// pastNumber goes on to the end of digits and what hangs on them: a grade, a date, a time, a version.
func pastNumber(text string, at int) int {
	for at < len(text) {
		c := text[at]
		joins := strings.IndexByte("-/:.,_$", c) >= 0 && at+1 < len(text) && (isDigit(text[at+1]) || c == '$')
		if !isDigit(c) && !isLetter(c) && !joins {
			return at
		}
		at++
	}
	return at
}
