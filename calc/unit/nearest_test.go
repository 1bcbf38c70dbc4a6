package unit

import (
	"slices"
	"strings"
	"testing"
)

// The counts of optimal string alignment: a letter more, less, changed or swapped with its neighbor, each place once.
// Each slip counts two here. That CA and ABC are 3 apart is an example of the literature on such counts (from memory).
func TestSlips(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"ab", "ba", 1}, {"ca", "abc", 3}, {"xb", "by", 2}, {"bx", "yb", 2}, {"", "abc", 3},
		{"abcd", "", 4}, {"abcd", "acbd", 1}, {"abcd", "badc", 2}, {"xab", "ba", 2}, {"ab", "xba", 2},
	} {
		if got := apart(c.a, c.b); got != 2*c.want {
			t.Errorf("%q and %q are %d apart, want %d", c.a, c.b, got, 2*c.want)
		}
	}
}

// Capitals are the smallest slip.
func TestCapitalsAreHalfASlip(t *testing.T) {
	if got := apart("LB", "lb"); got != 1 {
		t.Errorf("LB is %d apart from lb", got)
	}
	for word, known := range map[string]string{"uan32": "UAN-32", "PPN": "ppm", "ppm": "PPMM"} {
		if got := slipsBetween(word, known); got != 2 {
			t.Errorf("%s is %d apart from %s, want 2", word, got, known)
		}
	}
}

// A form of nitrogen is offered only where a sign that looks the same is in it: NO3 for N03, and never NO3 for NO4.
func TestNoFormIsOfferedForAnother(t *testing.T) {
	forms := []string{"NO3", "NO3-N", "NO2", "NO2-N", "NH4", "NH4-N", "NH3", "NH3-N", "urea", "urea-N"}
	for _, form := range forms {
		for _, slip := range []string{form + "x", "x" + form, form[:len(form)-1], form[:1] + "x" + form[2:]} {
			for _, near := range Near(slip) {
				if slices.Contains(forms, near) {
					t.Errorf("%s is offered for %s", near, slip)
				}
			}
		}
		if alike := strings.Replace(form, "O", "0", 1); alike != form && !slices.Contains(Near(alike), form) {
			t.Errorf("%s is not offered for %s, but %q", form, alike, Near(alike))
		}
	}
	for slip, want := range map[string]string{"CaCO33": "CaCO3", "P2O55": "P2O5", "gall": "gal"} {
		if !slices.Contains(Near(slip), want) {
			t.Errorf("%s is not offered for %s, but %q", want, slip, Near(slip))
		}
	}
}
