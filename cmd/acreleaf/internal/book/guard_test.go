package book

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
)

// content is a content folder with a home page and the guides given, by name.
func content(guides map[string]string) fstest.MapFS {
	files := fstest.MapFS{
		"site.yaml": {Data: []byte("office: Test Row Orchard Office\n")},
		"home.md":   {Data: []byte("---\ntitle: Test Row\nsummary: Guides.\n---\n")},
	}
	for name, text := range guides {
		files["guides/"+name+".md"] = &fstest.MapFile{Data: []byte(text)}
	}
	return files
}

func guide(title string, order int, body string) string {
	return fmt.Sprintf("---\ntitle: %s\nsummary: It is short.\norder: %d\nseason: spring\n---\n%s\n", title, order, body)
}

// told is messages, a line each: the file if there is one, the id and the text.
func told(messages message.List) string {
	var w strings.Builder
	for _, m := range messages {
		if m.Source != nil {
			w.WriteString(m.Source.Name + ": ")
		}
		fmt.Fprintf(&w, "%s: %s\n", m.ID, m.Text)
	}
	return w.String()
}

// failures are the files on which the program failed, by the messages about them, which are faults with a note.
func failures(messages message.List) []string {
	var names []string
	for _, m := range messages {
		if m.ID == "page-failed" && m.Level == message.Fault && m.Note != "" {
			names = append(names, m.Source.Name)
		}
	}
	return names
}

// breakCalculation adds a calculation on which the program fails: it has a given that is none. It gives what mends it.
func breakCalculation(t *testing.T) (mend func()) {
	broken := &sheet.Sheet{Name: "broken", Givens: []*sheet.Given{nil}}
	standard = func() *calc.Catalogue { return calc.Standard().With([]*sheet.Sheet{broken}, nil) }
	mend = func() { standard = calc.Standard }
	t.Cleanup(mend)
	return mend
}

const usesBroken = "```worksheet wrong\ncalculation: broken\nrate: 3 gal/h\n```\n"

// A calculation that the program fails on is a fault of the page that uses it. The other pages have their own messages.
func TestAPanicInACalculationNamesThePage(t *testing.T) {
	breakCalculation(t)
	_, messages := pressed(Options{Name: "content", Content: content(map[string]string{
		"broken": guide("Broken", 1, usesBroken), "good": guide("Good", 2, "Text."),
		"third": guide("Third", 3, "[it](gone.md)"),
	})}, newPlain)
	said := told(messages)
	if len(messages) != 2 ||
		!strings.HasPrefix(said, "content/guides/broken.md: page-failed: the program failed on this file: runtime error: ") ||
		!strings.Contains(said, " (sheet.(*Sheet).FindGiven") && !strings.Contains(said, " (worksheet.(*binder)") ||
		!strings.Contains(said, "\ncontent/guides/third.md: link-broken: ") {
		t.Errorf("the press says\n%s", said)
	}
}

// bindsBroken has a block of each construct that works a calculation, with one on which the program fails. To define a
// calculation is no such work, a reference works none, and a passage and a drawing take their numbers from a worksheet.
var bindsBroken = map[construct.Kind]string{
	construct.Calculation: "",
	construct.Drawing:     usesBroken + "\n```drawing\nof: wrong\n```\n",
	construct.Exercise: "```exercise wrong\ncalculation: broken\nrate: 3 to 9 gal/h, every 1\n" +
		"story: It gives {rate}.\nask: total\n```\n",
	construct.Passage: usesBroken +
		"\n```passage\n- when: wrong.rate > \"2 gal/h\"\n  say: Much.\n- otherwise: Little.\n```\n",
	construct.Reckoner:  "```reckoner\ncalculation: broken\ndown: rate = 6, 12 gal/h\nshow: total\n```\n",
	construct.Reference: "",
	construct.Worksheet: usesBroken,
}

// A panic while a construct is bound is a fault of its page, in a press and at a desk, which goes on when it is mended.
func TestAPanicInBindingNamesThePage(t *testing.T) {
	for k := range construct.All() {
		block, listed := bindsBroken[k]
		if !listed {
			t.Errorf("there is no %s here on which the program fails", k)
		}
		if block == "" {
			continue
		}
		mend := breakCalculation(t)
		files := content(map[string]string{"a": guide("A", 1, "Text."), "b": guide("B", 2, block)})
		o := Options{Name: "content", Content: files}
		_, messages := pressed(o, newPlain)
		maker := NewMaker(o, newPlain)
		made, again := maker.Make(Changes{})
		const want = "content/guides/b.md"
		if strings.Join(failures(messages), " ") != want || strings.Join(failures(again), " ") != want || made != nil {
			t.Errorf("%s: the press says\n%s\nand the desk\n%s", k, told(messages), told(again))
		}
		mend()
		files["guides/b.md"] = &fstest.MapFile{Data: []byte(guide("B", 2, "Text."))}
		if made, again = maker.Make(Changes{Names: []string{"guides/b.md"}}); made == nil || len(again) > 0 {
			t.Errorf("%s: the desk does not go on: %s", k, told(again))
		}
	}
}

// fragile is an edition that fails on a page, on a file of no page, or on the whole, by name. It can also spoil the
// book for what comes after its check, which is the proof of all pages together.
type fragile struct {
	plain
	on *string
}

func newFragile(on *string) New { return func(s *Settings) Edition { return fragile{plain{s}, on} } }

func (e fragile) fail(name string) {
	if *e.on == name {
		panic("planted")
	}
}

func (e fragile) Check(b *Book) message.List {
	e.fail("check")
	if *e.on == "proof" {
		b.Outlines = append(b.Outlines, nil)
	}
	return e.plain.Check(b)
}

func (e fragile) Page(p *Page) ([]output.File, message.List) {
	e.fail(p.Name)
	return e.plain.Page(p)
}

func (e fragile) Common(b *Book) ([]Part, message.List) {
	e.fail("common")
	parts, messages := e.plain.Common(b)
	return append(parts, Part{Path: "made.txt", Make: func() []byte {
		e.fail("made.txt")
		return nil
	}}), messages
}

// So is a panic in an edition, on a page or on a file of no page.
func TestAPanicInAnEditionNamesThePage(t *testing.T) {
	o := Options{Name: "content", Content: content(map[string]string{"good": guide("Good", 1, "Text."),
		"other": guide("Other", 2, "[it](gone.md)")})}
	whole := Options{Name: "content", Content: content(map[string]string{"good": guide("Good", 1, "Text.")})}
	for on, want := range map[string]string{"guides/good.md": "content/guides/good.md", "home.md": "content/home.md",
		"made.txt": "made.txt", "": ""} {
		_, messages := pressed(whole, newFragile(&on))
		if got := strings.Join(failures(messages), " "); got != want || want != "" && !strings.Contains(told(messages),
			": planted (book.fragile.fail, line ") || len(messages) > 1 {
			t.Errorf("after a panic on %s the press says\n%s", on, told(messages))
		}
	}
	on := "guides/good.md"
	_, messages := NewMaker(o, newFragile(&on)).Make(Changes{}) // a press may have stopped making pages before
	if len(messages) != 2 || messages[0].ID != "page-failed" || messages[1].ID != "link-broken" {
		t.Errorf("the other page has no message of its own:\n%s", told(messages))
	}
}

// A desk goes on: when what the program failed on is mended, or the page is, the files are as a press makes them.
func TestAMakerGoesOnAfterAPanic(t *testing.T) {
	files := content(map[string]string{"a": guide("A", 1, usesBroken), "b": guide("B", 2, "Text.")})
	o := Options{Content: files, Name: "content"}
	on := "guides/b.md"
	mend := breakCalculation(t)
	maker := NewMaker(o, newFragile(&on))
	fails := func(c Changes, want ...string) {
		t.Helper()
		made, messages := maker.Make(c)
		if got := failures(messages); made != nil || !slices.Equal(got, want) {
			t.Fatalf("it fails on %s, not on %s:\n%s", got, want, told(messages))
		}
	}
	fails(Changes{}, "content/guides/a.md", "content/guides/b.md")
	fails(Changes{Names: []string{"guides/b.md"}}, "content/guides/a.md", "content/guides/b.md")
	mend()
	files["guides/a.md"] = &fstest.MapFile{Data: []byte(guide("A", 1, "Text."))}
	fails(Changes{Names: []string{"guides/a.md"}}, "content/guides/b.md")
	on = "made.txt"
	fails(Changes{Names: []string{"guides/b.md"}}, "made.txt")
	on = ""
	made, messages := maker.Make(Changes{Names: []string{"guides/b.md"}})
	want, _ := pressed(o, newFragile(&on))
	if made == nil {
		t.Fatal(told(messages))
	}
	got := map[string]string{}
	for _, f := range made.Files {
		got[f.Path] = string(f.Bytes())
	}
	if !maps.Equal(got, want) || len(got) != 5 {
		t.Errorf("the maker makes %q\nand a press %q", got, want)
	}
}
