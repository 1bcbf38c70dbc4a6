package unit

import (
	"math"
	"strconv"
	"strings"
)

// Text writes a number for a reader: three significant digits but never fewer than stand before the decimal point,
// no zeros at the end of a fraction, and commas in thousands. It rounds half away from zero on the shortest decimal
// that reads back as v, so the page's script gives the same text. From 1e15 up and below 1e-6 it writes a power of
// ten (1.23 × 10^15). Neither a NaN nor an infinity is a number: they are a dash, which no caller should show.
func Text(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "–"
	}
	if v == 0 {
		return "0"
	}
	sign, size := "", v
	if v < 0 {
		sign, size = "-", -v
	}
	digits, exponent := shortest(size)
	if size >= 1e15 || size < 1e-6 {
		digits, exponent = roundDigits(digits, exponent, 3)
		return sign + point(digits, 1) + timesTen + strconv.Itoa(exponent)
	}
	digits, exponent = roundDigits(digits, exponent, max(3, exponent+1))
	if exponent < 0 {
		return sign + "0." + strings.Repeat("0", -exponent-1) + digits
	}
	if missing := exponent + 1 - len(digits); missing > 0 {
		digits += strings.Repeat("0", missing)
	}
	return sign + point(digits, exponent+1)
}

// shortest gives the fewest significant digits that read back as v, and the power of ten of the first.
func shortest(v float64) (digits string, exponent int) {
	mantissa, power, _ := strings.Cut(strconv.FormatFloat(v, 'e', -1, 64), "e")
	exponent, err := strconv.Atoi(power)
	if err != nil {
		panic("unit: " + err.Error()) // FormatFloat always writes an exponent
	}
	return strings.Replace(mantissa, ".", "", 1), exponent
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
