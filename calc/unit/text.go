package unit

import (
	"bytes"
	"math"
	"strconv"
	"strings"
)

// Text writes a number for a reader: three significant digits but never fewer than come before the decimal point,
// no zeros at the end of a fraction, and commas in thousands. It rounds half away from zero on the shortest decimal
// that reads back as v, so the page's script gives the same text. From 1e15 up and below 1e-6 it writes a power of
// ten (1.23 × 10^15). Neither a NaN nor an infinity is a number: they are a dash, which no caller should show.
func Text(v float64) string { return Digits(v, usualDigits, 0) }

// Digits is Text with another number of digits that are usual, and so many more.
func Digits(v float64, usual, more int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "–"
	}
	if v == 0 {
		return "0"
	}
	sign, size := signed(v)
	digits, exponent := shortest(size)
	if size >= 1e15 || size < 1e-6 {
		digits, exponent = roundDigits(digits, exponent, usual+more)
		return sign + point(digits, 1) + timesTen + strconv.Itoa(exponent)
	}
	digits, exponent = roundDigits(digits, exponent, max(usual, exponent+1)+more)
	return sign + plainly(digits, exponent)
}

const usualDigits = 3 // significant digits of a number that a reader is shown

// Few says whether a number has so few significant digits that a person may have typed it.
func Few(v float64, most int) bool {
	_, size := signed(v)
	if !(size >= 1e-6 && size < 1e15) {
		return false
	}
	digits, _ := shortest(size)
	return len(digits) <= most
}

// Money writes an amount of money: in cents where cents tell something, from ten cents to a thousand dollars, and as
// Digits has it below and above. More digits than cents are for a price that is worked with.
func Money(v float64, more int) string {
	const least, most, cents = 0.1, 1000, 2
	sign, size := signed(v)
	if !(size >= least && size < most) {
		return Digits(v, usualDigits, more)
	}
	digits, exponent := shortest(size)
	digits, exponent = roundDigits(digits, exponent, exponent+1+cents+more)
	text := plainly(digits, exponent)
	if whole, fraction, _ := strings.Cut(text, "."); len(fraction) == 1 {
		text = whole + "." + fraction + "0"
	}
	return sign + text
}

func signed(v float64) (sign string, size float64) {
	if v < 0 {
		return "-", -v
	}
	return "", v
}

// plainly writes digits out in full, with the power of ten of the first.
func plainly(digits string, exponent int) string {
	if exponent < 0 {
		return "0." + strings.Repeat("0", -exponent-1) + digits
	}
	if missing := exponent + 1 - len(digits); missing > 0 {
		digits += strings.Repeat("0", missing)
	}
	return point(digits, exponent+1)
}

// shortest gives the fewest significant digits that read back as v, and the power of ten of the first.
func shortest(v float64) (digits string, exponent int) {
	var room [32]byte
	text := strconv.AppendFloat(room[:0], v, 'e', -1, 64) // "1.25e+02"
	end := bytes.IndexByte(text, 'e')
	exponent, err := strconv.Atoi(string(text[end+1:]))
	if err != nil {
		panic("unit: " + err.Error()) // AppendFloat always writes an exponent
	}
	if end > 1 { // without the point
		text[1] = text[0]
		text = text[1:]
		end--
	}
	return string(text[:end]), exponent
}

// roundDigits keeps so many digits, rounding half up, and drops the zeros at the end.
func roundDigits(digits string, exponent, keep int) (string, int) {
	if len(digits) > keep {
		up := digits[keep] >= '5'
		kept := []byte(digits[:keep])
		for i := keep - 1; up && i >= 0; i-- {
			up = kept[i] == '9'
			kept[i]++
			if up {
				kept[i] = '0'
			}
		}
		digits = string(kept)
		if up {
			digits, exponent = "1"+digits, exponent+1
		}
	}
	return strings.TrimRight(digits, "0"), exponent
}

// point puts commas into the first whole digits and a decimal point after them.
func point(digits string, whole int) string {
	var text strings.Builder
	for i := range digits {
		switch {
		case i == whole:
			text.WriteByte('.')
		case i > 0 && i < whole && (whole-i)%3 == 0:
			text.WriteByte(',')
		}
		text.WriteByte(digits[i])
	}
	return text.String()
}
