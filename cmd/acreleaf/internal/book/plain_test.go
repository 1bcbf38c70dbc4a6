package book

import (
	"bytes"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"

	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/page"
)

// A plain is an edition in text without marks: the title of a page, its text, what its worksheets are given and what
// they answer, and where its links lead. It is here to show that an edition needs no more than this file.
type plain struct{ *Settings }

func newPlain(s *Settings) Edition { return plain{s} }

func textFile(a page.Address) string { return strings.TrimSuffix(a.File(), ".html") + ".txt" }

func (e plain) Check(b *Book) message.List { return nil }

func (e plain) Page(p *Page) ([]output.File, message.List) {
	var w bytes.Buffer
	fmt.Fprintf(&w, "%s\n", p.Metadata.Title)
	p.Document.Prose(func(text *markdown.Prose) {
		line := text.Text
		for _, f := range slices.Backward(text.Figures) {
			line = line[:f.At] + f.Text + line[f.At+len(markdown.Stand):]
		}
		fmt.Fprintf(&w, "\n%s\n", line)
	})
	for _, b := range p.Work.Sheets {
		if b.Kind != construct.Worksheet {
			continue
		}
		outcome := p.Work.Example(b)
		fmt.Fprintf(&w, "\n%s\n", b.Sheet.Title)
		for _, g := range b.Sheet.Givens {
			if len(g.Choices) == 0 && outcome.Stated(g.Name) {
				fmt.Fprintf(&w, "given %s: %s\n", g.Label, outcome.Text(g.Name))
			}
		}
		for _, a := range outcome.Answers() {
			fmt.Fprintf(&w, "answer %s: %s\n", a.Label, outcome.Text(a.Name))
		}
	}
	for _, f := range p.Document.Figures {
		if f.Scheme == construct.Sourced {
			fmt.Fprintf(&w, "\n%s: %s\n", f.Text, e.Sources[f.Target].Title)
		}
	}
	for _, l := range p.Document.Links {
		fmt.Fprintf(&w, "\n%s -> %s\n", l.Text, address(p.Links[l.Index]))
	}
	return []output.File{{Path: textFile(p.Address), Bytes: w.Bytes()}}, nil
}

// address is the whole address of a target, where a path does for pages and files.
func address(t Target) string {
	switch t.Kind {
	case ToPage:
		return strings.TrimSuffix(textFile(t.Page)+"#"+t.Text, "#")
	case ToFile, Outside:
		return t.Text
	}
	return "nowhere"
}

func (e plain) Common(b *Book) ([]Part, message.List) {
	list := func() []byte {
		var w bytes.Buffer
		for _, o := range b.Outlines {
			fmt.Fprintf(&w, "%s: %s\n", textFile(o.Address), o.Title)
		}
		return w.Bytes()
	}
	parts := []Part{{Path: "contents.txt", Make: list}}
	for _, name := range b.Files {
		parts = append(parts, Part{Path: name, Copies: name})
	}
	return parts, nil
}

// pressed gives the files of an edition, and what there is to say of it.
func pressed(o Options, edition New) (map[string]string, message.List) {
	var mutex sync.Mutex
	files := map[string]string{}
	_, messages := Make(o, edition, func(f output.File) error {
		mutex.Lock()
		defer mutex.Unlock()
		files[f.Path] = string(f.Bytes)
		return nil
	})
	return files, messages
}

func demo() Options {
	return Options{Content: os.DirFS("../../../../content"), Name: "content"}
}

// Every page of the demo is in the edition, with its worksheets worked and its links to files that are there.
func TestAnotherEditionOfTheDemo(t *testing.T) {
	files, messages := pressed(demo(), newPlain)
	if len(messages) > 0 {
		t.Fatal(messages)
	}
	written := 0
	err := fs.WalkDir(demo().Content, ".", func(name string, entry fs.DirEntry, err error) error {
		if strings.HasSuffix(name, ".md") {
			written++
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if contents := strings.Count(files["contents.txt"], "\n"); written < 20 || contents != written {
		t.Errorf("%d pages are written, and %d listed", written, contents)
	}
	answers, links := 0, 0
	for _, name := range slices.Sorted(maps.Keys(files)) {
		if !strings.HasSuffix(name, ".txt") || name == "contents.txt" {
			continue
		}
		answers += strings.Count(files[name], "\nanswer ")
		for line := range strings.Lines(files[name]) {
			_, to, is := strings.Cut(strings.TrimSpace(line), " -> ")
			if !is || strings.Contains(to, "://") || strings.HasPrefix(to, "mailto:") || strings.HasPrefix(to, "tel:") {
				continue
			}
			links++
			if path, _, _ := strings.Cut(to, "#"); files[path] == "" {
				t.Errorf("%s has a link to %s, and that is no file", name, to)
			}
		}
	}
	if answers < 20 || links < 20 {
		t.Errorf("there are %d answers and %d links", answers, links)
	}
	// Worked by hand: 2 lb/ac for each ppm in 6 in of soil, so 9 ppm in 14 in are 9 x 2 x 14/6 = 42.
	if soil := files["guides/soil/index.txt"]; !strings.Contains(soil, ": 9 ppm NO3-N\n") ||
		!strings.Contains(soil, ": 14 in\n") || !strings.Contains(soil, ": 42 lb N/ac") {
		t.Errorf("the page of the soil says\n%s", soil)
	}
}

// A maker keeps the files of any edition, and gives what a press gives.
func TestAMakerOfAnotherEdition(t *testing.T) {
	files := content(map[string]string{"a": guide("A", 1, "[B](b.md#here)"), "b": guide("B", 2, "## Here")})
	o := Options{Content: files, Name: "content"}
	maker := NewMaker(o, newPlain)
	before, _ := maker.Make(Changes{})
	files["guides/b.md"].Data = []byte(guide("Bee", 2, "## Here"))
	after, _ := maker.Make(Changes{Names: []string{"guides/b.md"}})
	want, messages := pressed(o, newPlain)
	if before == nil || after == nil || len(messages) > 0 {
		t.Fatal(messages)
	}
	again := map[string]bool{}
	for i, f := range after.Files {
		if string(f.Bytes()) != want[f.Path] {
			t.Errorf("the maker gives %s\n%s\nand a press\n%s", f.Path, f.Bytes(), want[f.Path])
		}
		again[f.Path] = f != before.Files[i]
	}
	if len(after.Files) != len(want) || !again["guides/b/index.txt"] || !again["contents.txt"] || !again["index.txt"] {
		t.Errorf("made again: %v", again)
	}
}
