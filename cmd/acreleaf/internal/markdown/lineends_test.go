package markdown

import (
	"bytes"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"acreleaf/cmd/acreleaf/internal/message"
)

// TestLineEnds wants the same HTML of every example of CommonMark whichever line ends it is saved with.
func TestLineEnds(t *testing.T) {
	html := func(page string) string {
		doc, _ := Parse(&message.Source{Text: []byte(page)}, 0)
		var w bytes.Buffer
		if err := doc.HTML(&w, &plainFragments{}, &testWords); err != nil {
			t.Fatal(err)
		}
		return w.String()
	}
	for _, e := range examples(t) {
		want := html(e.Markdown)
		for _, end := range []string{"\r\n", "\r"} {
			if diff := cmp.Diff(want, html(strings.ReplaceAll(e.Markdown, "\n", end))); diff != "" {
				t.Errorf("example %d with %q:\n%s\n%s", e.Number, end, e.Markdown, diff)
			}
		}
	}
}

// TestBeforeDropping looks up every offset of a text with mixed line ends.
func TestBeforeDropping(t *testing.T) {
	text := "a\r\n\r\nbc\n\rd\r\r\n\r"
	unix, dropped := unixEnds([]byte(text))
	if got, want := string(unix), "a\n\nbc\n\nd\n\n\n"; got != want {
		t.Fatalf("%q, want %q", got, want)
	}
	for at, c := range unix {
		was := beforeDropping(at, dropped)
		if text[was] != c && text[was] != '\r' {
			t.Errorf("%q at %d was %q at %d", c, at, text[was], was)
		}
	}
	if got := beforeDropping(len(unix), dropped); got != len(text) {
		t.Errorf("the end was at %d, want %d", got, len(text))
	}
}
