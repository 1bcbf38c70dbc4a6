package unit

import "testing"

// Each row is a text that a sentence may have, what the number is worth, and how finely it is told.
func TestWritten(t *testing.T) {
	for _, c := range []struct {
		text        string
		value, step float64
		fine        bool
	}{
		{"12", 12, 1, true},
		{"12.50", 12.5, 0.01, true},
		{"1,200", 1200, 1, true},
		{"12,5", 12.5, 0.1, true},
		{"27\u202F154", 27154, 1, true},
		{"27\u00A0154,5", 27154.5, 0.1, true},
		{"1,20,0", 0, 0, false},
	} {
		n, ok := Written(c.text)
		if ok != c.fine || ok && (n.Value != c.value || n.Step != c.step || !n.Digits) {
			t.Errorf("%q: %v, %v", c.text, n, ok)
		}
	}
}

// A fraction before a unit may be any; where a day may be meant, only those that people part things by.
func TestFractionsOfUnits(t *testing.T) {
	for _, c := range []struct {
		text     string
		value    float64
		size     int
		anywhere bool
	}{
		{"½ oz", 0.5, 2, true},
		{"1/2 oz", 0.5, 3, true},
		{"1⁄4 oz", 0.25, 5, true},
		{"4/15 ac", 4. / 15, 4, false},
		{"3/2 lb", 1.5, 3, false},
		{"1/128 ac", 1. / 128, 5, false},
		{"4/20/2027", 0, 0, false},
		{"4/2027", 0, 0, false},
		{"0/2 lb", 0, 0, false},
		{"3/1 lb", 0, 0, false},
	} {
		n, size := LeadingFraction(c.text)
		if n.Value != c.value || size != c.size || size > 0 && (n.Digits || n.Step != FractionStep) {
			t.Errorf("%q: %v, %d bytes", c.text, n, size)
		}
		if _, size := fraction(c.text, isFraction); size > 0 != c.anywhere {
			t.Errorf("%q is read by itself: %d bytes", c.text, size)
		}
	}
}

// How finely a number is told goes with it, whatever form it has.
func TestParseNumbersTellsHowFinely(t *testing.T) {
	for _, c := range []struct {
		text      string
		low, high Number
	}{
		{"12.5 lb", Number{12.5, 0.1, true}, Number{12.5, 0.1, true}},
		{"3 to 4.25 oz", Number{3, 1, true}, Number{4.25, 0.01, true}},
		{"3.5 oz to 4 oz", Number{3.5, 0.1, true}, Number{4, 1, true}},
		{"2 1/2 to 3 lb", Number{2.5, FractionStep, false}, Number{3, 1, true}},
		{"-½ in", Number{-0.5, FractionStep, false}, Number{-0.5, FractionStep, false}},
		{"18' 6\"", Number{222, 1, true}, Number{222, 1, true}},
	} {
		low, high, _, err := ParseNumbers(c.text)
		if err != nil || low != c.low || high != c.high {
			t.Errorf("%q: %v to %v, %v", c.text, low, high, err)
		}
	}
	for _, text := range []string{"1 to 2 oz to 4 oz", "4 oz to 3 oz", "3 oz to 4 lb", "3 oz to 4 to 5 oz"} {
		if low, high, _, err := ParseNumbers(text); err == nil {
			t.Errorf("%q is taken: %v to %v", text, low, high)
		}
	}
}
