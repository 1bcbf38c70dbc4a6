package prose

import (
	"slices"
	"strings"
	"unicode/utf8"

	"acreleaf/calc/unit"
)

// Find gives the amounts of a text in their order. Most words and numbers are passed over with one look.
func (l *Language) Find(text string) []Amount {
	var found []Amount
	for at := 0; at < len(text); {
		to, begins := l.candidate(text, at)
		if begins {
			if a, ok := l.amount(text, at, reach{len(text), true}); ok {
				at = a.End
				a = signed(text, a)
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

// Measure reads the first amount of a text in either language, be it the name of a thing as well: "a 5-gallon bucket".
func Measure(text string) (Amount, bool) {
	for _, l := range []*Language{English, Spanish} {
		if a, ok := l.measure(text); ok {
			return a, true
		}
	}
	return Amount{}, false
}

func (l *Language) measure(text string) (Amount, bool) {
	if found := l.Find(text); len(found) > 0 {
		return found[0], true
	}
	for at := 0; at < len(text); at++ {
		if t := next(text, at); t.kind == digits || t.kind == part || t.kind == word && l.numbers[t.lower()] > 0 {
			n, ok := l.number(text, t.from)
			if !ok {
				return Amount{}, false
			}
			p, _ := l.phrase(text, n.to, false, reach{len(text), true})
			a := Amount{Start: t.from, End: p.to, Low: n.Value, High: n.Value, LowStep: n.Step, HighStep: n.Step, Unit: p.unit()}
			return a, p.head != "" && p.to > n.to
		} else if t.kind == end {
			break
		} else {
			at = t.to - 1
		}
	}
	return Amount{}, false
}

// signed is an amount with the minus right before it. Between letters or digits the sign is a dash.
func signed(text string, a Amount) Amount {
	for _, minus := range []string{"-", "−"} {
		before, found := strings.CutSuffix(text[:a.Start], minus)
		if found && a.Low == a.High && isDigit(text[a.Start]) && opens(before) {
			a.Start, a.Low, a.High = len(before), -a.Low, -a.High
		}
	}
	return a
}

// opens says whether a word may begin after a text.
func opens(before string) bool {
	return before == "" || strings.IndexByte(" \n(", before[len(before)-1]) >= 0
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
	partByte  // ½ and its like begin with one of these, and so do dashes and the no-break space
	pointByte // of a number such as .5
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
		case b == 0xC2 || b == 0xE2:
			c[i] = partByte
		case b == '.':
			c[i] = pointByte
		}
	}
	return c
}()

// candidate says whether an amount may begin at a place, and where to look next if none does.
func (l *Language) candidate(text string, at int) (to int, begins bool) {
	switch classes[text[at]] {
	case letterByte:
		to = at + 1
		if text[at] == 'x' && at > 0 && isDigit(text[at-1]) {
			return to, false
		}
		for to < len(text) && classes[text[to]]&(letterByte|digitByte|laterByte) != 0 {
			to++
		}
		if w := text[at:to]; len(w) <= len("an") && l.indefinite[w] {
			begins = l.countedAt(text, to)
		} else {
			begins = l.starts[mark(w)] && l.mayFollow(text, to)
		}
		switch {
		case to == len(text) || text[to] == ' ':
		case text[to] == ':':
			to = pastAddress(text, to)
		case text[to] != '-' || !slices.Contains(l.joining, text[at:to]):
			to = pastWord(text, to)
		}
		return to, begins
	case digitByte:
		if at > 1 && text[at-1] == '/' && isLetter(text[at-2]) {
			return pastNumber(text, at), false // what a rate is for: 22 meq/100 g
		}
		return pastNumber(text, at), l.mayFollow(text, at+numeral(text[at:]))
	case dollarByte:
		if t := next(text, at+1); t.kind == digits && t.from <= at+2 {
			return pastNumber(text, t.from), true
		}
	case partByte:
		r, size := utf8.DecodeRuneInString(text[at:])
		return at + size, unit.FractionSign(r) > 0
	case pointByte:
		if pointed(text, at) {
			return pastNumber(text, at+1), l.mayFollow(text, at+numeral(text[at:]))
		}
	}
	return at + 1, false
}

// countedAt says whether one of what follows an article may be an amount. Trees and acres are mostly what an
// amount is for: "48 lb an acre".
func (l *Language) countedAt(text string, at int) bool {
	t := next(text, at)
	return t.kind == word && l.nexts[mark(t.text)] && l.counted[t.text]
}

// unitSigns may stand between a number and its unit, or are the unit.
const unitSigns = "/⁄$#¢+\"'″′”’"

// mayFollow passes over most numbers with one look at what follows them.
func (l *Language) mayFollow(text string, at int) bool {
	switch t := next(text, at); t.kind {
	case end:
		return false
	case sign:
		return t.isDash() || strings.Contains(unitSigns, t.text)
	case word:
		return l.nexts[mark(t.text)] && (l.follows[t.text] || len(t.text) > 1 && l.follows[t.lower()])
	}
	return true
}

// pastAddress goes on to the end of the address of a page, whose numbers say nothing.
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
		times := c == 'x' && at+1 < len(text) && isDigit(text[at+1])
		if times || !isDigit(c) && !isLetter(c) && !joins {
			return at // "12x18 ft" are two numbers
		}
		at++
	}
	return at
}
