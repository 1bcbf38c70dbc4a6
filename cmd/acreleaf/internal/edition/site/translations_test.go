package site

import (
	"strings"
	"testing"
	"testing/fstest"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/proof"
)

// spanish is a page in Spanish, with some lines of metadata.
func spanish(lines string) *fstest.MapFile {
	return &fstest.MapFile{Data: []byte("---\n" + lines + "\nsummary: Una.\nlanguage: es\n---\n")}
}

// twoTongues is a site in two languages.
func twoTongues(pages map[string]string) fstest.MapFS {
	files := content(pages)
	files["site.yaml"] = &fstest.MapFile{Data: []byte("office: Test Row Orchard Office\nlanguage: [en, es]\n")}
	return files
}

// The two pages lead to each other, whatever the names of their files.
func TestTwinsLeadToEachOther(t *testing.T) {
	files := twoTongues(map[string]string{"soil": guide("Soil", 1, ""), "water": guide("Water", 2, "")})
	files["guides/suelo.md"] = spanish("title: El suelo\ntranslates: soil.md")
	files["guides/helada.md"] = spanish("title: La helada")
	made := mustMake(t, files)
	for name, want := range map[string]string{
		"guides/soil":      `<a href="../../es/guides/suelo/" hreflang="es" lang="es">Español</a>`,
		"es/guides/suelo":  `<a href="../../../guides/soil/" hreflang="en" lang="en">English</a>`,
		"guides/water":     "",
		"es/guides/helada": "",
	} {
		text := made[name+"/index.html"]
		if text == "" || !strings.Contains(text, want) || want == "" && strings.Contains(text, "hreflang") {
			t.Errorf("%s has no %q:\n%s", name, want, text)
		}
	}
}

func TestWhatCannotBeATranslation(t *testing.T) {
	files := twoTongues(map[string]string{"soil": guide("Soil", 1, ""), "water": guide("Water", 2, "")})
	files["guides/suelo.md"] = spanish("title: El suelo\ntranslates: soil.md")
	for _, test := range []struct{ lines, want string }{
		{"translates: water.md", ""},
		{"translates: watr.md", "translates-unknown"},
		{"translates: ../home.md", "translates-folder"},
		{"translates: a.md", "translates-itself"},
		{"translates: soil.md", "translates-twice"},
		{"translates: suelo.md", "translates-translation"},
		{"translates: b.md", "translates-circle"},
		{"translates: helada.md", "translates-language"},
	} {
		delete(files, "guides/b.md")
		files["guides/a.md"] = spanish("title: Una\n" + test.lines)
		files["guides/helada.md"] = spanish("title: La helada")
		if strings.Contains(test.want, "circle") {
			files["guides/b.md"] = spanish("title: Otra\ntranslates: a.md")
		}
		var got []string
		for _, m := range book.Check(book.Options{Content: files, Name: "content"}, New, proof.Rules{}).Messages {
			got = append(got, m.ID)
			if m.Note == "" || m.Source == nil {
				t.Errorf("%s: %+v", test.lines, m)
			}
		}
		if strings.Join(got, " ") != test.want {
			t.Errorf("%s: %v, want %s", test.lines, got, test.want)
		}
	}
}

// A page in the main language is an original.
func TestOriginalTranslatesNothing(t *testing.T) {
	files := twoTongues(map[string]string{"water": guide("Water", 2, "")})
	files["guides/soil.md"] = &fstest.MapFile{
		Data: []byte("---\ntitle: Soil\nsummary: One.\ntranslates: water.md\n---\n")}
	messages := book.Check(book.Options{Content: files, Name: "content"}, New, proof.Rules{}).Messages
	if len(messages) != 1 || messages[0].ID != "translates-language" {
		t.Errorf("%+v", messages)
	}
}
