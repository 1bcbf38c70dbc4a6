package book

import (
	"testing"
	"testing/fstest"

	"acreleaf/cmd/acreleaf/internal/proof"
)

// A check counts what was read, and gives every message at once.
func TestCheck(t *testing.T) {
	files := fstest.MapFS{
		"site.yaml": {Data: []byte("office: Test Row Orchard Office\n")},
		"sources.yaml": {Data: []byte("row-book:\n  title: The book of rows\n  kind: memory\n" +
			"  figures:\n    2 lb N/ac: each\n")},
		"home.md": {Data: []byte("---\ntitle: Test Row\nsummary: Guides.\n---\n")},
		"guides/soil.md": {Data: []byte("---\ntitle: Soil\nsummary: What is in it.\n---\n" +
			"```worksheet soil\ncalculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\ndepth: 12 in\n```\n\n" +
			"[48 lb/ac](worked:soil.nitrogen) of [12 ppm](worked:soil.nitrate), [2 lb/ac](source:row-book).\n")},
	}
	r := Check(Options{Content: files, Name: "content"}, newPlain, proof.Rules{})
	if len(r.Messages) > 0 || r.Pages != 2 || r.Worked != 2 || r.Sourced != 1 {
		t.Errorf("%+v", r)
	}

	files["guides/soil.md"].Data = []byte("---\ntitle: Soil\nsummary: What is in it.\n---\n" +
		"[48 lb/ac](worked:soil.nitrogen), [2 lb/ac](source:rowbook), [it](gone.md)\n")
	r = Check(Options{Content: files, Name: "content"}, newPlain, proof.Rules{})
	if len(r.Messages) != 3 || r.Pages != 2 || r.Worked != 1 || r.Sourced != 1 {
		t.Errorf("%+v", r)
	}
}
