package book

import (
	"slices"
	"testing"
	"testing/fstest"

	"acreleaf/cmd/acreleaf/internal/output"
)

// TestMarkIsOfWhatIsRead changes files between the mark and the making. Only what a site is made from counts.
func TestMarkIsOfWhatIsRead(t *testing.T) {
	const home = "---\ntitle: Row\nsummary: Trees.\n---\nSee [it](shown.txt).\n"
	file := func(text string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(text)} }
	content := func() fstest.MapFS {
		return fstest.MapFS{"site.yaml": file("office: Row Office\n"), "home.md": file(home), "shown.txt": file("a"),
			"unused.txt": file("a"), "film.mov": file("a")}
	}
	for _, c := range []struct {
		name    string
		change  func(fstest.MapFS)
		changed []string
		another bool // mark, when all is read again
	}{
		{"nothing", func(fstest.MapFS) {}, nil, false},
		{"a page", func(m fstest.MapFS) { m["home.md"] = file(home + "More.\n") }, []string{"home.md"}, true},
		{"the site", func(m fstest.MapFS) { m["site.yaml"] = file("office: Other\n") }, []string{"site.yaml"}, true},
		{"a file that is shown", func(m fstest.MapFS) { m["shown.txt"] = file("b") }, []string{"shown.txt"}, true},
		{"a file that is not", func(m fstest.MapFS) { m["unused.txt"] = file("b") }, nil, true},
		{"a file that no page can show", func(m fstest.MapFS) { m["film.mov"] = file("b") }, nil, false},
		{"a new page", func(m fstest.MapFS) { m["new.md"] = file(home) }, []string{"./"}, true},
		{"a page that goes", func(m fstest.MapFS) { delete(m, "shown.txt") }, []string{"./"}, true},
		{"a file of an editor", func(m fstest.MapFS) { m[".home.md.swp"] = file("b") }, nil, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			files := content()
			mark := MarkOf(Options{Content: files, Name: "content"})
			c.change(files)
			Make(mark.Options, newPlain, func(output.File) error { return nil })
			if got := mark.Changed(); !slices.Equal(got, c.changed) {
				t.Errorf("changed: %q, want %q", got, c.changed)
			}
			again := MarkOf(Options{Content: files, Name: "content"})
			if mark.Hash == "" || (again.Hash != mark.Hash) != c.another {
				t.Errorf("the marks are %q and %q", mark.Hash, again.Hash)
			}
		})
	}
}
