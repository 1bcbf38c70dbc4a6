package main

import (
	"bytes"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/rogpeppe/go-internal/txtar"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/proof"
)

// windowsEnds gives a content folder whose pages and lists are saved as Windows does it: with a carriage return before
// every line feed that has none.
func windowsEnds(content fstest.MapFS) fstest.MapFS {
	windows := fstest.MapFS{}
	for name, file := range content {
		text := file.Data
		if ending := filepath.Ext(name); ending == ".md" || ending == ".yaml" {
			text = bytes.ReplaceAll(text, []byte("\r\n"), []byte("\n"))
			text = bytes.ReplaceAll(text, []byte("\n"), []byte("\r\n"))
		}
		windows[name] = &fstest.MapFile{Data: text}
	}
	return windows
}

// A site saved on Windows is the same site, byte for byte.
func TestWindowsLineEndsMakeTheSameSite(t *testing.T) {
	for _, folder := range []string{filepath.Join("..", "..", "content"), filepath.Join("testdata", "site", "content")} {
		unix := fstest.MapFS{}
		if err := fs.WalkDir(os.DirFS(folder), ".", func(name string, entry fs.DirEntry, err error) error {
			if err != nil || entry.IsDir() {
				return err
			}
			text, err := os.ReadFile(filepath.Join(folder, name))
			unix[name] = &fstest.MapFile{Data: text}
			return err
		}); err != nil {
			t.Fatal(err)
		}
		want, got := allFiles(t, unix), allFiles(t, windowsEnds(unix))
		if names := slices.Sorted(maps.Keys(want)); len(names) == 0 || !slices.Equal(names, slices.Sorted(maps.Keys(got))) {
			t.Errorf("%s: other files", folder)
		}
		for name, text := range want {
			if !bytes.Equal(text, got[name]) {
				t.Errorf("%s: %s differs", folder, name)
			}
		}
	}
}

// allFiles makes a site and gives its files by their paths.
func allFiles(t *testing.T, content fs.FS) map[string][]byte {
	t.Helper()
	made, said := book.NewMaker(book.Options{Content: content, Name: "content"}, site.New).Make(book.Changes{})
	if message.HasFault(said) {
		var text bytes.Buffer
		message.Printer{}.Print(&text, said)
		t.Fatal(text.String())
	}
	files := map[string][]byte{}
	for _, f := range made.Files {
		files[f.Path] = f.Bytes()
	}
	return files
}

// The messages about a site saved on Windows are the same, word for word and place for place.
func TestWindowsLineEndsAreSaidTheSame(t *testing.T) {
	cases, err := filepath.Glob(filepath.Join("testdata", "fault", "*", "*.txtar"))
	if err != nil || len(cases) < 50 {
		t.Fatal(len(cases), err)
	}
	for _, name := range cases {
		archive, err := txtar.ParseFile(name)
		if err != nil {
			t.Fatal(err)
		}
		content := fstest.MapFS{}
		for file, text := range faultGround {
			content[file] = &fstest.MapFile{Data: []byte(text)}
		}
		for _, f := range archive.Files {
			content[strings.TrimPrefix(f.Name, "content/")] = &fstest.MapFile{Data: f.Data}
		}
		want := string(content["said"].Data)
		delete(content, "said")
		if got := proofText(windowsEnds(content)); got != want {
			t.Errorf("%s: with the line ends of Windows, proof says\n%s\nand not\n%s", name, got, want)
		}
	}
}

// proofText is all that a proof says of a content folder.
func proofText(content fs.FS) string {
	rules := proof.Rules{Advice: true, Today: faultDay}
	var text bytes.Buffer
	message.Printer{}.Print(&text, book.Check(book.Options{Content: content, Name: "content"}, site.New, rules).Messages)
	return text.String()
}
