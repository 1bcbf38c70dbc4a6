package schema

import (
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/rogpeppe/go-internal/txtar"
	"go.yaml.in/yaml/v3"

	"acreleaf/cmd/acreleaf/internal/construct"
)

var (
	metadata = regexp.MustCompile(`(?s)\A---\n(.*?\n)---\n`)
	fenced   = regexp.MustCompile("(?ms)^```(" + strings.Join(construct.Words(), "|") + ")\\b[^\n]*\n(.*?)^```$")
)

// texts visits all in a content folder that has a schema: where it stands, the name of the schema, the text.
func texts(t *testing.T, folder fs.FS, visit func(where, name, text string)) {
	t.Helper()
	err := fs.WalkDir(folder, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		read, err := fs.ReadFile(folder, name)
		text := string(read)
		switch {
		case name == "site.yaml" || name == "sources.yaml":
			visit(name, strings.TrimSuffix(name, ".yaml")+".json", text)
		case path.Dir(name) == "calculations" && path.Ext(name) == ".yaml":
			visit(name, "calculation.json", text)
		case path.Ext(name) == ".md":
			if found := metadata.FindStringSubmatch(text); found != nil {
				visit(name, "page.json", found[1])
			} else {
				visit(name, "page.json", "")
			}
			for _, found := range fenced.FindAllStringSubmatch(text, -1) {
				visit(name, found[1]+".json", found[2])
			}
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

// All that the demo site and the small site have passes: the metadata of pages, settings, sources and blocks. The pages
// about messages are full of slips, but what their own tops say is none.
func TestContent(t *testing.T) {
	schemas, read := compiled(t), map[string]int{}
	for _, folder := range []string{content, filepath.Join("..", "draft", "patterns", "site")} {
		texts(t, os.DirFS(folder), func(where, name, text string) {
			if strings.HasPrefix(where, "manual/messages") && name != "page.json" {
				return
			}
			read[name]++
			text = strings.ReplaceAll(text, "{{today}}", "2026-11-02")
			if err := schemas[name].Validate(plain(parsed(t, text))); err != nil {
				t.Errorf("%s: %v\n%s", where, err, text)
			}
		})
	}
	for name := range schemas {
		if read[name] == 0 {
			t.Errorf("nothing was checked by %s", name)
		}
	}
}

// What the readers take of the folders that the other tests are made of, passes: calculations in files of their own
// among it, and all that stands around one fault.
func TestFolders(t *testing.T) {
	data := filepath.Join("..", "..", "testdata")
	var names []string
	for _, pattern := range []string{"fault/*/*.txtar", "script/*.txtar"} {
		found, err := filepath.Glob(filepath.Join(data, filepath.FromSlash(pattern)))
		if err != nil {
			t.Fatal(err)
		}
		names = append(names, found...)
	}
	schemas, read := compiled(t), map[string]int{}
	for _, file := range names {
		archive, err := txtar.ParseFile(file)
		if err != nil {
			t.Fatal(err)
		}
		folder := fstest.MapFS{}
		for _, f := range archive.Files {
			if name, inside := strings.CutPrefix(f.Name, "content/"); inside && fs.ValidPath(name) {
				folder[name] = &fstest.MapFile{Data: f.Data}
			}
		}
		texts(t, folder, func(where, name, text string) {
			var document yaml.Node
			if refused(name, text) != "" || yaml.Unmarshal([]byte(text), &document) != nil {
				return
			}
			read[name]++
			if path.Dir(where) == "calculations" {
				read["calculations in files"]++
			}
			if err := schemas[name].Validate(plain(parsed(t, text))); err != nil {
				t.Errorf("%s: %s: %v\n%s", filepath.Base(file), where, err, text)
			}
		})
	}
	if read["calculations in files"] == 0 || read["page.json"] < 100 {
		t.Errorf("too little was checked by its schema: %v", read)
	}
}
