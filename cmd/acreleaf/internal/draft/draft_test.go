package draft

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/proof"
	"acreleaf/cmd/acreleaf/internal/schema"
)

var day = time.Date(2026, 11, 2, 0, 0, 0, 0, time.UTC)

// sample is the content folder of the small site.
func sample(t *testing.T) fstest.MapFS {
	t.Helper()
	folder := t.TempDir()
	if _, err := Site(folder, day); err != nil {
		t.Fatal(err)
	}
	return load(t, filepath.Join(folder, contentFolder))
}

func load(t *testing.T, folder string) fstest.MapFS {
	t.Helper()
	content := fstest.MapFS{}
	err := fs.WalkDir(os.DirFS(folder), ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := os.ReadFile(filepath.Join(folder, filepath.FromSlash(name)))
		content[name] = &fstest.MapFile{Data: text}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return content
}

// start drafts a page into a content folder and gives its text.
func start(t *testing.T, content fstest.MapFS, name string, with ...*sheet.Sheet) string {
	t.Helper()
	return ask(t, content, Request{Page: name, With: with})
}

// ask drafts what is asked for, and gives its text.
func ask(t *testing.T, content fstest.MapFS, r Request) string {
	t.Helper()
	r.Content, r.Folder, r.Today = content, "content", day
	f, err := Page(r)
	if err != nil {
		t.Fatalf("%s: %v", r.Page, err)
	}
	content[f.Name] = &fstest.MapFile{Data: f.Text}
	return string(f.Text)
}

// faultless sees that a site can be pressed and proofed, and gives the ids of the advice.
func faultless(t *testing.T, content fs.FS) []string {
	t.Helper()
	o := book.Options{Content: content, Name: "content"}
	found := book.Check(o, site.New, proof.Rules{Advice: true, Today: day}).Messages
	if made, _ := book.NewMaker(o, site.New).Make(book.Changes{}); message.HasFault(found) || made == nil {
		var said bytes.Buffer
		isAdvice := func(m message.Message) bool { return m.Level == message.Advice }
		message.Printer{}.Print(&said, slices.DeleteFunc(found, isAdvice))
		t.Fatalf("a fresh draft has a fault:\n%s", &said)
	}
	var ids []string
	for _, m := range found {
		ids = append(ids, m.ID)
	}
	return ids
}

// A small site has nothing wrong with it, and nothing to advise on.
func TestSiteIsWhole(t *testing.T) {
	if ids := faultless(t, sample(t)); len(ids) > 0 {
		t.Error(ids)
	}
}

// A small site has the shapes of its files, and the files that are YAML throughout say which is theirs.
func TestSiteHasShapes(t *testing.T) {
	content := sample(t)
	for name, text := range schema.Files() {
		if file := content[schema.Folder+"/"+name]; file == nil || !bytes.Equal(file.Data, text) {
			t.Errorf("%s is not there, or another", name)
		}
	}
	for _, name := range []string{"site", "sources"} {
		_, after, said := strings.Cut(string(content[name+".yaml"].Data), "\n# $schema: ")
		shape, _, _ := strings.Cut(after, "\n")
		if !said || shape != schema.Folder+"/"+name+".json" || content[shape] == nil {
			t.Errorf("%s.yaml is said to have the shape %q", name, shape)
		}
	}
}

// answersThere counts the answers of a calculation that are there while all that may be left out is.
func answersThere(s *sheet.Sheet) int {
	values := map[string]float64{}
	for _, g := range s.Givens {
		if !g.Optional {
			values[g.Name] = g.Typical
		}
	}
	o, err := s.Evaluate(values)
	if err != nil {
		return len(s.Answers()) // it cannot do without: the draft has all
	}
	return len(o.Answers())
}

// Every kind of page can be pressed as it stands, with every calculation, in every language that has patterns.
func TestEveryKindWithEveryCalculation(t *testing.T) {
	for _, language := range []string{"en", "es"} {
		content := sample(t)
		pages := 0
		for _, folder := range []string{"guides", "workshops", "courses/first-year"} {
			ask(t, content, Request{Page: folder + "/bare.md", Language: language})
			pages++
			for _, s := range calc.Standard().All() {
				text := ask(t, content, Request{Page: folder + "/new-" + s.Name + ".md", Language: language,
					With: []*sheet.Sheet{s}})
				if figures := strings.Count(text, "(worked:"+s.Name+"."); figures < 1+answersThere(s)/2 {
					t.Errorf("%s has %d figures:\n%s", s.Name, figures, text)
				}
				pages++
			}
			ask(t, content, Request{Page: folder + "/all.md", Language: language, With: calc.Standard().All()})
			pages++
		}
		unwritten := 0
		for _, id := range faultless(t, content) {
			switch id {
			case "text-unwritten":
				unwritten++
			case "translation-alone", "reading-hard", "given-twice": // all calculations on one page ask for some things twice
			default:
				t.Errorf("a fresh draft brings the advice %s", id)
			}
		}
		if unwritten != pages {
			t.Errorf("%d of %d pages say that they are to be written", unwritten, pages)
		}
	}
}

// A name alone may bring a danger, an amount, or a word that YAML takes for something else.
func TestNamesOfPages(t *testing.T) {
	content := sample(t)
	for _, name := range []string{"drinking-water", "acid-injection", "anhydrous-ammonia", "48-lb", "true", "null", "2026",
		"no", "1e3", "a", "3-to-4-oz-a-tree", "n"} {
		start(t, content, "guides/"+name+".md")
	}
	faultless(t, content)
}

// The order of a page comes after the last of its kind.
func TestOrder(t *testing.T) {
	content := sample(t)
	for name, order := range map[string]string{"guides/frost.md": "3", "workshops/day.md": "1"} {
		if text := start(t, content, name); !strings.Contains(text, "\norder: "+order+"\n") {
			t.Errorf("%s:\n%s", name, text)
		}
	}
	content["guides/half.md"] = &fstest.MapFile{Data: []byte("---\ntitle: Half\nsummary: Half.\norder: 7.5\n---\n")}
	if text := start(t, content, "guides/heat.md"); !strings.Contains(text, "\norder: 8\n") {
		t.Error(text)
	}
}

// A page has the line ends of Unix wherever it was drafted, and is not written with half of it missing.
func TestText(t *testing.T) {
	text := start(t, sample(t), "guides/late-frost.md", calc.Standard().Find("water-nitrogen"))
	for _, line := range []string{"title: Late frost", "language: en", "reviewed: 2026-11-02", "review-every: 24 months",
		"nitrate: 10 ppm NO3-N", "- Nitrogen in this water: [27.2 lb N/ac fed](worked:water-nitrogen.nitrogen)"} {
		if !strings.Contains(text, line+"\n") {
			t.Errorf("there is no line %q in\n%s", line, text)
		}
	}
	if strings.ContainsAny(text, "\r") || strings.Contains(text, "{{") {
		t.Error(text)
	}
	// A picture that numbers draw is below the worksheet of a calculation that has one, and of no other.
	if !strings.Contains(text, "```\n\n```drawing\nof: water-nitrogen\n```\n") {
		t.Error(text)
	}
	text = start(t, sample(t), "guides/late-frost.md", calc.Standard().Find("soil-nitrogen"))
	if strings.Contains(text, "drawing") {
		t.Error(text)
	}
}
