package main

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/rogpeppe/go-internal/txtar"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/proof"
)

// faultDay is the day on which the faulty guides are proofed.
var faultDay = time.Date(2026, 11, 2, 0, 0, 0, 0, time.UTC)

// what is laid out for a case that does not bring its own.
var faultGround = map[string]string{
	"site.yaml": "office: Test Row Orchard Office\n",
	"home.md":   "---\ntitle: Test Row\nsummary: Guides for a row of trees.\n---\n",
}

// A case of testdata/fault is a content folder with one fault, and what proof says of it, word for word. Its name
// begins with the id of the message, its folder is a subject of the manual, and its comment tells an author, in a
// sentence or two, what the message is about.
func TestFaults(t *testing.T) {
	cases, err := filepath.Glob(filepath.Join("testdata", "fault", "*", "*.txtar"))
	if err != nil || len(cases) == 0 {
		t.Fatal("no cases", err)
	}
	for _, name := range cases {
		t.Run(filepath.Base(name), func(t *testing.T) { faultCase(t, name) })
	}
}

func faultCase(t *testing.T, name string) {
	archive, err := txtar.ParseFile(name)
	if err != nil {
		t.Fatal(err)
	}
	content, said := fstest.MapFS{}, -1
	for file, text := range faultGround {
		content[file] = &fstest.MapFile{Data: []byte(text)}
	}
	for i, f := range archive.Files {
		if f.Name == "said" {
			said = i
			continue
		}
		content[strings.TrimPrefix(f.Name, "content/")] = &fstest.MapFile{Data: f.Data}
	}
	found := book.Check(book.Options{Content: fs.FS(content), Name: "content"}, site.New,
		proof.Rules{Advice: true, Today: faultDay}).Messages
	if len(found) != 1 || !strings.HasPrefix(filepath.Base(name), found[0].ID) {
		t.Errorf("one message is wanted, of the id that the name begins with")
	}
	var text bytes.Buffer
	message.Printer{}.Print(&text, found)
	switch {
	case said < 0:
		archive.Files = append(archive.Files, txtar.File{Name: "said", Data: text.Bytes()})
	case string(archive.Files[said].Data) == text.String():
		return
	default:
		archive.Files[said].Data = text.Bytes()
	}
	if *update {
		if err := os.WriteFile(name, txtar.Format(archive), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	t.Errorf("proof says\n%s", &text)
}
