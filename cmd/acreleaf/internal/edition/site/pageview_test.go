package site

import (
	"strings"
	"testing"
	"testing/fstest"
)

// A page in another language leads to the home page of that language, be it written or made.
func TestHomeOfATranslation(t *testing.T) {
	files := content(map[string]string{"a": guide("First guide", 1, "")})
	files["site.yaml"] = &fstest.MapFile{Data: []byte("office: Test Row Orchard Office\nlanguage: [en, es]\n")}
	files["guides/primera.md"] = spanish("title: La primera\ntranslates: a.md")
	for _, title := range []string{"Test Row Orchard Office", "La fila"} {
		made := mustMake(t, files)
		if text := made["es/guides/primera/index.html"]; !strings.Contains(text, `<p class="office"><a href="../../">`) {
			t.Errorf("the page does not lead to its home page:\n%s", text)
		}
		home := made["es/index.html"]
		for _, want := range []string{"<h1>" + title, `<a href="guides/primera/">La primera</a>`,
			`<a href="../" hreflang="en"`} {
			if !strings.Contains(home, want) {
				t.Errorf("the home page has no %s:\n%s", want, home)
			}
		}
		if !strings.Contains(made["index.html"], `<a href="es/" hreflang="es"`) {
			t.Errorf("the main home page does not lead to it:\n%s", made["index.html"])
		}
		files["inicio.md"] = spanish("title: La fila\ntranslates: home.md")
	}
}

// Workshops are counted by themselves and lessons in their course, and say what they are.
func TestKindOfAPage(t *testing.T) {
	files := content(map[string]string{"a": guide("First guide", 1, "")})
	files["workshops/day.md"] = &fstest.MapFile{Data: []byte(guide("Field day", 2, ""))}
	files["courses/first/buds.md"] = &fstest.MapFile{Data: []byte(guide("Buds", 3, ""))}
	made := mustMake(t, files)
	for name, says := range map[string]string{"guides/a": "Guide 1", "workshops/day": "Workshop 2",
		"courses/first/buds": "Lesson 1 of 1"} {
		if !strings.Contains(made[name+"/index.html"], "<li>"+says+"</li>") {
			t.Errorf("%s does not say %q:\n%s", name, says, made[name+"/index.html"])
		}
	}
}
