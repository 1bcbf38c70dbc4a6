package main

import (
	"bytes"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"acreleaf/cmd/check/internal/step"
)

// noise gives n bytes that no compression makes smaller.
func noise(n int) []byte {
	random := rand.New(rand.NewPCG(1, 2))
	text := make([]byte, n)
	for i := range text {
		text[i] = byte(random.Uint32())
	}
	return text
}

func TestSizesHoldTheirLimits(t *testing.T) {
	const linked = `<link rel="stylesheet" href="../../assets/a.css"><link rel="stylesheet" href="../../assets/b.css">`
	plain := map[string][]byte{
		"guides/soil/index.html": []byte(linked + "<p>soil</p>"), "assets/a.css": []byte("p{}"),
		"assets/page.en.a.js": []byte("1"), "assets/ranges.a.js": []byte("2"), "assets/after.en.a.js": []byte("3"),
		"assets/drawing.en.a.js":  []byte("2"),
		"assets/practice.en.a.js": []byte("4"), "assets/wall.en.a.js": []byte("5"), "assets/course.en.a.js": []byte("6"),
		"assets/block.en.a.js": []byte("7"), "assets/blocks.en.a.js": []byte("7"),
		"assets/offline.en.a.js": []byte("7"), "worker.js": []byte("8"), "assets/language.a.js": []byte("9"),
		"assets/find.en.a.js": []byte("1"), "assets/paper.en.a.js": []byte("1"),
	}
	for _, c := range []struct {
		name, file string
		text       []byte
		fault      string
	}{
		{"all small", "other", nil, ""},
		{"a page at length but plain", "guides/soil/index.html",
			append([]byte(linked), bytes.Repeat([]byte("<p>soil</p>"), 20_000)...), ""},
		{"HTML", "guides/soil/index.html", noise(mostHTML + 1), "guides/soil HTML"},
		{"style", "assets/a.css", noise(mostStyle + 1), "style of guides/soil is"},
		{"two styles of a page", "assets/b.css", noise(mostStyle - 1), "style of guides/soil is"},
		{"a style of no page", "assets/c.css", noise(mostStyle + 1), ""},
		{"script", "assets/page.en.a.js", noise(mostScript + 1), "script page.en.a.js is"},
		{"the same in two languages", "assets/page.es.a.js", noise(mostScript - 100), ""},
		{"script for ranges", "assets/ranges.a.js", noise(mostRanges + 1), "script ranges.a.js is"},
		{"script for what comes after", "assets/after.es.a.js", noise(mostAfter + 1), "script after.es.a.js is"},
		{"script for exercises", "assets/practice.es.a.js", noise(mostPractice + 1), "script practice.es.a.js is"},
		{"script that takes a page along", "assets/paper.es.a.js", noise(mostPaper + 1), "script paper.es.a.js is"},
		{"script of courses", "assets/course.es.a.js", noise(mostCourse + 1), "script course.es.a.js is"},
		{"script for blocks", "assets/block.es.a.js", noise(mostBlocks + 1), "script block.es.a.js is"},
		{"page about a block", "block/index.html",
			append([]byte(`<p id="known">`), noise(mostBlockHTML)...), "block HTML is"},
		{"pictures that numbers draw", "guides/soil/index.html",
			slices.Concat([]byte(linked+`<figure class="drawing">`), noise(mostHTML), []byte("</figure>\n")), ""},
		{"script of the leader", "assets/wall.es.a.js", noise(mostWall + 1), "script wall.es.a.js is"},
		{"script that keeps pages", "assets/offline.es.a.js", noise(mostOffline + 1), "script offline.es.a.js is"},
		{"script of the index", "assets/find.es.a.js", noise(mostFind + 1), "script find.es.a.js is"},
		{"worker", "worker.js", noise(mostWorker + 1), "script worker.js is"},
		{"a page of exercises", "workshops/soil/index.html",
			append([]byte(`<p data-exercise="0">`), noise(mostHTML)...), "workshops/soil has exercises and no module"},
		{"another script", "assets/more.a.js", []byte("4"), "a script without a limit"},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := newBench(t.TempDir())
			lay(t, b.site, plain)
			lay(t, b.site, map[string][]byte{c.file: c.text})
			err := b.sizes(t.Context(), new(step.Record))
			if (err == nil) != (c.fault == "") || err != nil && !strings.Contains(err.Error(), c.fault) {
				t.Errorf("error %v, want %q", err, c.fault)
			}
		})
	}
	b := newBench(t.TempDir())
	lay(t, b.site, map[string][]byte{"index.html": nil})
	if err := b.sizes(t.Context(), new(step.Record)); err == nil {
		t.Error("a site without guides, style and script passed")
	}
}

func lay(t *testing.T, dir string, files map[string][]byte) {
	t.Helper()
	for name, text := range files {
		full := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(full), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(full, text, 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
