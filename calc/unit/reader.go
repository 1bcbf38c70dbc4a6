package unit

import (
	"strings"
	"unicode"
	"unicode/utf8"
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
func (r *reader) number() (Number, error) {
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
	if value, size := fraction(r.text[r.at:], isFraction); size > 0 {
		r.at += size
		return r.signed(sign, Number{Value: value, Step: FractionStep}, start)
	}
	size := run(r.text[r.at:], isNumberRune)
	digits := r.text[r.at : r.at+size]
	if part, more := withFraction(r.text[r.at+size:]); more > 0 && digits != "" && !strings.ContainsAny(digits, ".") {
		whole, message := readNumber(digits)
		if message != "" {
			return Number{}, r.fault(start, message)
		}
		r.at += size + more
		return r.signed(sign, Number{Value: whole + part, Step: FractionStep}, start)
	}
	if size == 0 {
		return Number{}, r.fault(start, noNumber(r.text[start:]))
	}
	r.at += size
	if power := powerOfTen(r.text[r.at:]); power != "" {
		digits += power
		r.at += len(power)
	}
	if message := afterNumber(digits, r.text[r.at:]); message != "" {
		return Number{}, r.fault(start, message)
	}
	value, message := readNumber(sign + digits)
	if message != "" {
		return Number{}, r.fault(start, message)
	}
	return inDigits(value, digits), nil
}

// signed is a number with a fraction, below nothing if a sign comes before it.
func (r *reader) signed(sign string, n Number, start int) (Number, error) {
	if message := afterNumber("", r.text[r.at:]); message != "" {
		return Number{}, r.fault(start, message)
	}
	if sign != "" {
		n.Value = -n.Value
	}
	return n, nil
}

// minus steps over a minus sign and gives it.
func (r *reader) minus() string {
	sign, rest := cutMinus(r.text[r.at:])
	r.at = len(r.text) - len(rest)
	return sign
}

// dashes are all that people and their machines write between the two numbers of a range.
var dashes = []string{"–", "-", "—", "‑", "‒", "−"}

// startsNumber says whether a text starts with a number or with money.
func startsNumber(text string) bool {
	first, _ := utf8.DecodeRuneInString(text)
	return isNumberRune(first) || first == '$' || fractions[first] > 0
}

// separator skips what is between the two numbers of a range. The word "to" is always between two; a dash
// does when a number follows it, and so does the Spanish "a".
func (r *reader) separator() bool {
	rest := strings.TrimLeftFunc(r.text[r.at:], unicode.IsSpace)
	word := run(rest, isWordRune)
	after := strings.TrimLeftFunc(rest[word:], unicode.IsSpace)
	if rest[:word] == "to" || rest[:word] == "a" && startsNumber(after) {
		r.at = len(r.text) - len(rest) + word
		return true
	}
	for _, dash := range dashes {
		after, found := strings.CutPrefix(rest, dash)
		after = strings.TrimLeftFunc(after, unicode.IsSpace)
		if found && startsNumber(after) {
			r.at = len(r.text) - len(after)
			return true
		}
	}
	return false
}

// secondUnit says whether what should be a unit goes on to another number, as in "3 oz to 4 oz", and gives the two.
func (r *reader) secondUnit() (first, second string, is bool) {
	for _, word := range []string{" to ", "–", " - ", "—"} {
		before, after, found := strings.Cut(r.text[r.at:], word)
		after = strings.TrimLeft(after, " $")
		if found && after != "" && isDigit(rune(after[0])) {
			return r.text[:r.at] + before, after, true
		}
	}
	return "", "", false
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
		return Unit{}, &Error{Text: r.text, At: at, Message: e.Message, Word: e.Word, Nearest: e.Nearest}
	}
	return u, err
}
