package page

import (
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"acreleaf/cmd/acreleaf/internal/message"
)

func TestIntervals(t *testing.T) {
	for text, want := range map[string]Interval{
		"24 months": {Months: 24}, "1 month": {Months: 1}, "2 years": {Months: 24}, "90 days": {Days: 90},
		"6 weeks": {Days: 42}, "0 months": {}, "-3 months": {}, "24": {}, "months": {}, "2.5 years": {},
		"99999 days": {}, "24months": {}, "24 Months": {}, "a year": {},
	} {
		m, _, l := Split(&message.Source{Text: []byte("---\ntitle: a\nsummary: b\nreview-every: " + text + "\n---\n")})
		if m.ReviewEvery != want || message.HasFault(l) != (want == Interval{}) {
			t.Errorf("%s: %+v, want %+v\n%s", text, m.ReviewEvery, want, printed(l))
		}
	}
}

func TestDue(t *testing.T) {
	for _, test := range []struct {
		reviewed string
		every    Interval
		want     string
	}{
		{"2026-09-14", Interval{Months: 24}, "2028-09-14"},
		{"2026-01-31", Interval{Months: 1}, "2026-02-28"},
		{"2024-01-31", Interval{Months: 1}, "2024-02-29"},
		{"2024-02-29", Interval{Months: 12}, "2025-02-28"},
		{"2026-12-31", Interval{Months: 2}, "2027-02-28"},
		{"2026-12-31", Interval{Days: 1}, "2027-01-01"},
		{"2026-09-14", Interval{Days: 42}, "2026-10-26"},
	} {
		day, err := time.Parse(time.DateOnly, test.reviewed)
		if err != nil {
			t.Fatal(err)
		}
		due, ok := Metadata{Reviewed: day, ReviewEvery: test.every}.Due()
		if got := due.Format(time.DateOnly); got != test.want || !ok {
			t.Errorf("%s and %+v: %s, want %s", test.reviewed, test.every, got, test.want)
		}
	}
	for _, m := range []Metadata{{}, {Reviewed: time.Now()}, {ReviewEvery: Interval{Months: 1}}} {
		if due, ok := m.Due(); ok {
			t.Errorf("%+v is due on %v", m, due)
		}
	}
}

func TestCompareIsTheOrderOfTheSeason(t *testing.T) {
	type entry struct {
		a Address
		m Metadata
	}
	want := []entry{
		{Address{Name: "guides/z"}, Metadata{Title: "Z", Ordered: true, Order: -1}},
		{Address{Name: "guides/y"}, Metadata{Title: "Y", Ordered: true}},
		{Address{Name: "guides/a"}, Metadata{Title: "A", Ordered: true, Order: 2.5}},
		{Address{Name: "guides/b"}, Metadata{Title: "A", Ordered: true, Order: 2.5}},
		{Address{Name: "guides/b", Language: "es"}, Metadata{Title: "A", Ordered: true, Order: 2.5}},
		{Address{Name: "guides/d"}, Metadata{Title: "C"}},
		{Address{Name: "guides/c"}, Metadata{Title: "D"}},
	}
	for range 50 {
		got := slices.Clone(want)
		rand.Shuffle(len(got), func(i, j int) { got[i], got[j] = got[j], got[i] })
		slices.SortFunc(got, func(x, y entry) int { return Compare(x.a, x.m, y.a, y.m) })
		for i := range got {
			if got[i].a != want[i].a {
				t.Fatalf("place %d: %v, want %v", i, got[i].a, want[i].a)
			}
		}
	}
}
