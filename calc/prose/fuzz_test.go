package prose

import (
	"math"
	"testing"

	"acreleaf/calc/unit"
)

// Whatever a text holds, amounts are in order inside it, their numbers are numbers, and reading one by itself in the
// same language gives the same.
func FuzzFind(f *testing.F) {
	for _, s := range sentences {
		f.Add(s.text)
	}
	f.Add("$")
	f.Add("1/2/")
	f.Add("half of a")
	f.Add("\xff½ \u00A0 5\u00A0000 lb")
	wanted := unit.MustParse("lb N/ac")
	f.Fuzz(func(t *testing.T, text string) {
		for _, l := range []*Language{For("en"), For("es"), symbolsOnly} {
			end := 0
			for _, a := range l.Find(text) {
				if a.Start < end || a.End <= a.Start || a.End > len(text) {
					t.Fatalf("%q: %d to %d after %d", text, a.Start, a.End, end)
				}
				end = a.End
				if math.IsNaN(a.Low) || math.IsInf(a.High, 0) || a.Low > a.High || a.Unit.String() == "" {
					t.Fatalf("%q: %v", text, a)
				}
			}
		}
		for _, l := range []*Language{For("en"), For("es"), symbolsOnly} {
			for _, find := range []func(string) (Neighbor, bool){l.NumberBefore, l.NumberAfter} {
				if b, ok := find(text); ok && (b.From < 0 || b.To <= b.From || b.To > len(text)) {
					t.Errorf("%q: %v", text, b)
				}
			}
			if u := l.ColumnUnit(text); len(u) > len(text) {
				t.Errorf("%q: the unit %q", text, u)
			}
			if steps := Trace(text, l); len(steps) < len(l.Find(text)) {
				t.Errorf("%q: of the amounts only %q are told", text, steps)
			}
		}
		for _, read := range []func(string, string, unit.Unit) (Figure, error){For("en").ReadFigure, For("es").ReadFirst} {
			if f, err := read(text, text, wanted); err == nil && f.Fits && !(f.By.Apply(1) > 0) {
				t.Errorf("%q: by %v", text, f.By)
			}
		}
	})
}
