package unit

import (
	"strings"
	"unicode"
)

// A reader reads a quantity or a range from left to right.
type reader struct {
	text  string
	at    int
	money bool // a dollar sign stood before a number
}

func newReader(text string) *reader { return &reader{text: text} }

func (r *reader) fault(at int, message string) *Error {
	return &Error{Text: r.text, At: at, Message: quoted(r.text, message)}
}

func (r *reader) skipSpace() {
	r.at += len(r.text[r.at:]) - len(strings.TrimLeftFunc(r.text[r.at:], unicode.IsSpace))
}

// number reads a number, with a dollar sign before it if it is money.
func (r *reader) number() (float64, error) {
	r.skipSpace()
	start := r.at
	sign := r.minus()
	if strings.HasPrefix(r.text[r.at:], "$") {
		r.money = true
		r.at++
		r.skipSpace()
		if sign == "" {
			sign = r.minus()
		}
	}
	size := run(r.text[r.at:], isNumberRune)
	digits := r.text[r.at : r.at+size]
	if size == 0 {
		return 0, r.fault(start, noNumber(r.text[start:]))
	}
	r.at += size
	if power := powerOfTen(r.text[r.at:]); power != "" {
		digits += power
		r.at += len(power)
	}
	if message := afterNumber(digits, r.text[r.at:]); message != "" {
		return 0, r.fault(start, message)
	}
	value, message := readNumber(sign + digits)
	if message != "" {
		return 0, r.fault(start, message)
	}
	return value, nil
}

// minus steps over a minus sign and gives it.
func (r *reader) minus() string {
	sign, rest := cutMinus(r.text[r.at:])
	r.at = len(r.text) - len(rest)
	return sign
}

// separator steps over what stands between the two numbers of a range. The word "to" always stands between two; a
// dash does when a number follows it.
func (r *reader) separator() bool {
	rest := strings.TrimLeftFunc(r.text[r.at:], unicode.IsSpace)
	if word := run(rest, isWordRune); rest[:word] == "to" {
		r.at = len(r.text) - len(rest) + word
		return true
	}
	for _, dash := range []string{"–", "-"} {
		after, found := strings.CutPrefix(rest, dash)
		after = strings.TrimLeftFunc(after, unicode.IsSpace)
		if found && after != "" && (isNumberRune(rune(after[0])) || after[0] == '$') {
			r.at = len(r.text) - len(after)
			return true
		}
	}
	return false
}

// secondUnit says whether what should be a unit goes on to another number, as in "3 oz to 4 oz".
func (r *reader) secondUnit() bool {
	for _, word := range []string{" to ", "–", " - "} {
		_, after, found := strings.Cut(r.text[r.at:], word)
		after = strings.TrimLeft(after, " $")
		if found && after != "" && isDigit(rune(after[0])) {
			return true
		}
	}
	return false
}

// unit reads the rest as a unit. A fault keeps its place in the whole text.
func (r *reader) unit() (Unit, error) {
	r.skipSpace()
	rest := r.text[r.at:]
	if r.money {
		rest = "$" + rest
	}
	u, err := Parse(rest)
	if e, isError := err.(*Error); isError {
		at := e.At + r.at
		if r.money {
			at = max(at-1, 0)
		}
		return Unit{}, &Error{Text: r.text, At: at, Message: e.Message, Nearest: e.Nearest}
	}
	return u, err
}
