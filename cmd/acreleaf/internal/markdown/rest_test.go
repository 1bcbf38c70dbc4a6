package markdown

import (
	"bytes"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"acreleaf/cmd/acreleaf/internal/message"
)

// A document at rest prints as before: its blocks, figures, links and headings are found again by their places.
func TestRestChangesNothing(t *testing.T) {
	names, err := filepath.Glob("testdata/*.txtar")
	if err != nil || len(names) == 0 {
		t.Fatal("no files", err)
	}
	for _, name := range names {
		archive, err := txtar.ParseFile(name)
		if err != nil {
			t.Fatal(err)
		}
		doc, _ := Parse(&message.Source{Name: "a.md", Text: archive.Files[0].Data}, 0)
		var before, after bytes.Buffer
		_ = doc.HTML(&before, &plainFragments{}, &testWords) // the page is whole all the same
		doc.Rest()
		_ = doc.HTML(&after, &plainFragments{}, &testWords)
		if diff := cmp.Diff(before.String(), after.String()); diff != "" {
			t.Errorf("%s (-before +at rest):\n%s", name, diff)
		}
		if doc.root != nil {
			t.Errorf("%s: the document keeps its tree", name)
		}
	}
}
