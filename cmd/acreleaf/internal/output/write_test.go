package output

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

var first = pages(
	"assets/page.aaaa.css", "body{}",
	"index.html", "home, with page.aaaa.css",
	"guides/soil/index.html", "soil, with page.aaaa.css",
)

func TestWriteMakesTheSite(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "not", "there", "yet")
	same(t, "report", write(t, dir, first), Report{Written: 3})
	same(t, "files", readTree(t, dir).withoutList(), tree{
		"assets/": "", "assets/page.aaaa.css": "body{}",
		"index.html": "home, with page.aaaa.css",
		"guides/":    "", "guides/soil/": "", "guides/soil/index.html": "soil, with page.aaaa.css",
	})
}

func TestWriteTwiceGivesTheSameBytesAndKeepsTimes(t *testing.T) {
	dir := t.TempDir()
	write(t, dir, first)
	old := time.Now().Add(-48 * time.Hour).Truncate(time.Second)
	name := filepath.Join(dir, "index.html")
	if err := os.Chtimes(name, old, old); err != nil {
		t.Fatal(err)
	}
	for range 3 {
		same(t, "report", write(t, dir, first), Report{Unchanged: 3})
		info, err := os.Stat(name)
		if err != nil || !info.ModTime().Equal(old) {
			t.Fatalf("the time of an unchanged file is %v, was %v (%v)", info.ModTime(), old, err)
		}
	}
	before := readTree(t, dir)
	write(t, dir, first)
	same(t, "files and list", readTree(t, dir), before)
}

func TestWriteWritesOnlyWhatChanged(t *testing.T) {
	dir := t.TempDir()
	write(t, dir, first)
	second := pages(
		"assets/page.bbbb.css", "body{color:black}",
		"index.html", "home, with page.bbbb.css",
		"guides/water/index.html", "water, with page.bbbb.css",
	)
	same(t, "report", write(t, dir, second), Report{Written: 3, Removed: 2})
	same(t, "files", readTree(t, dir).withoutList(), tree{
		"assets/": "", "assets/page.bbbb.css": "body{color:black}",
		"index.html": "home, with page.bbbb.css",
		"guides/":    "", "guides/water/": "", "guides/water/index.html": "water, with page.bbbb.css",
	})
	same(t, "report", write(t, dir, nil), Report{Removed: 3})
	same(t, "files", readTree(t, dir).withoutList(), tree{})
}

// A change to the same size within the same tick of the clock has the looks of the file we wrote.
func TestWriteSeesWhatSomebodyElseChanged(t *testing.T) {
	want := tree{}
	for name, change := range map[string]func(path string) error{
		"same size":   func(path string) error { return os.WriteFile(path, []byte("HOME, with page.aaaa.css"), 0o644) },
		"other size":  func(path string) error { return os.WriteFile(path, []byte("mine"), 0o644) },
		"emptied":     func(path string) error { return os.Truncate(path, 0) },
		"removed":     os.Remove,
		"older clock": func(path string) error { return os.Chtimes(path, time.Unix(1, 0), time.Unix(1, 0)) },
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			for range 20 {
				write(t, dir, first)
				if len(want) == 0 {
					want = readTree(t, dir).withoutList()
				}
				if err := change(filepath.Join(dir, "index.html")); err != nil {
					t.Fatal(err)
				}
				report := write(t, dir, first)
				same(t, "files", readTree(t, dir).withoutList(), want)
				if wrote := 1; name == "older clock" && report.Written != 0 || name != "older clock" && report.Written != wrote {
					t.Fatalf("report %+v", report)
				}
			}
		})
	}
}

func TestWriteTwiceGivesTheSameBytes(t *testing.T) {
	dir, other := t.TempDir(), t.TempDir()
	write(t, dir, first)
	before := readTree(t, dir)
	same(t, "report", write(t, dir, first), Report{Unchanged: 3})
	same(t, "files, the list among them", readTree(t, dir), before)
	write(t, other, first)
	same(t, "files of another folder", readTree(t, other), before)
}

func TestWriteRefusesBadNames(t *testing.T) {
	for _, bad := range []string{"../out.html", "/etc/out.html", "a/../../out.html", "", manifestName, "a//b"} {
		parent := t.TempDir()
		dir := filepath.Join(parent, "public")
		if _, err := Write(dir, pages("index.html", "home", bad, "bad"), Mark{}); err == nil {
			t.Errorf("%q was written", bad)
		}
		same(t, "files for "+bad, readTree(t, parent), tree{})
	}
}

func TestWriteChangesNothingOutside(t *testing.T) {
	parent := t.TempDir()
	plant(t, parent, tree{"beside.txt": "mine", "other/guides/soil/index.html": "mine too"})
	dir := filepath.Join(parent, "public")
	for _, files := range [][]File{first, nil, first} {
		write(t, dir, files)
	}
	got := readTree(t, parent)
	for name := range got {
		if strings.HasPrefix(name, "public/") {
			delete(got, name)
		}
	}
	same(t, "files", got, tree{"beside.txt": "mine", "other/": "", "other/guides/": "", "other/guides/soil/": "",
		"other/guides/soil/index.html": "mine too"})
}

func TestWriteTakesFoldersForFilesAndFilesForFolders(t *testing.T) {
	dir := t.TempDir()
	states := [][]File{
		pages("guides", "a file"),
		pages("guides/soil/index.html", "soil"),
		pages("guides/soil", "a file", "guides/water/index.html", "water"),
		pages("guides", "a file again"),
		pages("guides/a/b/c/d", "deep"),
		pages("guides/a/b", "shallow"),
	}
	for i, files := range states {
		write(t, dir, files)
		for _, f := range files {
			content, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(f.Path)))
			if err != nil || string(content) != string(f.Bytes) {
				t.Fatalf("state %d: %s holds %q (%v)", i, f.Path, content, err)
			}
		}
		same(t, "listed", listed(t, dir), paths(files))
	}
}

// Until the files are put in place, a press can be given up: nothing of it is left, not even a folder for the site.
func TestDropLeavesNothing(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "sites", "public")
	for _, before := range [][]File{nil, oldSite} {
		if before != nil {
			write(t, dir, before)
		}
		want := readTree(t, parent)
		w, err := Begin(dir)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range newSite {
			if err := w.Put(f); err != nil {
				t.Fatal(err)
			}
		}
		if staged := readTree(t, filepath.Join(parent, "sites", stagingName+"-public")); len(staged) < 5 {
			t.Fatalf("the new files are not beside the site: %v", staged)
		}
		w.Drop()
		same(t, "files", readTree(t, parent), want)
	}
}

func TestFolderThatIsAFile(t *testing.T) {
	parent := t.TempDir()
	plant(t, parent, tree{"public": "mine"})
	for _, dir := range []string{"public", "public/site"} {
		_, err := Write(filepath.Join(parent, dir), first, Mark{})
		if err == nil || !strings.Contains(err.Error(), "needs a folder where there is a file. Nothing was written.") {
			t.Errorf("%s: %v", dir, err)
		}
		same(t, "files", readTree(t, parent), tree{"public": "mine"})
	}
}
