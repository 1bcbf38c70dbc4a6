package unit

import (
	"strings"
	"unicode"
)

// A Quantity is a number with its unit.
type Quantity struct {
	Value float64
	Unit  Unit
}

// In gives the same quantity in another unit. When the two do not measure the same thing the error is a *Mismatch.
func (q Quantity) In(u Unit) (Quantity, error) {
	factor, err := q.Unit.To(u)
	if err != nil {
		return Quantity{}, &Mismatch{Given: q.String(), Unit: q.Unit, Wanted: u}
	}
	return Quantity{factor.Apply(q.Value), u}, nil
}

// String writes the quantity for a reader: the number as Number gives it, a space and the unit. Money goes before its
// number: $0.62/lb.
func (q Quantity) String() string { return q.Unit.Counted(q.Unit.Number(q.Value)) }

// Counted is Label with a counted thing in its singular for one of it: 1 day, 2 days.
func (u Unit) Counted(number string) string {
	text := label(number, u)
	if len(u.terms) == 0 {
		return text
	}
	one, many, counts := u.tongue.number(u.terms[0].symbol.name)
	if !counts || u.terms[0].power < 0 {
		return text
	}
	written := strings.TrimPrefix(text, number+" ")
	word := written[:run(written, unicode.IsLetter)]
	switch rest := written[len(word):]; {
	case word == many && number == "1":
		return number + " " + one + rest
	case word == one && number != "1":
		return number + " " + many + rest
	}
	return text
}

// Number writes a number of the unit without the unit: as Money for money, as Text for all else.
func (u Unit) Number(v float64) string {
	if u.IsMoney() {
		return Money(v, 0)
	}
	return Text(v)
}

// Operand writes a number of the unit as it is in a formula: as a person typed it, with all of its digits, where
// they are at most so many; else with the usual number of digits for what is not money, and so many more.
func (u Unit) Operand(v float64, most, usual, more int) string {
	if Few(v, most) {
		more = allDigits
	}
	if u.IsMoney() {
		return Money(v, more)
	}
	return Digits(v, usual, more)
}

const allDigits = 17 // no float64 needs more to be read back

// IsMoney says whether a unit counts dollars.
func (u Unit) IsMoney() bool { return strings.HasPrefix(u.String(), "$") }

// Label puts the unit to the text of a number.
func (u Unit) Label(number string) string { return label(number, u) }

// label puts a unit to the text of a number.
func label(number string, u Unit) string {
	text := u.String()
	if rest, money := strings.CutPrefix(text, "$"); money {
		if negative, below := strings.CutPrefix(number, "-"); below {
			return "-$" + withBelow(negative, rest)
		}
		return "$" + withBelow(number, rest)
	}
	if below, alone := strings.CutPrefix(text, "1/"); alone {
		return withBelow(number, "/"+below)
	}
	if text == "" {
		return number
	}
	return number + " " + text
}

// withBelow puts a space before a stroke and a number: 5/6 in would read as a fraction.
func withBelow(number, rest string) string {
	if len(rest) > 1 && rest[0] == '/' && isDigit(rune(rest[1])) {
		number += " "
	}
	return number + rest
}

// ParseQuantity reads a number and its unit: "12 ppm NO3-N", "1,200 lb/ac", "$0.62/lb", "70 %". A number alone is a
// plain number. The error is an *Error.
func ParseQuantity(text string) (Quantity, error) {
	if length, ok := feetInches(text); ok {
		return Quantity{length.Low, length.Unit}, nil
	}
	r := newReader(text)
	n, err := r.number()
	if err != nil {
		return Quantity{}, err
	}
	if r.separator() {
		return Quantity{}, r.fault(0, "a range cannot be here; write one number")
	}
	u, err := r.unit()
	if err != nil {
		return Quantity{}, err
	}
	return Quantity{n.Value, u}, nil
}
