package unit

import (
	"math"
	"strings"
)

// A Number is one number as it is written: what it is worth, and how finely it is told.
type Number struct {
	Value  float64
	Step   float64 // a unit in the last written place
	Digits bool    // in digits and a point, as a worksheet's figures are
}

// FractionStep is how finely a fraction is told beside a decimal: 1/3 is 0.33.
const FractionStep = 0.01

// narrowSpaces part thousands in print.
var narrowSpaces = strings.NewReplacer("\u00A0", "", "\u202F", "", "\u2009", "")

// Written reads digits as they are in a sentence: as ParseNumber does, and narrow spaces may part thousands. A comma
// that parts no thousands is read as a decimal point here, whatever the language, so that the number is found; who
// needs to know whether the language has such a comma asks HasDecimalComma.
func Written(digits string) (Number, bool) {
	digits = PointDecimals(narrowSpaces.Replace(digits))
	value, err := ParseNumber(digits)
	return inDigits(value, digits), err == nil
}

// inDigits is a number that is written in digits.
func inDigits(value float64, digits string) Number {
	_, places, _ := strings.Cut(digits, ".")
	return Number{Value: value, Step: math.Pow(10, -float64(run(places, isDigit))), Digits: true}
}

// LeadingFraction reads the fraction before a unit that a text starts with, ½ or 1/2, and gives its length; 0 when
// there is none.
func LeadingFraction(text string) (n Number, size int) {
	value, size := fraction(text, isFractionOfUnit)
	return Number{Value: value, Step: FractionStep}, size
}

// WithFraction adds to whole digits the fraction that may come after them, the ½ of 2½ or the 1/2 of 2 1/2, and gives
// its length; 0 when there is none.
func (n Number) WithFraction(rest string) (sum Number, size int) {
	if !n.Digits || n.Step != 1 {
		return n, 0
	}
	value, size := withFraction(rest)
	if size == 0 {
		return n, 0
	}
	return Number{Value: n.Value + value, Step: FractionStep}, size
}

// HasDecimalComma says whether a number of a text has a comma before its decimals.
func HasDecimalComma(text string) bool { return PointDecimals(text) != text }

// PointDecimals writes the decimal commas of a text as points, for a page in a language that has them: 12,5 is 12.5. A
// comma that parts thousands stays, since numbers are printed with it: 1,200.
func PointDecimals(text string) string {
	if !strings.Contains(text, ",") {
		return text
	}
	var b strings.Builder
	for text != "" {
		size := run(text, func(r rune) bool { return !isNumberRune(r) })
		b.WriteString(text[:size])
		text = text[size:]
		size = run(text, isNumberRune)
		number := text[:size]
		text = text[size:]
		whole, after, one := strings.Cut(number, ",")
		after = strings.TrimRight(after, ".,")
		if one && whole != "" && after != "" && !strings.ContainsAny(after, ".,") && !strings.Contains(whole, ".") &&
			!thousands(whole+","+after) {
			number = strings.Replace(number, ",", ".", 1)
		}
		b.WriteString(number)
	}
	return b.String()
}
