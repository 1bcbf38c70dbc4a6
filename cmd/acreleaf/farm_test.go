package main

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"
)

// The home page of a farm. The demo's own leads to the manual, which is not copied.
const farmHome = "---\ntitle: All copies\nsummary: Guides for the year, many times over.\n---\n" +
	"Guides for the year, in the order of its work.\n"

// writeFarm writes a content folder with so many guides, or a few more: the demo's own, copied whole, each copy in a
// folder of its own. They are what authors write: linked worksheets, ranges, reckoners, passages. It gives their
// number.
func writeFarm(tb testing.TB, folder string, atLeast int) int {
	tb.Helper()
	must := func(err error) {
		tb.Helper()
		if err != nil {
			tb.Fatal(err)
		}
	}
	demo := filepath.Join("..", "..", "content")
	must(os.MkdirAll(folder, 0o755))
	for _, name := range []string{"site.yaml", "sources.yaml"} {
		text, err := os.ReadFile(filepath.Join(demo, name))
		must(err)
		must(os.WriteFile(filepath.Join(folder, name), text, 0o644))
	}
	must(os.WriteFile(filepath.Join(folder, "home.md"), []byte(farmHome), 0o644))
	guides, err := filepath.Glob(filepath.Join(demo, "guides", "*.md"))
	must(err)
	if len(guides) == 0 {
		tb.Fatal("the demo has no guides")
	}
	copies := (atLeast + len(guides) - 1) / len(guides)
	for i := range copies {
		to := filepath.Join(folder, "guides", fmt.Sprintf("copy-%d", i+1))
		must(os.CopyFS(to, os.DirFS(filepath.Join(demo, "guides"))))
	}
	return copies * len(guides)
}

// TestFarm presses what the benchmarks press: nobody runs those often, and a new rule of the proof may refuse it.
func TestFarm(t *testing.T) {
	folder := t.TempDir()
	guides := writeFarm(t, filepath.Join(folder, "content"), 20)
	if said, err := press(folder, "acreleaf"); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	made := 0
	for _, language := range []string{".", "es"} {
		pages, err := filepath.Glob(filepath.Join(folder, "public", language, "guides", "copy-*", "*", "index.html"))
		if err != nil {
			t.Fatal(err)
		}
		made += len(pages)
	}
	if made != guides {
		t.Errorf("%d guides became %d pages", guides, made)
	}
}
