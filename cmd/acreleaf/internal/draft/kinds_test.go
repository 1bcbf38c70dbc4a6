package draft

import (
	"io/fs"
	"path"
	"reflect"
	"regexp"
	"testing"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/page"
)

// Each kind that is drafted has its pattern in every language, and no pattern is left over.
func TestPatternsOfKinds(t *testing.T) {
	wanted := map[string]bool{}
	for k := range kind.All() {
		if pattern := k.Row().Pattern; pattern != "" {
			wanted[pattern] = true
		}
	}
	for language := range allSentences {
		files, err := fs.ReadDir(patterns, path.Join("patterns", language))
		if err != nil {
			t.Fatal(err)
		}
		for name := range wanted {
			if _, err := fs.Stat(patterns, path.Join("patterns", language, name)); err != nil {
				t.Errorf("there is no pattern %s in %s", name, language)
			}
		}
		for _, f := range files {
			if !wanted[f.Name()] {
				t.Errorf("no kind begins as patterns/%s/%s", language, f.Name())
			}
		}
	}
}

// Every sentence of a draft is there in each language, and is another in each.
func TestSentencesOfEachLanguage(t *testing.T) {
	english := reflect.ValueOf(allSentences["en"])
	for language, list := range allSentences {
		own := reflect.ValueOf(list)
		for i := range own.NumField() {
			text := own.Field(i).String()
			if text == "" || language != "en" && text == english.Field(i).String() {
				t.Errorf("%s in %s is %q", own.Type().Field(i).Name, language, text)
			}
		}
		if marks := page.MarksOf(language); language != "en" && marks == page.MarksOf("en") {
			t.Errorf("the marks of %s are English", language)
		}
	}
}

// english finds what only an English text has. "To", "of" and "in" are words of what authors type, or units.
var english = regexp.MustCompile(`(?i)(?:^|[^-\pL])(?:the|and|with|this|that|your|write|translate)\b`)

// A draft in Spanish has no English word in it, of each kind of page and with each calculation.
func TestSpanishDraftsAreSpanish(t *testing.T) {
	content := sample(t)
	look := func(name, text string) {
		for _, found := range english.FindAllStringIndex(text, -1) {
			t.Errorf("%s has %q: …%s", name, text[found[0]:found[1]], text[max(0, found[0]-60):found[1]])
		}
	}
	for k := range kind.All() {
		if row := k.Row(); row.Pattern != "" {
			folder := row.Folder
			if row.Folder == "courses" {
				folder += "/nueva"
			}
			for _, with := range append([]*sheet.Sheet{nil}, calc.Standard().All()...) {
				r := Request{Page: folder + "/vacia.md", Language: "es"}
				if with != nil {
					r.Page, r.With = folder+"/con-"+with.Name+".md", []*sheet.Sheet{with}
				}
				look(r.Page, ask(t, content, r))
			}
		}
	}
	look("48-lb", ask(t, content, Request{Page: "guides/48-lb.md", Language: "es"}))
}
