package book

import (
	"io/fs"
	"maps"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/proof"
)

// brittle is a content folder on which the program fails when it opens a file, by name.
type brittle struct {
	fstest.MapFS
	on *string
}

func (b brittle) Open(name string) (fs.File, error) {
	if *b.on == name {
		panic("planted")
	}
	return b.MapFS.Open(name)
}

func (b brittle) ReadFile(name string) ([]byte, error) {
	if *b.on == name {
		panic("planted")
	}
	return b.MapFS.ReadFile(name)
}

// isBetween says whether messages are the one about a failure between the pages, as a person must have it.
func isBetween(messages message.List, place string) bool {
	return len(messages) == 1 && messages[0].ID == "pages-failed" && messages[0].Level == message.Fault &&
		strings.HasPrefix(messages[0].Text, "the program failed between the pages: ") &&
		strings.Contains(messages[0].Text, " ("+place+", line ") &&
		strings.Contains(messages[0].Note, "report it, with this message and the folder content;")
}

// A panic in what is done with all pages is a fault of no page: while the settings are read, while pages are read and
// files looked into in parallel, in the two parts of an edition, and in the proof of all pages together. A press, a
// proof and a desk say so, and a desk goes on.
func TestAPanicBetweenThePagesIsAFault(t *testing.T) {
	const opened, failed = "book.brittle.Open book.brittle.ReadFile", "book.fragile.fail"
	for on, places := range map[string]string{"site.yaml": opened, "guides/good.md": opened, "row.txt": opened,
		"check": failed, "common": failed, "proof": "book.(*Book).Cited"} {
		now := on
		files := content(map[string]string{"good": strings.Replace(guide("Good", 1, "[A row](../row.txt)"), "---\n",
			"---\nreviewed: 2026-09-14\n", 1)})
		files["row.txt"] = &fstest.MapFile{Data: []byte("A row.")}
		o := Options{Name: "content", Content: brittle{files, &now}}
		edition := newFragile(&now)
		if on == "guides/good.md" {
			edition = newPlain // a fragile one would fail on the page itself, too
		}
		tells := func(who string, messages message.List) {
			t.Helper()
			if !slices.ContainsFunc(strings.Fields(places), func(p string) bool { return isBetween(messages, p) }) {
				t.Errorf("after a panic on %s %s says\n%s", on, who, told(messages))
			}
		}
		if on != "common" { // a proof makes nothing
			tells("a proof", Check(o, edition, proof.Rules{Advice: true}).Messages)
		}
		if on == "proof" { // a press gives no advice
			continue
		}
		_, messages := pressed(o, edition)
		tells("a press", messages)
		now = ""
		maker := NewMaker(o, edition)
		if made, messages := maker.Make(Changes{}); made == nil {
			t.Fatalf("%s: %s", on, told(messages))
		}
		now = on
		files["home.md"] = &fstest.MapFile{Data: []byte("---\ntitle: Row\nsummary: All.\n---\n")}
		files["guides/new.md"] = &fstest.MapFile{Data: []byte(guide("New", 2, "Text."))}
		saved := Changes{Names: []string{"guides/new.md", "home.md", on}}
		made, messages := maker.Make(saved)
		if tells("a desk", messages); made != nil {
			t.Errorf("%s: the desk has a site all the same", on)
		}
		now = ""
		got := map[string]string{}
		if made, messages = maker.Make(Changes{}); made == nil { // a save of nothing: what came before was not heard
			t.Fatalf("%s: the desk does not go on: %s", on, told(messages))
		}
		for _, f := range made.Files {
			got[f.Path] = string(f.Bytes())
		}
		if want, _ := pressed(o, edition); !maps.Equal(got, want) || len(got) < 5 {
			t.Errorf("%s: the maker makes %q\nand a press %q", on, got, want)
		}
	}
}
