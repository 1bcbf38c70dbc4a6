package nitrogen_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/sheet"
)

// entered reads what a grower would write, as it is written: gallons stay gallons, and a range a range.
func entered(t testing.TB, s *sheet.Sheet, givens ...string) map[string]sheet.Entry {
	t.Helper()
	entries := map[string]sheet.Entry{}
	for _, text := range givens {
		name, quantity, _ := strings.Cut(text, "=")
		given := s.FindGiven(name)
		if given == nil {
			t.Fatalf("%s has no given %q", s.Name, name)
		}
		entry, err := given.Read(quantity)
		if err != nil {
			t.Fatalf("%s, %s: %v", s.Name, text, err)
		}
		entries[name] = entry
	}
	return entries
}

// enter works a sheet from what a grower would write, as it is written.
func enter(t testing.TB, s *sheet.Sheet, givens ...string) sheet.Outcome {
	t.Helper()
	o, err := sheet.NewBench(s).Work(entered(t, s, givens...))
	if err != nil {
		t.Fatalf("%s of %q: %v", s.Name, givens, err)
	}
	return o
}

// refusedWith wants a sheet to give no answer, and to say why in these sentences.
func refusedWith(t testing.TB, s *sheet.Sheet, givens []string, want ...string) {
	t.Helper()
	_, err := sheet.NewBench(s).Work(entered(t, s, givens...))
	var refused *sheet.Refused
	if !errors.As(err, &refused) || !slices.Equal(refused.Sentences, want) {
		t.Errorf("%s of %q: %v, want %q", s.Name, givens, err, want)
	}
}
