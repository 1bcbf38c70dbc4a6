package main

import (
	"strings"
	"testing"

	"acreleaf/cmd/check/internal/mutate"
)

func TestStaleSurvivorsAreToldInOrder(t *testing.T) {
	var out strings.Builder
	m := &mutation{w: &out, trial: mutate.Trial{Package: "a/b"}, accepted: mutate.Accepted{
		"a/b/two.go | F | x | 1 → 2": "why", "a/b/one.go | F | x | 1 → 2": "why", "a/c/one.go | F | x | 1 → 2": "why",
		"a/b/one.go | F | x | 2 → 3": "why",
	}}
	m.tellStale([]mutate.Mutant{{File: "a/b/one.go", Within: "F", Source: "x", Was: "2", Is: "3"}})
	want := "gone      a/b/one.go | F | x | 1 → 2: take it out of cmd/check/survivors.txt\n" +
		"gone      a/b/two.go | F | x | 1 → 2: take it out of cmd/check/survivors.txt\n"
	if out.String() != want {
		t.Errorf("got\n%swant\n%s", out.String(), want)
	}
}
