package render_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/render"
)

// What catalogues read is whole and true, whatever is in the texts, and only pages for growers have it.
func TestLearningResource(t *testing.T) {
	const hostile = `Water </script><script>alert("1")</script> & <!-- soil`
	r, err := render.New(themeFiles, render.Site{Language: "es", Office: hostile, Licence: "CC BY 4.0",
		Base: "https://example.org/g/"})
	if err != nil {
		t.Fatal(err)
	}
	for k := range kind.All() {
		var w bytes.Buffer
		r.Guide(&w, &render.Guide{Kind: k, Reviewed: "2026-09-14", Changed: "2026-09-14",
			Page: render.Page{Title: hostile, Summary: "Del informe.", Address: "guides/a/"}})
		_, data, is := strings.Cut(w.String(), `<script type="application/ld+json">`)
		if row := k.Row(); is != (row.Written && row.Folder != "" && row.Reader == kind.Grower) {
			t.Errorf("a page of the kind %s has it: %v", k, is)
		}
		if !is {
			continue
		}
		data, _, _ = strings.Cut(data, "</script>")
		var got map[string]any
		if err := json.Unmarshal([]byte(data), &got); err != nil || strings.Contains(data, "<") {
			t.Fatalf("%v: %s", err, data)
		}
		office := map[string]any{"@type": "Organization", "name": hostile}
		for key, want := range map[string]any{
			"@context": "https://schema.org", "@type": "LearningResource", "name": hostile, "description": "Del informe.",
			"inLanguage": "es", "dateModified": "2026-09-14", "learningResourceType": k.String(), "license": "CC BY 4.0",
			"url": "https://example.org/g/guides/a/",
		} {
			if got[key] != want {
				t.Errorf("%s is %v, want %v", key, got[key], want)
			}
		}
		for _, key := range []string{"author"} {
			if o, _ := got[key].(map[string]any); o["name"] != office["name"] || o["@type"] != office["@type"] {
				t.Errorf("the %s is %v", key, got[key])
			}
		}
		if got["educationalUse"] == nil {
			t.Error("it does not say what it is for")
		}
	}
}
