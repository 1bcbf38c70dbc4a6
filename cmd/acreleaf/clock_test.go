package main

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// The clock of the computer is set back by a year between two presses: all that is there has times in the future, and
// what is saved now is older. Each press makes what is right now, and only that; the last site is the one that a press
// into an empty folder makes.
func TestTheClockGoesBackAYear(t *testing.T) {
	folder := t.TempDir()
	if err := os.CopyFS(folder, os.DirFS(filepath.Join("testdata", "site"))); err != nil {
		t.Fatal(err)
	}
	now := time.Now()
	nextYear, lastYear := now.AddDate(1, 0, 0), now.AddDate(-1, 0, 0)
	guide := filepath.Join(folder, "content", "guides", "water.md")
	text := string(readAll(t, guide))
	for _, step := range []struct {
		what    string
		do      func()
		written int    // how many files differ: with a page the list of its edition, and the worker that names it
		last    string // sentence of the guide
	}{
		{"a first press", func() {}, -1, ""},
		{"all is of next year", func() { dateAll(t, folder, nextYear) }, 0, ""},
		{"a save after the clock went back", func() { save(t, guide, text+"\nSaved now.\n", now) }, 3, "Saved now."},
		{"a save of the same size", func() { save(t, guide, text+"\nSaved NOW.\n", now) }, 3, "Saved NOW."},
		{"a page of the site was edited before the clock went back", func() {
			page := filepath.Join(folder, "public", "guides", "soil", "index.html")
			save(t, page, strings.Replace(string(readAll(t, page)), "Nitrogen", "nITROGEN", 1), nextYear)
		}, 1, "Saved NOW."},
		{"a backup of last year is restored", func() { save(t, guide, text, lastYear) }, 3, ""},
		{"all is of last year", func() { dateAll(t, folder, lastYear) }, 0, ""},
		{"a lock of next year was left", func() {
			save(t, filepath.Join(folder, ".acreleaf-lock-public"), fmt.Sprintf("acreleaf writes here: process 1 on %q "+
				"since %s\n", "packhouse", nextYear.Format(time.RFC3339)), nextYear)
			save(t, guide, text+"\nSaved beside a lock.\n", now)
		}, 3, "Saved beside a lock."},
	} {
		step.do()
		said, err := press(folder, "acreleaf")
		if err != nil {
			t.Fatalf("%s: %v\n%s", step.what, err, said)
		}
		want := fmt.Sprintf(" in public: %d files written, ", step.written)
		if step.written >= 0 && !strings.Contains(said, want) {
			t.Errorf("%s: %s", step.what, said)
		}
		page := string(readAll(t, filepath.Join(folder, "public", "guides", "water", "index.html")))
		if strings.Contains(page, "Saved ") != (step.last != "") || !strings.Contains(page, step.last) {
			t.Errorf("%s: the page has another text", step.what)
		}
	}
	anew := filepath.Join(folder, "anew")
	if err := os.CopyFS(filepath.Join(anew, "content"), os.DirFS(filepath.Join(folder, "content"))); err != nil {
		t.Fatal(err)
	}
	if said, err := press(anew, "acreleaf"); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	if got, want := bytesOf(t, filepath.Join(folder, "public")), bytesOf(t, filepath.Join(anew, "public")); got != want {
		t.Errorf("the site is\n%snot\n%s", got, want)
	}
}

func readAll(t *testing.T, name string) []byte {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// save writes a file that has a time.
func save(t *testing.T, name, text string, at time.Time) {
	t.Helper()
	if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Chtimes(name, at, at); err != nil {
		t.Fatal(err)
	}
}

// dateAll gives all in a folder a time.
func dateAll(t *testing.T, folder string, at time.Time) {
	t.Helper()
	if err := filepath.WalkDir(folder, func(name string, _ fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		return os.Chtimes(name, at, at)
	}); err != nil {
		t.Fatal(err)
	}
}

// bytesOf writes down what is in the files of a folder.
func bytesOf(t *testing.T, folder string) string {
	t.Helper()
	var lines strings.Builder
	for line := range strings.Lines(listing(t, folder)) {
		fields := strings.Fields(line)
		fmt.Fprintln(&lines, fields[:min(2, len(fields))]) // without the time
	}
	return lines.String()
}
