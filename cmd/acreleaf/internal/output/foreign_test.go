package output

import (
	"errors"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// listed gives the paths on Acreleaf's list.
func listed(t *testing.T, dir string) []string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(dir, manifestName))
	if err != nil {
		t.Fatal(err)
	}
	list, _, err := decode(text)
	if err != nil {
		t.Fatal(err)
	}
	return slices.Sorted(maps.Keys(list))
}

func paths(files []File) []string {
	var names []string
	for _, f := range files {
		names = append(names, f.Path)
	}
	slices.Sort(names)
	return names
}

// What somebody else put into the site's folder stops a press that needs the place, and is left alone by any other.
func TestWriteLeavesForeignFilesAlone(t *testing.T) {
	wanted := append(slices.Clone(first), pages("guides/new/index.html", "new")...)
	for name, test := range map[string]struct {
		planted tree
		blocked string // the path that the error must name; empty when the press must go through
	}{
		"a file in the way":             {tree{"guides/new/index.html": "mine"}, "public/guides/new/index.html"},
		"the same bytes in the way":     {tree{"guides/new/index.html": "new"}, "public/guides/new/index.html"},
		"a file where a folder must go": {tree{"guides/new": "mine"}, "public/guides/new"},
		"a folder in the way":           {tree{"guides/new/index.html/a.txt": "mine"}, "public/guides/new/index.html/a.txt"},
		"files beside ours":             {tree{"CNAME": "mine", "guides/soil/notes.txt": "mine", ".gitignore": "*"}, ""},
	} {
		t.Run(name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "public")
			write(t, dir, first)
			plant(t, dir, test.planted)
			before := readTree(t, dir)
			_, err := Write(dir, wanted, Mark{})
			if test.blocked == "" {
				if err != nil {
					t.Fatal(err)
				}
				write(t, dir, nil)
				got := readTree(t, dir).withoutList()
				for file, content := range test.planted {
					same(t, file, got[file], content)
				}
				return
			}
			if err == nil || !strings.Contains(err.Error(), test.blocked+" is in the way") {
				t.Fatalf("the error does not name %s: %v", test.blocked, err)
			}
			same(t, "files", readTree(t, dir), before)
		})
	}
}

func TestWriteNamesManyForeignFiles(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	files := site(25, 10, 1)
	plant(t, dir, tree{})
	for _, f := range files {
		plant(t, dir, tree{f.Path: "mine"})
	}
	_, err := Write(dir, files, Mark{})
	if err == nil || !strings.Contains(err.Error(), "public/guides/page-0/index.html, ") ||
		!strings.Contains(err.Error(), " and 15 more are in the way") {
		t.Errorf("error: %v", err)
	}
}

// A folder or a file of the site may have been replaced by a link that leads out of the folder. Nothing is written,
// read or removed through it.
func TestWriteNeverFollowsLinks(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "public")
	outside := tree{"outside/soil/index.html": "mine", "outside/index.html": "mine too"}
	write(t, dir, first)
	plant(t, parent, outside)
	replace := func(name, target string) {
		t.Helper()
		link := filepath.Join(dir, name)
		if err := errors.Join(os.RemoveAll(link), os.Symlink(target, link)); err != nil {
			t.Fatal(err)
		}
	}
	replace("guides", filepath.Join(parent, "outside"))
	replace("index.html", filepath.Join(parent, "outside", "index.html"))
	before := readTree(t, parent)
	files := pages("guides/soil/index.html", "new soil", "guides/water/index.html", "water")
	if _, err := Write(dir, files, Mark{}); err == nil ||
		!strings.Contains(err.Error(), "public/guides is in the way") {
		t.Errorf("error: %v", err)
	}
	same(t, "files", readTree(t, parent), before)

	write(t, dir, nil)
	after := readTree(t, parent)
	for name, content := range outside {
		same(t, name, after[name], content)
	}
	same(t, "the link to a folder", after["public/guides"], "-> "+filepath.Join(parent, "outside"))
	same(t, "the link to a file", after["public/index.html"], "-> "+filepath.Join(parent, "outside", "index.html"))
}

// The list is a file that anybody can edit. It must never lead a press out of the folder.
func TestWriteRefusesAListItCannotTrust(t *testing.T) {
	for name, text := range map[string]string{
		"empty":        "",
		"other text":   "hello\n",
		"climbing out": manifestHead + "kept 0 ../beside.txt\n",
		"absolute":     manifestHead + "kept 0 /beside.txt\n",
		"cut short":    manifestHead + "kept 0 index.html",
		"no number":    manifestHead + "kept x index.html\n",
		"a field less": manifestHead + "kept index.html\n",
		"our own name": manifestHead + "kept 0 " + manifestName + "\n",
	} {
		t.Run(name, func(t *testing.T) {
			parent := t.TempDir()
			dir := filepath.Join(parent, "public")
			write(t, dir, first)
			plant(t, parent, tree{"beside.txt": "mine", "public/" + manifestName: text})
			before := readTree(t, parent)
			if _, err := Write(dir, nil, Mark{}); err == nil || !strings.Contains(err.Error(), "public/"+manifestName) {
				t.Errorf("error: %v", err)
			}
			same(t, "files", readTree(t, parent), before)
		})
	}
}

func TestWriteKeepsForeignFilesInTheStagingFolder(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	write(t, dir, first)
	plant(t, dir, tree{stagingName + "/mine.txt": "mine", stagingName + "/0123456789abcdef-7": "left by a press"})
	_, err := Write(dir, nil, Mark{})
	if err == nil || !strings.Contains(err.Error(), "public/"+stagingName+"/mine.txt is in the way") {
		t.Errorf("error: %v", err)
	}
	same(t, "my file", readTree(t, dir)[stagingName+"/mine.txt"], "mine")
	if err := os.Remove(filepath.Join(dir, stagingName, "mine.txt")); err != nil {
		t.Fatal(err)
	}
	write(t, dir, nil)
	same(t, "files", readTree(t, dir).withoutList(), tree{})
}
