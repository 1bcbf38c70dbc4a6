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
	var room digitRoom
	sign, size := signed(v)
	digits, exponent := shortest(&room, size)
	if size >= 1e15 || size < 1e-6 {
		digits, exponent = roundDigits(digits, exponent, usual+more)
		return string(point([]byte(sign), digits, 1)) + timesTen + strconv.Itoa(exponent)
	}
	digits, exponent = roundDigits(digits, exponent, max(usual, exponent+1)+more)
	return plainly(sign, digits, exponent)
}

const usualDigits = 3 // significant digits of a number that a reader is shown

// Few says whether a number has so few significant digits that a person may have typed it.
func Few(v float64, most int) bool {
	_, size := signed(v)
	if !(size >= 1e-6 && size < 1e15) {
		return false
	}
	var room digitRoom
	digits, _ := shortest(&room, size)
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
	var room digitRoom
	digits, exponent := shortest(&room, size)
	digits, exponent = roundDigits(digits, exponent, exponent+1+cents+more)
	text := plainly(sign, digits, exponent)
	if _, fraction, _ := strings.Cut(text, "."); len(fraction) == 1 {
		text += "0"
	}
	return text
}

func signed(v float64) (sign string, size float64) {
	if v < 0 {
		return "-", -v
	}
	return "", v
}

// plainly writes a sign and digits out in full, with the power of ten of the first digit.
func plainly(sign string, digits []byte, exponent int) string {
	var room [2 * len(digitRoom{})]byte
	text := append(room[:0], sign...)
	if exponent < 0 {
		text = append(text, "0."...)
		for range -exponent - 1 {
			text = append(text, '0')
		}
		return string(append(text, digits...))
	}
	for len(digits) < exponent+1 {
		digits = append(digits, '0')
	}
	return string(point(text, digits, exponent+1))
}

// A digitRoom holds the digits of any number, so that the text of a number is the only memory that it takes: a page has
// hundreds of them.
type digitRoom [32]byte

// shortest puts the fewest significant digits that read back as v into a room, and gives the power of ten of the first.
func shortest(room *digitRoom, v float64) (digits []byte, exponent int) {
	text := strconv.AppendFloat(room[:0], v, 'e', -1, 64) // "1.25e+02"
	end := bytes.IndexByte(text, 'e')
	for _, digit := range text[end+2:] {
		exponent = 10*exponent + int(digit-'0')
	}
	if text[end+1] == '-' {
		exponent = -exponent
	}
	if end > 1 { // without the point
		text[1] = text[0]
		text = text[1:]
		end--
	}
	return text[:end], exponent
}

// roundDigits keeps so many digits, rounding half up, and drops the zeros at the end. It changes the digits.
func roundDigits(digits []byte, exponent, keep int) ([]byte, int) {
	if len(digits) > keep {
		up := digits[keep] >= '5'
		digits = digits[:keep]
		for i := keep - 1; up && i >= 0; i-- {
			up = digits[i] == '9'
			digits[i]++
			if up {
				digits[i] = '0'
			}
		}
		if up { // every digit was a 9, and is 0 now
			digits[0] = '1'
			exponent++
		}
	}
	return bytes.TrimRight(digits, "0"), exponent
}

// point writes digits after a text, with commas in the first whole ones and a decimal point after those.
func point(text, digits []byte, whole int) []byte {
	for i, digit := range digits {
		switch {
		case i == whole:
			text = append(text, '.')
		case i > 0 && i < whole && (whole-i)%3 == 0:
			text = append(text, ',')
		}
		text = append(text, digit)
	}
	return text
}
