package unit

import (
	"errors"
	"testing"
)

func TestParseRange(t *testing.T) {
	cases := []struct {
		text      string
		low, high float64
		written   string
	}{
		{"3 to 4 oz N/tree", 3, 4, "3 to 4 oz N/tree"},
		{"3–4 oz N/tree", 3, 4, "3 to 4 oz N/tree"},
		{"3 – 4 oz N/tree", 3, 4, "3 to 4 oz N/tree"},
		{"3-4 oz N/tree", 3, 4, "3 to 4 oz N/tree"},
		{"3 oz N/tree", 3, 3, "3 oz N/tree"},
		{"3 to 3 oz N/tree", 3, 3, "3 oz N/tree"},
		{"1,000 to 2,500.5 lb/ac", 1000, 2500.5, "1,000 to 2,501 lb/ac"},
		{"$0.5 to $0.62/lb", 0.5, 0.62, "$0.50 to 0.62/lb"},
		{"$0.5 to 0.62/lb", 0.5, 0.62, "$0.50 to 0.62/lb"},
		{"-2 to 4 in", -2, 4, "-2 to 4 in"},
		{"25 to 35", 25, 35, "25 to 35"},
		{"3—4 oz N/tree", 3, 4, "3 to 4 oz N/tree"},
		{"3 − 4 oz N/tree", 3, 4, "3 to 4 oz N/tree"},
		{"3‑4 oz N/tree", 3, 4, "3 to 4 oz N/tree"},
		{"3 a 4 oz N/tree", 3, 4, "3 to 4 oz N/tree"},
		{"3 oz to 4 oz", 3, 4, "3 to 4 oz"},
		{"18' 6\"", 222, 222, "222 in"},
		{"5 ft 6 in", 66, 66, "66 in"},
		{"½ to 1½ in", 0.5, 1.5, "0.5 to 1.5 in"},
	}
	for _, c := range cases {
		r, err := ParseRange(c.text)
		if err != nil {
			t.Errorf("ParseRange(%q): %v", c.text, err)
			continue
		}
		if r.Low != c.low || r.High != c.high || r.String() != c.written {
			t.Errorf("ParseRange(%q) is %v to %v, written %q", c.text, r.Low, r.High, r)
		}
	}
}

func TestBadRanges(t *testing.T) {
	cases := []struct{ text, message string }{
		{"4 to 3 oz N/tree", `"4 to 3 oz N/tree": the lower number goes first; write 3 to 4`},
		{"3.5 to 3 oz", `"3.5 to 3 oz": the lower number goes first; write 3 to 3.5`},
		{"3 to", `"3 to": the second number is missing; write it, as in 3 to 4 oz N/tree`},
		{"3 to oz", `"3 to oz": there is no number here; write one in digits, such as 12 ppm NO3-N`},
		{"3 oz to 4 lb", `"3 oz to 4 lb": the unit goes once, after both numbers, as in 3 to 4 oz N/tree`},
		{"3 oz–4 ozz", `"3 oz–4 ozz": the unit goes once, after both numbers, as in 3 to 4 oz N/tree`},
		{"", "nothing is written here; write a number with its unit, such as 12 ppm NO3-N"},
		{"3 to 4 ozz", `"ozz" is not a unit or a substance known here; did you mean "oz"?`},
		{"3 to 4,5 oz", `"3 to 4,5 oz": a comma parts thousands, as in 1,200; for a decimal write a point, as in 4.5`},
	}
	for _, c := range cases {
		r, err := ParseRange(c.text)
		var e *Error
		if !errors.As(err, &e) || e.Message != c.message {
			t.Errorf("ParseRange(%q) gives %v and says\n %v, want\n %s", c.text, r, err, c.message)
		}
	}
}

func TestRangeConverts(t *testing.T) {
	r, err := ParseRange("3 to 4 ft")
	if err != nil {
		t.Fatal(err)
	}
	if got, err := r.In(MustParse("in")); err != nil || got.String() != "36 to 48 in" {
		t.Errorf("it is %v, %v", got, err)
	}
}

// The ends of a range are told in the language of its unit.
func TestRangeInALanguage(t *testing.T) {
	r, err := ParseRange("3 to 4 oz N/tree")
	if err != nil {
		t.Fatal(err)
	}
	r.Unit = r.Unit.In("es")
	if got, want := r.String(), "3 a 4 oz N/árbol"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	back, err := ParseRange(r.String())
	if err != nil || back.Low != r.Low || back.High != r.High {
		t.Errorf("read back as %v (%v)", back, err)
	}
}
