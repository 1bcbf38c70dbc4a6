package render_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io/fs"
	"path"
	"reflect"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"acreleaf/calc/words"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/wire"
	"acreleaf/theme"
)

var themeFiles fs.FS = theme.Files

// TestEveryLanguage reads the words of every language there is: no key missing, none unknown, every blank in its place.
func TestEveryLanguage(t *testing.T) {
	files, err := fs.Glob(themeFiles, "words/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no words: %v", err)
	}
	for _, file := range files {
		language := strings.TrimSuffix(path.Base(file), ".yaml")
		if _, err := render.LoadWords(themeFiles, language); err != nil {
			t.Errorf("%s: %v", language, err)
		}
	}
}

// TestWordsFaults spoils the English words in every way that a translation can be spoiled.
func TestWordsFaults(t *testing.T) {
	english, err := fs.ReadFile(themeFiles, "words/en.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ old, new, want string }{
		{"  skip: Skip to the text\n", "", "page.skip is missing"},
		{"  skip: Skip to the text\n", "  skip: \"\"\n", "page.skip is missing"},
		{"  skip: Skip to the text\n", "  skip: Skip\n  leap: Leap\n", "leap"},
		{"reviewed: Reviewed {date}", "reviewed: Reviewed", "page.reviewed must have the blanks {date}"},
		{"reviewed: Reviewed {date}", "reviewed: Reviewed {day}", "page.reviewed must have the blanks {date}"},
		{"reviewed: Reviewed {date}", "reviewed: Reviewed {date", "a brace is not closed"},
		{"  reviewed: Reviewed {date}\n", "", "page.reviewed is missing"},
		{"November, December]", "November]", "page"},
	} {
		spoiled := strings.Replace(string(english), c.old, c.new, 1)
		if spoiled == string(english) {
			t.Errorf("%q is not in the English words", c.old)
			continue
		}
		files := fstest.MapFS{"words/xx.yaml": {Data: []byte(spoiled)}}
		if _, err := render.LoadWords(files, "xx"); err == nil || !strings.Contains(err.Error(), c.want) && c.want != "page" {
			t.Errorf("with %q in place of %q: error %v, want one with %q", c.new, c.old, err, c.want)
		}
	}
	if _, err := render.LoadWords(themeFiles, "qq"); err == nil {
		t.Error("a language without words was read")
	}
}

var letters = regexp.MustCompile(`\p{L}`)

// TestNoWordElsewhere renders everything with figures in place of every word and every text of the views. A letter
// that still shows is a word that is in a template or in Go code.
func TestNoWordElsewhere(t *testing.T) {
	english, err := fs.ReadFile(themeFiles, "words/en.yaml")
	if err != nil {
		t.Fatal(err)
	}
	files := fstest.MapFS{"words/en.yaml": {Data: figures(english)}}
	frame, err := fs.ReadFile(themeFiles, "page/frame.html")
	if err != nil {
		t.Fatal(err)
	}
	files["page/frame.html"] = &fstest.MapFile{Data: frame}
	facts := site()
	fill(reflect.ValueOf(&facts).Elem(), "7")
	facts.Language, facts.Base = "en", ""
	r, err := render.New(files, facts)
	if err != nil {
		t.Fatal(err)
	}
	for _, view := range []any{
		guide(""), homePage(), sourcesPage(), calculationPage(), missingPage(), indexPage(),
		soil(), season(), reckoner(), twoKinds(),
		&render.Sourced{Text: "7", Source: "7", For: "7", Kind: "standard"},
	} {
		switch v := view.(type) { // the author's own HTML is not ours
		case *render.Worksheet:
			v.Work = nil
		case *render.Calculation:
			v.Code = ""
		case *render.Home:
			v.Intro = ""
		}
		fill(reflect.ValueOf(view).Elem(), "7")
		var w bytes.Buffer
		write(r, &w, view)
		wordless(t, fmt.Sprintf("%T", view), w.Bytes())
	}
}

// figures replaces every word of a words file by figures, and leaves keys and blanks.
func figures(yaml []byte) []byte {
	value := regexp.MustCompile(`(?m)^( {2,4}[a-z-]+:) +(>-\n(    .*\n)+|\[.*\]|.*)`)
	blank := regexp.MustCompile(`\{[a-z-]+\}`)
	return value.ReplaceAllFunc(yaml, func(line []byte) []byte {
		parts := value.FindSubmatch(line)
		if bytes.HasPrefix(parts[2], []byte("[")) {
			return append(parts[1], ` ["1","2","3","4","5","6","7","8","9","10","11","12"]`...)
		}
		return append(parts[1], (` "9 ` + string(bytes.Join(blank.FindAll(parts[2], -1), []byte(" "))) + `"` + "\n")...)
	})
}

func wordless(t *testing.T, name string, html []byte) {
	t.Helper()
	tags, texts := scan(t, html)
	general := words.InGeneral("en") // these two are those of the calculations
	references := strings.NewReplacer("&#34;", "", "&#39;", "", "&amp;", "", "&lt;", "", "&gt;", "",
		general.Partly, "", general.Perhaps, "")
	for _, text := range texts {
		if letters.MatchString(references.Replace(text)) {
			t.Errorf("%s shows %q, which is in no words file", name, text)
		}
	}
	for _, one := range tags {
		for _, said := range []string{"aria-label", "title", "alt", "placeholder"} {
			if value, _ := one.value(said); letters.MatchString(value) {
				t.Errorf("%s says %q in %s, which is in no words file", name, value, said)
			}
		}
	}
}

// Every word that a script asks for is there, in every language.
func TestWordsForTheScripts(t *testing.T) {
	for _, language := range []string{"en", "es"} {
		for _, names := range [][]wire.Word{wire.WordsOfPage, wire.WordsOfAfter} {
			text, err := render.ScriptWords(theme.Files, language, names)
			if err != nil {
				t.Fatal(err)
			}
			var got map[wire.Word]string
			if err := json.Unmarshal(text, &got); err != nil {
				t.Fatal(err)
			}
			for _, name := range names {
				if got[name] == "" {
					t.Errorf("%s: the script has no word %q", language, name)
				}
			}
			if len(got) != len(names) {
				t.Errorf("%s: %d words for %d names", language, len(got), len(names))
			}
		}
	}
}
