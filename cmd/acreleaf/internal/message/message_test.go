package message

import (
	"math/rand/v2"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
)

func TestSortDoesNotDependOnTheOrderBefore(t *testing.T) {
	a, b := &Source{Name: "a.md"}, &Source{Name: "b.md"}
	want := List{
		{Source: a, Span: Span{1, 2}, ID: "a"},
		{Source: a, Span: Span{1, 3}, ID: "a"},
		{Source: a, Span: Span{1, 3}, Level: Advice},
		{Source: a, Span: Span{9, 9}},
		{Source: b, Span: Span{0, 1}, ID: "a", Text: "z"},
		{Source: b, Span: Span{0, 1}, ID: "b", Text: "a", Note: "a"},
		{Source: b, Span: Span{0, 1}, ID: "b", Text: "a", Note: "b"},
		{ID: "disk", Text: "no place"},
	}
	for range 100 {
		got := append(List(nil), want...)
		rand.Shuffle(len(got), func(i, j int) { got[i], got[j] = got[j], got[i] })
		Sort(got)
		if diff := cmp.Diff(want, got); diff != "" {
			t.Fatalf("sorted (-want +got):\n%s", diff)
		}
	}
}

func TestHasFault(t *testing.T) {
	if HasFault(nil) || HasFault(List{{Level: Advice}}) || !HasFault(List{{Level: Advice}, {}}) {
		t.Error("only a fault is a fault, and a message without a level is one")
	}
}

func TestNearest(t *testing.T) {
	keys := []string{"title", "summary", "language", "reviewed", "review-every", "crop", "order", "season", "glance"}
	for name, want := range map[string]string{
		"titel":          "title", // two swapped
		"tittle":         "title",
		"tite":           "title",
		"tilte":          "title",
		"Title":          "title",
		"sumary":         "summary",
		"summery":        "summary",
		"lang":           "language", // the start of it
		"review":         "reviewed",
		"review_every":   "review-every",
		"Review Every":   "review-every",
		"reviewed-every": "review-every",
		"oder":           "order",
		"season-2026":    "season",
		"author":         "",
		"x":              "",
		"":               "",
		"cr":             "",
		"weather":        "",
	} {
		got, ok := Nearest(name, keys)
		if got != want || ok != (want != "") {
			t.Errorf("%q: %q, %v, want %q", name, got, ok, want)
		}
	}
	if got, ok := Nearest("soil", nil); ok {
		t.Errorf("nothing is known, and %q is near", got)
	}
	for range 10 {
		known := []string{"noil", "boil", "foil"}
		rand.Shuffle(3, func(i, j int) { known[i], known[j] = known[j], known[i] })
		if got, _ := Nearest("soil", known); got != "boil" {
			t.Errorf("%q of %v: equal finds must go by the alphabet", got, known)
		}
	}
}

// A sentence that quotes a line of megabytes stays one that can be read, and every letter of it whole.
func TestPlaceShortens(t *testing.T) {
	for _, letter := range []string{"a", "é", "木", "🌱"} {
		long := "there is no \"" + strings.Repeat(letter, 1<<20) + "\" here"
		p := Place(List{{Text: long, Note: "short\n" + long}})[0]
		for _, got := range []string{p.Text, p.Note[1]} {
			if len(got) > 510 || !utf8.ValidString(got) || strings.Count(got, "…") != 1 ||
				!strings.HasPrefix(got, long[:300-300%len(letter)]) || !strings.HasSuffix(got, "\" here") {
				t.Errorf("%s: %d bytes: %s", letter, len(got), got)
			}
		}
		if p.Note[0] != "short" {
			t.Errorf("a short line is %q", p.Note[0])
		}
	}
}
