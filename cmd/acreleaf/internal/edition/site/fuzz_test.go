package site

import (
	"io/fs"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/book"
)

// FuzzMake presses a site with a page, and with settings, that nobody would write. The press has a site or messages,
// never both and never neither, and no page makes the program fail.
func FuzzMake(f *testing.F) {
	good := guide("Soil", 1, "```worksheet soil\ncalculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\ndepth: 12 in\n```\n\n"+
		"Here are [48 lb/ac](worked:soil.nitrogen), and [2 lb/ac](source:row-book \"for each\"). [Home](../home.md)\n")
	f.Add("guides/a.md", good, office)
	f.Add("workshops/a.md", good, office+"url: https://example.org/\n")
	f.Add("lessons/a.md", good, office+"language: es\n")
	f.Add("courses/a.md", strings.Replace(good, "order: 1", "lessons: [../guides/b.md]", 1), office)
	f.Add("calculations/a.md", "---\ntitle: A\n---\n```calculation a\ntitle: A\n```\n", office)
	f.Add("pages/a.es.md", good, office)
	f.Fuzz(func(t *testing.T, name, text, settings string) {
		files := content(map[string]string{"b": good})
		if !strings.HasSuffix(name, ".md") || len(name) > 100 || !fs.ValidPath(name) { // no system has other names
			name = "guides/a.md"
		}
		files["site.yaml"].Data = []byte(settings)
		if _, there := files[name]; !there {
			entry := *files["home.md"]
			entry.Data = []byte(text)
			files[name] = &entry
		}
		made, _, messages := collect(book.Options{Content: files, Name: "content"})
		if made == nil && len(messages) == 0 {
			t.Errorf("%q: no site, and no message", text)
		}
		for _, m := range messages {
			if m.ID == "page-failed" || m.ID == "pages-failed" || m.Text == "" || m.ID == "" {
				t.Errorf("%q: %s", text, m.Text)
			}
		}
	})
}
