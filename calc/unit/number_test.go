package unit

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"
)

func TestParseNumber(t *testing.T) {
	cases := map[string]float64{
		"12": 12, " 12 ": 12, "0.5": 0.5, ".5": 0.5, "5.": 5, "1,200": 1200, "12,345,678.9": 12345678.9, "-3": -3, "−3": -3,
		"007": 7, "1200": 1200, "0": 0, "1.23 × 10^15": 1.23e15, "-1 × 10^-7": -1e-7, "9007199254740993": 9007199254740992,
		strings.Repeat("9", 300): decimal(strings.Repeat("9", 300)), "0." + strings.Repeat("0", 400) + "1": 0,
	}
	for text, want := range cases {
		if got, err := ParseNumber(text); err != nil || got != want {
			t.Errorf("ParseNumber(%q) is %v, %v; want %v", text, got, err, want)
		}
	}
	if got, err := ParseNumber("-0"); err != nil || !math.Signbit(got) {
		t.Errorf("ParseNumber(-0) is %v, %v", got, err)
	}
}

func TestBadNumbers(t *testing.T) {
	cases := map[string]string{
		"":           "nothing is written here; write a number with its unit, such as 12 ppm NO3-N",
		"1,2":        `"1,2": a comma parts thousands, as in 1,200; for a decimal write a point, as in 1.2`,
		",200":       `",200": a comma parts thousands, as in 1,200; for a decimal write a point, as in 0.200`,
		"1200,000":   `"1200,000": a comma parts thousands, as in 1,200; for a decimal write a point, as in 1200.000`,
		"1,2000":     `"1,2000": a comma parts thousands, as in 1,200; for a decimal write a point, as in 1.2000`,
		"1,":         `"1,": a comma parts thousands, as in 1,200; for a decimal write a point, as in 1.0`,
		"1.2.3":      `"1.2.3": a number has one decimal point; write it such as 1.2`,
		"1.2,3":      `"1.2,3": commas part thousands, before the decimal point only; write it such as 1,200.5`,
		".":          `".": there is no digit in this number; write it such as 12 or 0.5`,
		"1 200":      `"1 200": write the number alone, in digits, such as 12 or 0.5`,
		"12 ppm":     `"12 ppm": write the number alone, in digits, such as 12 or 0.5`,
		"1e5":        `"1e5": write the number alone, in digits, such as 12 or 0.5`,
		"0x10":       `"0x10": write the number alone, in digits, such as 12 or 0.5`,
		"1_000":      `"1_000": write the number alone, in digits, such as 12 or 0.5`,
		"NaN":        `"NaN": there is no number here; write one in digits, such as 12 ppm NO3-N`,
		"Infinity":   `"Infinity": there is no number here; write one in digits, such as 12 ppm NO3-N`,
		"--5":        `"--5": there is no number here; write one in digits, such as 12 ppm NO3-N`,
		"- 5":        `"- 5": there is no number here; write one in digits, such as 12 ppm NO3-N`,
		"+5":         `"+5": there is no number here; write one in digits, such as 12 ppm NO3-N`,
		"5-":         `"5-": write the number alone, in digits, such as 12 or 0.5`,
		"٣":          `"٣": there is no number here; write one in digits, such as 12 ppm NO3-N`,
		"<5":         `"<5": a lab writes < for less than; write the number you want to use, such as 0`,
		"1 × 10^−3":  `"1 × 10^−3": write the number alone, in digits, such as 12 or 0.5`,
		"1 × 10^":    `"1 × 10^": write the number alone, in digits, such as 12 or 0.5`,
		"1 × 10^999": `"1 × 10^999": this number is too large; write a smaller one`,
	}
	for text, want := range cases {
		got, err := ParseNumber(text)
		var e *Error
		if !errors.As(err, &e) || e.Message != want {
			t.Errorf("ParseNumber(%q) is %v and says\n %v, want\n %s", text, got, err, want)
		}
	}
}

// TestLongNumberIsQuotedInPart: a text of any length ends in a sentence of ordinary length.
func TestLongNumberIsQuotedInPart(t *testing.T) {
	_, err := ParseNumber(strings.Repeat("9", 1_000_000))
	want := strconv.Quote(strings.Repeat("9", 60)+"…") + ": this number is too large; write a smaller one"
	if err == nil || err.Error() != want {
		t.Errorf("it says %.200v, want %s", err, want)
	}
}

// The numeric values of these signs in the Unicode Character Database.
func TestFractionSigns(t *testing.T) {
	parts := map[int][]rune{2: []rune("½"), 3: []rune("⅓⅔"), 4: []rune("¼ ¾"), 5: []rune("⅕⅖⅗⅘"), 6: []rune("⅙   ⅚"),
		8: []rune("⅛ ⅜ ⅝ ⅞")}
	for lower, signs := range parts {
		for i, sign := range signs {
			if want := float64(i+1) / float64(lower); sign != ' ' && FractionSign(sign) != want {
				t.Errorf("%c is %v, want %v", sign, FractionSign(sign), want)
			}
		}
	}
}

// A comma that parts thousands stays, and so does one in a number that is none.
func TestDecimalCommasAsPoints(t *testing.T) {
	for text, want := range map[string]string{
		"": "", "kg": "kg", "12,5": "12.5", "12,5 kg/ha": "12.5 kg/ha", "de 3,25 a 4,75 lb": "de 3.25 a 4.75 lb",
		"1,200": "1,200", "1,234,567": "1,234,567", "0,125": "0.125", "1,2000": "1.2000", "1200,000": "1200.000",
		"1.200,5": "1.200,5", "1,200.5": "1,200.5", ",5": ",5", "5,": "5,", "a, b": "a, b", "12,5.": "12.5.",
		"12,5, 3": "12.5, 3",
	} {
		if got := PointDecimals(text); got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
}
