package render_test

import (
	"bytes"
	"io/fs"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"

	"acreleaf/cmd/acreleaf/internal/render"
)

func failNew(facts render.Site) error {
	_, err := render.New(themeFiles, facts)
	return err
}

// TestStyleIsWhole holds that every part of the style sheet is brought in, print last, and that nothing is fetched.
func TestStyleIsWhole(t *testing.T) {
	parts, err := fs.Glob(themeFiles, "style/*.css")
	if err != nil {
		t.Fatal(err)
	}
	entry := part(t, "acreleaf.css")
	for _, file := range parts {
		name := path.Base(file)
		// Those of exercises, of courses, of a block and of drawings are for the pages that have one, and that of handouts
		// is in their own pages.
		own := []string{"acreleaf.css", "practice.css", "course.css", "wall.css",
			"block.css", "drawing.css", "handout.css"}
		if !slices.Contains(own, name) && !strings.Contains(entry, `@import "`+name+`";`) {
			t.Errorf("acreleaf.css does not bring in %s", name)
		}
		if text := part(t, name); strings.Contains(text, "url(") || strings.Contains(text, "@font-face") {
			t.Errorf("%s fetches something", name)
		}
	}
	if !strings.HasSuffix(strings.TrimSpace(entry), `@import "print.css";`) {
		t.Error("print.css must come last: it overrides the other parts")
	}
}

// The fixture's guide is denser than most: two worksheets, a reckoner and every signal word in one page.
const (
	mostStyle = 10_000 // bytes of brotli
	mostGuide = 13_000 // bytes of brotli, HTML and style together
)

var comment = regexp.MustCompile(`(?s)/\*.*?\*/`)

// TestWeight holds the page and its style to the first flight of a slow connection.
func TestWeight(t *testing.T) {
	sent := comment.ReplaceAllString(style(t), "") // as the bundle has it, which takes out more
	css, html := packed(t, []byte(sent)), packed(t, pages(t)["guides/soil/index.html"])
	t.Logf("brotli: style %d, guide %d bytes", css, html)
	if css > mostStyle {
		t.Errorf("the style is %d bytes of brotli, more than %d", css, mostStyle)
	}
	if css+html > mostGuide {
		t.Errorf("guide and style are %d bytes of brotli, more than %d", css+html, mostGuide)
	}
}

func packed(t *testing.T, text []byte) int {
	t.Helper()
	var b bytes.Buffer
	w := brotli.NewWriterLevel(&b, brotli.BestCompression)
	if _, err := w.Write(text); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Len()
}
