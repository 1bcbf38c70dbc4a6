package site

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/render"
)

// failures are the messages about a program that failed, a line each: the file, the cause, and where it was.
func failures(t *testing.T, messages message.List) string {
	t.Helper()
	var w strings.Builder
	for _, m := range messages {
		if m.ID != "page-failed" || m.Level != message.Fault || m.Note == "" {
			t.Errorf("there is another message: %+v", m)
			continue
		}
		fmt.Fprintf(&w, "%s: %s\n", m.Source.Name, m.Text)
	}
	return w.String()
}

// brokenCalculation is a sheet on which the program fails: it has a given that is none.
var brokenCalculation = &sheet.Sheet{Name: "broken", Givens: []*sheet.Given{nil}}

const usesBroken = "```worksheet wrong\ncalculation: broken\nrate: 3 gal/h\n```\n"

// A calculation that the program fails on is a fault of the page that uses it. The other pages have their own messages,
// and nothing is made.
func TestAPanicInACalculationNamesThePage(t *testing.T) {
	p := newPress(Options{Name: "content", Content: content(map[string]string{
		"broken": guide("Broken", 1, usesBroken), "good": guide("Good", 2, "Text."), "third": guide("Third", 3, "Text."),
	})})
	p.catalogue = p.catalogue.With([]*sheet.Sheet{brokenCalculation}, nil)
	good := p.make()
	said := failures(t, p.messages)
	if good || strings.Count(said, "\n") != 1 ||
		!strings.HasPrefix(said, "content/guides/broken.md: the program failed on this file: runtime error: ") ||
		!strings.Contains(said, " (sheet.(*Sheet).FindGiven") && !strings.Contains(said, " (worksheet.(*binder)") {
		t.Errorf("the press says\n%s", said)
	}
}

// So is one in an edition: in the setting of a page, or of a page that nobody writes.
func TestAPanicInAnEditionNamesThePage(t *testing.T) {
	p := newPress(Options{Name: "content", Content: content(map[string]string{"good": guide("Good", 2, "Text.")})})
	p.prints = true
	p.load()
	p.read()
	p.edition.renderers = map[string]*render.Renderer{"en": nil} // so that nothing can be set
	p.work()
	p.join()
	p.finish()
	message.Sort(p.messages)
	said := failures(t, p.messages)
	for _, name := range []string{"content/guides/good.md: ", "content/home.md: ", "404.html: ",
		"sources/index.html: ", "guides/index.html: "} {
		if !strings.Contains(said, name) {
			t.Errorf("there is no message about %s", name)
		}
	}
	if strings.Count(said, "\n") != 5 {
		t.Errorf("the press says\n%s", said)
	}
}

// A desk goes on: when the page is fixed, or what it failed on, the site is as a press makes it.
func TestAMakerGoesOnAfterAPanic(t *testing.T) {
	files := content(map[string]string{"a": guide("A", 1, usesBroken), "b": guide("B", 2, "Text.")})
	o := Options{Content: files, Name: "content"}
	p := newPress(o)
	p.catalogue = p.catalogue.With([]*sheet.Sheet{brokenCalculation}, nil)
	p.make()
	failures(t, p.messages)
	maker := NewMaker(o)
	maker.last = p
	got := remade(maker.Make(Changes{Names: []string{"guides/b.md"}}))
	if want := pressed(o); got != want || !strings.Contains(want, "calculation-unknown") {
		t.Errorf("the maker says\n%s\nand not\n%s", got, want)
	}
	files["guides/a.md"] = &fstest.MapFile{Data: []byte(guide("A", 1, "Text."))}
	got = remade(maker.Make(Changes{Names: []string{"guides/a.md"}}))
	if want := pressed(o); got != want || !strings.HasPrefix(want, "3\n") {
		t.Errorf("the maker says\n%s\nand not\n%s", got, want)
	}
}
