package unit

import (
	"math"
	"math/big"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"
)

func TestText(t *testing.T) {
	cases := map[float64]string{
		0: "0", 48: "48", 110: "110", 12.5: "12.5", 20.57142857: "20.6", 0.226613: "0.227", 0.2259: "0.226",
		1.235: "1.24", 2.675: "2.68", 1.005: "1.01", 0.12345: "0.123", 5: "5", 10: "10", 99.95: "100", 99.94: "99.9",
		999.4: "999", 999.5: "1,000", 1000: "1,000", 1234.5: "1,235", 27154.2857: "27,154", 2_000_000: "2,000,000",
		123456789.4: "123,456,789", -3.14159: "-3.14", -1234.5: "-1,235", 0.00012345: "0.000123", 0.000001: "0.000001",
		9.99e-7: "9.99 × 10^-7", 1e-7: "1 × 10^-7", 1e15: "1 × 10^15", 1.234e15: "1.23 × 10^15",
		9.999e20: "1 × 10^21", 999999999999999: "999,999,999,999,999", -1e20: "-1 × 10^20", 1.5: "1.5", 0.1 + 0.2: "0.3",
		14.545454545: "14.5", 141.42857: "141", 0.05: "0.05", 0.0500004: "0.05",
	}
	for v, want := range cases {
		if got := Text(v); got != want {
			t.Errorf("Text(%v) is %q, want %q", v, got, want)
		}
	}
	if got := Text(math.Copysign(0, -1)); got != "0" {
		t.Errorf("Text(-0) is %q", got)
	}
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if got := Text(v); got != "–" {
			t.Errorf("Text(%v) is %q", v, got)
		}
	}
}

// slowText works the text out with whole numbers of any size, as an independent check of Text.
func slowText(v float64) string {
	shortest, _ := new(big.Rat).SetString(strconv.FormatFloat(math.Abs(v), 'g', -1, 64))
	sign := ""
	if v < 0 {
		sign = "-"
	}
	exponent := int(math.Log10(math.Abs(v))) // of the first digit, or near it
	for shortest.Cmp(tenTo(exponent+1)) >= 0 {
		exponent++
	}
	for shortest.Cmp(tenTo(exponent)) < 0 {
		exponent--
	}
	large := math.Abs(v) >= 1e15 || math.Abs(v) < 1e-6
	place := exponent - 2 // of the last digit that is kept
	if !large {
		place = min(place, 0)
	}
	half := big.NewRat(1, 2)
	scaled := new(big.Rat).Quo(shortest, tenTo(place))
	scaled.Add(scaled, half)
	kept := new(big.Int).Quo(scaled.Num(), scaled.Denom())
	rounded := new(big.Rat).Mul(new(big.Rat).SetInt(kept), tenTo(place))
	if large {
		if rounded.Cmp(tenTo(exponent+1)) >= 0 {
			exponent++
		}
		return sign + trimZeros(rounded.Quo(rounded, tenTo(exponent)).FloatString(2)) + " × 10^" + strconv.Itoa(exponent)
	}
	whole, fraction, _ := strings.Cut(trimZeros(rounded.FloatString(max(1, -place))), ".")
	for at := len(whole) - 3; at > 0; at -= 3 {
		whole = whole[:at] + "," + whole[at:]
	}
	if fraction != "" {
		whole += "." + fraction
	}
	return sign + whole
}

func tenTo(power int) *big.Rat {
	ten := new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(max(power, -power))), nil))
	if power < 0 {
		ten.Inv(ten)
	}
	return ten
}

func trimZeros(text string) string {
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

func TestTextAgainstSlowOracle(t *testing.T) {
	for _, v := range vectorNumbers() {
		if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
			continue
		}
		if got, want := Text(v), slowText(v); got != want {
			t.Errorf("Text(%v) is %q, want %q", v, got, want)
		}
	}
}

// TestTextIsMonotone: a larger number never gets the text of a smaller one.
func TestTextIsMonotone(t *testing.T) {
	numbers := slices.DeleteFunc(vectorNumbers(), func(v float64) bool { return math.IsNaN(v) || math.IsInf(v, 0) })
	r := rand.New(rand.NewPCG(9, 10))
	for range 5000 {
		v := math.Pow(10, 30*r.Float64()-10)
		numbers = append(numbers, v, math.Nextafter(v, 0))
	}
	slices.Sort(numbers)
	last := math.Inf(-1)
	for _, v := range numbers {
		shown, err := ParseNumber(Text(v))
		if err != nil && math.Abs(v) < 1.795e308 { // rounded to three digits, the largest are past the end
			t.Fatalf("Text(%v) does not read back: %v", v, err)
		}
		if err != nil {
			continue
		}
		if shown < last {
			t.Fatalf("Text(%v) is %q, less than the text of a smaller number", v, Text(v))
		}
		last = shown
	}
}

// TestParseNumberReadsText: the number that a text shows is within half a unit of its last digit.
func TestParseNumberReadsText(t *testing.T) {
	for _, v := range vectorNumbers() {
		if math.IsNaN(v) || math.Abs(v) >= 1.795e308 {
			continue
		}
		shown, err := ParseNumber(Text(v))
		if err != nil {
			t.Errorf("Text(%v): %v", v, err)
			continue
		}
		if math.Abs(shown-v) > 0.005001*math.Abs(v)+math.SmallestNonzeroFloat64 {
			t.Errorf("Text(%v) is %q, which is %v", v, Text(v), shown)
		}
		if again, err := ParseNumber(Text(shown)); err != nil || again != shown {
			t.Errorf("%v is shown as %q, which is shown as %q", v, Text(v), Text(shown))
		}
	}
}

// A number that a person may have typed has few digits, and is neither tiny nor huge: from a millionth to below 10^15.
func TestFewDigits(t *testing.T) {
	for v, want := range map[float64]bool{
		1e-6: true, 9.9e-7: false, -1e-6: true, 1e14: true, 1e15: false, 123.45: true, 123.456: false, 0: false,
	} {
		if got := Few(v, 5); got != want {
			t.Errorf("%v has few digits: %v, want %v", v, got, want)
		}
	}
}
