package mutate

import (
	"context"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

const tiny = `package tiny

import "strings"

const week = 7

// Larger is the larger of the two.
func Larger(a, b int) int {
	if a > b {
		return a
	}
	return b
}

// Days counts the days of weeks; there are none below nothing.
func Days(weeks int) int {
	if weeks < 0 && weeks > -100 {
		return 0
	}
	days := weeks
	days *= week
	return days
}

// Call is a name and a mark.
func Call(name string) string { return strings.TrimSpace(name) + "!" }

// First is the place of the first of its kind.
func First(all []int, one int) int {
search:
	for i, n := range all {
		switch n {
		case one:
			return i
		case 9:
			break search
		}
	}
	panic("none")
}
`

func TestFindListsWhatMayBeChanged(t *testing.T) {
	found, err := inFile("tiny/tiny.go", []byte(tiny))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, m := range found {
		got = append(got, m.Within+": "+m.Was+" → "+m.Is)
	}
	want := []string{
		"week: 7 → 8",
		"Larger: a > b → false && (a > b)", "Larger: > → >=", "Larger: > → <=",
		"Days: weeks < 0 && weeks > -100 → false && (weeks < 0 && weeks > -100)",
		"Days: weeks < 0 && → ", "Days:  && weeks > -100 → ",
		"Days: < → <=", "Days: < → >=", "Days: 0 → 1", "Days: > → >=", "Days: > → <=", "Days: - → ", "Days: 100 → 101",
		"Days: 0 → 1", "Days: days *= week → ", "First: 9 → 0", `First: panic("none") → `,
	}
	for i := range got {
		got[i] = strings.ReplaceAll(got[i], "  →", " →")
	}
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if m := found[1]; m.Line != 9 || m.Source != "if a > b {" {
		t.Errorf("%v stands on line %d: %q", m, m.Line, m.Source)
	}
}

// A change that the tests see is killed, one that means the same survives, and one that is no Go is told apart.
func TestFatesOfMutants(t *testing.T) {
	root := t.TempDir()
	for name, text := range map[string]string{
		"go.mod": "module tiny\n\ngo 1.26\n", "tiny/tiny.go": tiny,
		"tiny/tiny_test.go": `package tiny

import "testing"

func TestTiny(t *testing.T) {
	if Larger(1, 2) != 2 || Larger(2, 1) != 2 || Days(2) != 14 || Call("a ") != "a!" ||
		First([]int{4, 3, 3}, 3) != 1 {
		t.Error("wrong")
	}
}
`,
	} {
		if err := os.MkdirAll(filepath.Join(root, "tiny"), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(root, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	found, err := Find(root, "tiny")
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]Fate{"Larger: > → >=": Survived, "Larger: > → <=": Killed, "Days: days *= week → ": Killed,
		"week: 7 → 8": Killed, "First: 9 → 0": Survived, "First: panic(\"none\") → ": Unmade}
	var chosen []Mutant
	for _, m := range found {
		if _, is := want[m.Within+": "+m.Was+" → "+m.Is]; is {
			chosen = append(chosen, m)
		}
	}
	broken, untyped := chosen[1], chosen[1] // of "Larger"
	broken.Is, untyped.Is = "no go", `+ "b" >`
	name := func(m Mutant) string { return m.Within + ": " + m.Was + " → " + m.Is }
	want[name(broken)], want[name(untyped)] = Unmade, Unmade
	trial, got := &Trial{Root: root, Package: "tiny", Jobs: 2}, map[string]Fate{}
	err = trial.Run(context.Background(), append(chosen, broken, untyped), func(m Mutant, f Fate) { got[name(m)] = f })
	if err != nil || !maps.Equal(got, want) {
		t.Errorf("the fates are %v, want %v: %v", got, want, err)
	}
	if text, err := os.ReadFile(filepath.Join(root, "tiny", "tiny.go")); err != nil || string(text) != tiny {
		t.Error("the file itself was changed")
	}
}

// The time of a test is its own and that of its parts, which run side by side after it.
func TestSlowTestsAreKnown(t *testing.T) {
	const said = "--- PASS: TestQuick (0.01s)\n--- PASS: TestParts (0.00s)\n    --- PASS: TestParts/one (2.50s)\n" +
		"    --- PASS: TestParts/two (0.50s)\n--- SKIP: TestNone (9.00s)\n--- PASS: TestLong (1.00s)\nPASS\n"
	if got := slowTests(said); got != "TestLong|TestParts" {
		t.Errorf("got %q", got)
	}
}

func TestLateIsToldFromKilled(t *testing.T) {
	for said, want := range map[string]Fate{"panic: test timed out after 20s\n": Late, "--- FAIL: TestTiny\n": Killed,
		"*** Test killed with quit: ran too long (21s).\n": Late} {
		if got := failed([]byte(said)); got != want {
			t.Errorf("%q is %d, want %d", said, got, want)
		}
	}
}

// A test binary whose variables are never made does not come to keep its own limit.
func TestOneThatNeverBeginsIsStopped(t *testing.T) {
	b := &batch{binary: filepath.Join(t.TempDir(), "never")}
	if err := os.WriteFile(b.binary, []byte("#!/bin/sh\nexec sleep 60\n"), 0o755); err != nil {
		t.Fatal(err)
	}
	fate, _, err := b.run(context.Background(), &Trial{Root: "."}, 1, 100*time.Millisecond-grace)
	if fate != Late || err != nil {
		t.Errorf("its fate is %d, %v", fate, err)
	}
}

func TestReadAccepted(t *testing.T) {
	name := filepath.Join(t.TempDir(), "survivors.txt")
	read := func(text string) (Accepted, error) {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		return ReadAccepted(name)
	}
	got, err := read("# for people\n\na/b.go | F | x | y → z\n  It means\n  the same.\n")
	if err != nil || len(got) != 1 || got["a/b.go | F | x | y → z"] != "It means the same. " {
		t.Errorf("%q, %v", got, err)
	}
	for text, want := range map[string]string{
		"  lost\n":      "survivors.txt:1: a reason stands below",
		"a\nb\n  why\n": "survivors.txt:2: the survivor above has no reason",
		"a\n":           "the last survivor has no reason",
	} {
		if _, err := read(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q gives %v, want %q", text, err, want)
		}
	}
	if none, err := ReadAccepted(name + "-not-there"); err != nil || len(none) != 0 {
		t.Errorf("no file gives %v, %v", none, err)
	}
}
