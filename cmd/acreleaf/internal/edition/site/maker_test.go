package site

import (
	"bytes"
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
)

// whole is a site in one text: its files by name, or its messages.
func whole(files map[string]string, pages int, messages message.List) string {
	var w bytes.Buffer
	message.Printer{}.Print(&w, messages)
	if files != nil {
		fmt.Fprintln(&w, pages)
		for _, path := range slices.Sorted(maps.Keys(files)) {
			fmt.Fprintf(&w, "== %s\n%s\n", path, files[path])
		}
	}
	return w.String()
}

// pressed is what a press from nothing gives.
func pressed(o book.Options) string {
	files, pages, messages := collect(o)
	return whole(files, pages, messages)
}

// collect presses a site, and gives its files if it is whole.
func collect(o book.Options) (files map[string]string, pages int, messages message.List) {
	var mutex sync.Mutex
	files = map[string]string{}
	pages, messages = book.Make(o, New, func(f output.File) error {
		mutex.Lock()
		defer mutex.Unlock()
		files[f.Path] = string(f.Bytes)
		return nil
	})
	if message.HasFault(messages) {
		return nil, 0, messages
	}
	return files, pages, messages
}

// remade is what a maker gives. The bytes of its files are made when they are asked for, as a desk does.
func remade(made *book.Made, messages message.List) string {
	if made == nil {
		return whole(nil, 0, messages)
	}
	files := map[string]string{}
	for _, f := range made.Files {
		files[f.Path] = string(f.Bytes())
	}
	return whole(files, made.Pages, messages)
}

// After edits of every kind, a maker that was told their names gives what a press from nothing gives.
func TestMakerMakesWhatAPressMakes(t *testing.T) {
	const orchards, days = 3, 45
	good, faulty := 0, 0
	for seed := range uint64(orchards) {
		o := newOrchard(rand.New(rand.NewPCG(seed, 1868)))
		options := book.Options{Content: o.files, Name: "content"}
		maker := book.NewMaker(options, New)
		var done []string
		var last *book.Made // the site of a day before, of which a desk shows pages until there is a better one
		lastBytes := ""
		for day := range days {
			var changes book.Changes
			if day > 0 {
				before := maps.Clone(o.files)
				for range 1 + o.random.IntN(3) {
					done = append(done, o.edit())
				}
				o.write()
				changes.Names = difference(before, o.files)
				changes.Everything = o.random.IntN(20) == 0
			}
			made, messages := maker.Make(changes)
			if diff := cmp.Diff(pressed(options), remade(made, messages)); diff != "" {
				t.Fatalf("orchard %d, after %q (-press +maker):\n%s", seed, done[max(0, len(done)-8):], diff)
			}
			if last != nil {
				if diff := cmp.Diff(lastBytes, remade(last, nil)); diff != "" {
					t.Fatalf("orchard %d, after %q, of the last good site (-then +now):\n%s", seed, done[max(0, len(done)-8):], diff)
				}
			}
			if made != nil {
				last, lastBytes = made, remade(made, nil)
			}
			if made != nil {
				good++
			} else {
				faulty++
			}
		}
	}
	t.Logf("%d sites without and %d with a fault", good, faulty)
	if good < orchards*days/4 || faulty < orchards*days/10 {
		t.Error("the edits are not what they should be")
	}
}

// difference names the files that are new, gone or changed.
func difference(before, after fstest.MapFS) []string {
	var names []string
	for name, f := range after {
		if old := before[name]; old == nil || !bytes.Equal(old.Data, f.Data) {
			names = append(names, name)
		}
	}
	for name := range before {
		if after[name] == nil {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}

// What a save does not touch is not made again.
func TestMakerKeepsWhatASaveDoesNotTouch(t *testing.T) {
	const link = "See [it](block-03.md#deep).\n\n## Deep\n\nText.\n"
	texts := map[string]string{}
	for i := range 6 {
		texts[fmt.Sprintf("block-%02d", i)] = guide(fmt.Sprintf("Block %d", i), i, link)
	}
	files := content(texts)
	maker := book.NewMaker(book.Options{Content: files, Name: "content"}, New)
	before := makings(t, maker, book.Changes{})
	for _, c := range []struct{ name, text, want string }{
		{"guides/block-03.md", guide("Block 3", 3, link+"More.\n"), "guides/block-03/index.html"},
		{"guides/block-03.md", guide("Third", 3, link), "404.html guides/block-02/index.html " +
			"guides/block-03/index.html guides/block-04/index.html guides/index.html index.html offline/index.html " +
			"sources/index.html terms/index.html"},
		{"guides/block-05.md", guide("Block 5", 5, link), ""},
		{"home.md", "---\ntitle: Test Row\nsummary: Guides.\n---\nWelcome.\n", "index.html"},
	} {
		files[c.name] = &fstest.MapFile{Data: []byte(c.text)}
		after := makings(t, maker, book.Changes{Names: []string{c.name}})
		var made []string
		for path, first := range after {
			if before[path] != first {
				made = append(made, path)
			}
		}
		slices.Sort(made)
		if got := fmt.Sprint(made); got != "["+c.want+"]" {
			t.Errorf("%s: made again %s, not [%s]", c.name, got, c.want)
		}
		before = after
	}
}

// makings tells of each page of a site when it was made.
func makings(t *testing.T, maker *book.Maker, c book.Changes) map[string]book.File {
	t.Helper()
	made, messages := maker.Make(c)
	if len(messages) > 0 {
		t.Fatal(remade(made, messages))
	}
	first := map[string]book.File{}
	for _, f := range made.Files {
		if strings.HasSuffix(f.Path, ".html") {
			first[f.Path] = f
		}
	}
	return first
}

// A folder that was opened again, or read in a new way, is looked at as it is told.
func TestMakerLooksWhereItIsTold(t *testing.T) {
	o := newOrchard(rand.New(rand.NewPCG(1, 1868)))
	o.mend()
	o.write()
	maker := book.NewMaker(book.Options{Content: o.files, Name: "content"}, New)
	if made, messages := maker.Make(book.Changes{}); made == nil {
		t.Fatal(remade(made, messages))
	}
	moved := content(map[string]string{"rows": guide("Rows", 1, "Text.\n")})
	maker.Look(moved)
	got := remade(maker.Make(book.Changes{Everything: true}))
	if diff := cmp.Diff(pressed(book.Options{Content: moved, Name: "content"}), got); diff != "" {
		t.Error(diff)
	}
}

// A calculation that has a fault is told of where a page uses it, however the pages themselves are left alone.
func TestMakerTellsOfACalculationThatBecomesFaulty(t *testing.T) {
	const use = "```worksheet wait\ncalculation: waiting\nrate: 3 gal/h\n```\n"
	files := content(map[string]string{"soil": guide("Soil", 1, use)})
	maker := book.NewMaker(book.Options{Content: files, Name: "content"}, New)
	maker.Make(book.Changes{})
	const name = "calculations/waiting.yaml"
	for _, text := range []string{"title: Waiting\n", ""} {
		if text == "" {
			delete(files, name)
		} else {
			files[name] = &fstest.MapFile{Data: []byte(text)}
		}
		got := remade(maker.Make(book.Changes{Names: []string{name}}))
		if diff := cmp.Diff(pressed(book.Options{Content: files, Name: "content"}), got); diff != "" {
			t.Errorf("with %q (-press +maker):\n%s", text, diff)
		}
	}
}
