package unit

import (
	"cmp"
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
)

// ParseNumber reads a number as a person writes it: digits, one decimal point, and commas only where they part
// thousands (1,200). It also reads what Text writes for very large and very small numbers (1.23 × 10^15). The page's
// script reads the same texts. The error is an *Error.
func ParseNumber(text string) (float64, error) {
	trimmed := strings.TrimSpace(text)
	value, message := readNumber(trimmed)
	if message != "" {
		return 0, &Error{Text: text, Message: quoted(text, message)}
	}
	return value, nil
}

// readNumber reads a number with nothing around it, or gives the sentence that says why it is none.
func readNumber(text string) (float64, string) {
	sign, rest := cutMinus(text)
	digits := rest[:run(rest, isNumberRune)]
	power := powerOfTen(rest[len(digits):])
	if digits == "" {
		return 0, noNumber(text)
	}
	if len(digits)+len(power) < len(rest) {
		return 0, "write the number alone, in digits, such as 12 or 0.5"
	}
	whole, fraction, _ := strings.Cut(digits, ".")
	if message := checkDigits(digits, whole, fraction); message != "" {
		return 0, message
	}
	exponent := strings.TrimPrefix(power, timesTen)
	if exponent != "" {
		exponent = "e" + exponent
	}
	value, err := strconv.ParseFloat(sign+strings.ReplaceAll(digits, ",", "")+exponent, 64)
	if err != nil || math.IsInf(value, 0) {
		return 0, "this number is too large; write a smaller one"
	}
	return value, ""
}

// cutMinus cuts a minus sign, of either form, from the start of a text.
func cutMinus(text string) (sign, rest string) {
	for _, minus := range []string{"-", "−"} {
		if rest, found := strings.CutPrefix(text, minus); found {
			return "-", rest
		}
	}
	return "", text
}

// offered is how long a number may be for a message to write it anew.
const offered = 40

// checkDigits gives the sentence for digits, points and commas that make no number, and "" for a good one.
func checkDigits(digits, whole, fraction string) string {
	switch {
	case strings.Contains(fraction, "."):
		return "a number has one decimal point; write it such as 1.2"
	case strings.Contains(fraction, ","):
		return "commas part thousands, before the decimal point only; write it such as 1,200.5"
	case !strings.ContainsFunc(digits, unicode.IsDigit):
		return "there is no digit in this number; write it such as 12 or 0.5"
	case strings.Count(digits, ",") == 1 && fraction == "" && !thousands(whole) && len(digits) <= offered:
		before, after, _ := strings.Cut(whole, ",")
		return fmt.Sprintf("a comma parts thousands, as in 1,200; for a decimal write a point, as in %s.%s",
			cmp.Or(before, "0"), cmp.Or(after, "0"))
	case strings.Contains(whole, ",") && !thousands(whole):
		return "a comma parts thousands, as in 1,200; put the commas there or leave them out"
	}
	return ""
}

// thousands says whether commas stand only between proper groups of three digits.
func thousands(whole string) bool {
	groups := strings.Split(whole, ",")
	for _, group := range groups[1:] {
		if len(group) != 3 {
			return false
		}
	}
	return len(groups[0]) >= 1 && len(groups[0]) <= 3 && groups[0][0] != '0'
}

// timesTen comes before the exponent of a number that Text writes as a power of ten.
const timesTen = " × 10^"

// powerOfTen gives the power of ten that a text starts with, such as " × 10^15", and "" when it starts with none.
func powerOfTen(text string) string {
	rest, found := strings.CutPrefix(text, timesTen)
	if !found {
		return ""
	}
	rest = strings.TrimPrefix(rest, "-")
	size := run(rest, isDigit)
	if size == 0 || size > 3 {
		return ""
	}
	return text[:len(text)-len(rest)+size]
}

// noNumber gives the sentence for a text that does not start with a number.
func noNumber(text string) string {
	text = strings.TrimSpace(text)
	switch {
	case text == "":
		return "nothing is written here; write a number with its unit, such as 12 ppm NO3-N"
	case strings.HasPrefix(text, "<"):
		return "a lab writes < for less than; write the number you want to use, such as 0"
	case strings.HasPrefix(text, ">"):
		return "a lab writes > for more than; write the number you want to use"
	case text == "ND" || text == "nd" || text == "N.D.":
		return "ND means not detected; write the number you want to use, such as 0"
	}
	return "there is no number here; write one in digits, such as 12 ppm NO3-N"
}

// afterNumber gives the sentence for what may not follow the digits of a number.
func afterNumber(digits, rest string) string {
	if rest == "" {
		return ""
	}
	trimmed := strings.TrimLeftFunc(rest, unicode.IsSpace)
	switch {
	case (rest[0] == 'x' || rest[0] == 'X') && digits == "0":
		return "write the number in ordinary digits, such as 12 or 0.5"
	case len(rest) > 1 && strings.ContainsAny(rest[:1], "eE") && strings.ContainsAny(rest[1:2], "+-0123456789"):
		return "write the number out in full, such as 1,200 or 0.001"
	case rest[0] == '/' && len(rest) > 1 && isDigit(rune(rest[1])):
		return "write a fraction as a decimal, such as 0.5 for 1/2"
	case trimmed != "" && isNumberRune(rune(trimmed[0])):
		return "two numbers are side by side; write one, such as 1,200 or 1.5"
	}
	return ""
}
