package unit

import (
	"errors"
	"math"
	"testing"
	"unicode/utf8"
)

// FuzzParse: whatever is written, Parse gives a unit that reads back as itself, or a sentence with a place.
func FuzzParse(f *testing.F) {
	for _, c := range goodUnits {
		f.Add(c.text)
	}
	for _, text := range []string{
		"ozz", "lb/ac N", "((lb", "lb9 lb9 lb9", "1/1/1", "/(/ac)", "(6 in)/(6 in)", "per per", "ppm N of N of soil",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		u, err := Parse(text)
		if err != nil {
			checkError(t, text, err)
			return
		}
		again, err := Parse(u.String())
		if err != nil || !again.Same(u) || again.String() != u.String() {
			t.Fatalf("%q is written %q, which reads as %q, %v", text, u, again, err)
		}
		if u.Dimension().String() == "" || !utf8.ValidString(u.String()) {
			t.Fatalf("%q is written %q and measures %q", text, u, u.Dimension())
		}
	})
}

// FuzzParseQuantity: whatever is written, the number is a finite one and the quantity reads back within its digits.
func FuzzParseQuantity(f *testing.F) {
	for _, text := range []string{
		"12 ppm NO3-N", "$0.62/lb", "-$5/ac", "1,200 lb", "1,2", "<5", "", "3 to 4 oz", "5/ac", "5 /6 in",
		"70%", "½", "1e5", "0x1", "−3 in", "9.995 $·$/lb", "1/2", "$", "12 (6 in)", "1.5 × 10^15 lb",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		q, err := ParseQuantity(text)
		if err != nil {
			checkError(t, text, err)
			return
		}
		if math.IsNaN(q.Value) || math.IsInf(q.Value, 0) {
			t.Fatalf("%q is %v", text, q.Value)
		}
		if math.Abs(q.Value) >= 1.795e308 {
			return // three digits of it may be past the largest number
		}
		within := 0.0051*math.Abs(q.Value) + 5e-324
		if q.Unit.IsMoney() {
			within += 0.005 // it is written in whole cents
		}
		again, err := ParseQuantity(q.String())
		if err != nil || !again.Unit.Same(q.Unit) || math.Abs(again.Value-q.Value) > within {
			t.Fatalf("%q is written %q, which reads as %v, %v", text, q, again, err)
		}
	})
}

// FuzzParseRange: the lower number is never above the higher, and a quantity is a range of one number.
func FuzzParseRange(f *testing.F) {
	for _, text := range []string{
		"3 to 4 oz N/tree", "3–4 oz", "$1-$2/lb", "4 to 3 in", "3 to", "-3--2 in", "3 oz to 4 oz",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r, err := ParseRange(text)
		if err != nil {
			checkError(t, text, err)
		} else if !(r.Low <= r.High) {
			t.Fatalf("%q goes from %v to %v", text, r.Low, r.High)
		}
		if q, err := ParseQuantity(text); err == nil && (r.Low != q.Value || r.High != q.Value || !r.Unit.Same(q.Unit)) {
			t.Fatalf("%q is the quantity %v but the range %v", text, q, r)
		}
	})
}

func checkError(t *testing.T, text string, err error) {
	t.Helper()
	var e *Error
	if !errors.As(err, &e) {
		t.Fatalf("%q: the error is a %T", text, err)
	}
	if e.Message == "" || e.Text != text || e.At < 0 || e.At > len(text) || len(e.Message) > 600 {
		t.Fatalf("%q: %+v", text, e)
	}
}
