package site

import (
	"strings"
	"testing"
	"testing/fstest"
)

// The pages of the manual lead to each other and to no guide; each lists its parts, and is no guide of the season.
func TestManual(t *testing.T) {
	files := content(map[string]string{"a": guide("First guide", 1, ""), "b": guide("Second guide", 3, "")})
	const body = "\n## One part\n\n### Within it\n\n## Another part\n"
	files["manual/start.md"] = &fstest.MapFile{Data: []byte(guide("Start", 1, body))}
	files["manual/text.md"] = &fstest.MapFile{Data: []byte(guide("Text", 2, ""))}
	made := mustMake(t, files)
	start, text := made["manual/start/index.html"], made["manual/text/index.html"]
	for _, want := range []string{
		`<a href="#one-part">One part</a>`, `<a href="#another-part">Another part</a>`, "manual, page 1",
		`<a rel="next" href="../text/">`,
	} {
		if !strings.Contains(start, want) {
			t.Errorf("the first page lacks %s:\n%s", want, start)
		}
	}
	if strings.Contains(start, `<a href="#within-it">Within`) {
		t.Error("a part of a part is among the contents")
	}
	if strings.Contains(text, `class="contents"`) {
		t.Error("a page of one part lists it")
	}
	if !strings.Contains(text, `<a rel="prev" href="../start/">`) || strings.Contains(text+start, "guides/") {
		t.Error("the manual leads to the guides, or not back")
	}
	if a := made["guides/a/index.html"]; strings.Contains(a, "manual/") || !strings.Contains(a, `href="../b/"`) {
		t.Error("a guide leads into the manual")
	}
	home := made["index.html"]
	if strings.Contains(home, "manual/start/") || !strings.Contains(home, `<a href="manual/">`) {
		t.Error("the manual is in the season, or no way leads to it")
	}
}
