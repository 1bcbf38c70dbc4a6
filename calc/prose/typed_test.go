package prose_test

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"acreleaf/calc/prose"
	"acreleaf/calc/unit"
)

// TestTyped reads the list of what people type into a field. The page's script reads the same list, in Chromium.
func TestTyped(t *testing.T) {
	list, err := os.ReadFile("../unit/testdata/typed.txt")
	if err != nil {
		t.Fatal(err)
	}
	own := map[string]unit.Unit{"length": unit.MustParse("ft"), "money": unit.MustParse("$/ton")}
	read := 0
	for line := range strings.Lines(string(list)) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		parts := strings.Split(strings.TrimSuffix(line, "\n"), " | ")
		if len(parts) != 4 {
			t.Fatalf("%q has %d parts", line, len(parts))
		}
		read++
		language := prose.For(parts[0])
		want := parts[3]
		got := typed(language.PointDecimals(parts[2]), own[parts[1]])
		if got != want {
			t.Errorf("%q is read as %s, want %s", parts[2], got, want)
		}
	}
	if read < 50 {
		t.Errorf("the list has %d lines", read)
	}
}

// typed is what a text means in a unit, in digits; "-" for what is refused. Without a unit it is in that one.
func typed(text string, own unit.Unit) string {
	r, err := unit.ParseRange(text)
	if err == nil && !r.Unit.Same(own) && (r.Unit.String() == "" || r.Unit.String() == "$") {
		r.Unit = own
	}
	if err == nil {
		r, err = r.In(own)
	}
	if err != nil {
		return "-"
	}
	low, high := digits(r.Low), digits(r.High)
	if low == high {
		return low
	}
	return low + " to " + high
}

func digits(v float64) string { return fmt.Sprint(math.Round(v*1e13) / 1e13) }
