package output

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// A season of changes to one site: pages come, change and go, an asset changes its name, a page becomes a folder.
var (
	oldSite = pages(
		"assets/page.aaaa.css", "a",
		"index.html", "needs page.aaaa.css",
		"guides/soil/index.html", "soil needs page.aaaa.css",
		"guides/gone/index.html", "gone needs page.aaaa.css",
		"guides/same/index.html", "says the same",
		"manual", "a page without a folder needs page.aaaa.css",
	)
	newSite = pages(
		"assets/page.bbbb.css", "b",
		"index.html", "now needs page.bbbb.css",
		"guides/soil/index.html", "more soil needs page.bbbb.css",
		"guides/same/index.html", "says the same",
		"guides/new/deep/index.html", "new needs page.bbbb.css",
		"manual/index.html", "a folder needs page.bbbb.css",
	)
	foreign = tree{"CNAME": "mine", "guides/gone/mine.txt": "mine", "guides/soil/mine.txt": "mine"}
)

// prepared is a folder with the old site and foreign files in it.
func prepared(t *testing.T) string {
	dir := t.TempDir()
	write(t, dir, oldSite)
	plant(t, dir, foreign)
	return dir
}

func siteTree(t *testing.T, files []File) tree {
	dir := t.TempDir()
	write(t, dir, files)
	plant(t, dir, foreign)
	return readTree(t, dir).withoutList()
}

// contents maps each path to the contents it may have.
func contents(sites ...[]File) map[string][]string {
	allowed := map[string][]string{}
	for _, files := range sites {
		for _, f := range files {
			allowed[f.Path] = append(allowed[f.Path], string(f.Bytes))
		}
	}
	for name, content := range foreign {
		allowed[name] = []string{content}
	}
	return allowed
}

func isOneOf(content string, allowed []string) bool {
	for _, a := range allowed {
		if a == content {
			return true
		}
	}
	return false
}

// checkReaders fails when a reader could meet half a file, a page whose style is missing, or lack a foreign file.
func checkReaders(t *testing.T, dir, when string) {
	t.Helper()
	allowed := contents(oldSite, newSite)
	got := readTree(t, dir).withoutList()
	for name, content := range got {
		if strings.HasSuffix(name, "/") || strings.HasPrefix(name, stagingName) {
			continue
		}
		if !isOneOf(content, allowed[name]) {
			t.Errorf("%s: %s holds %q", when, name, content)
		}
		if _, asset, ok := strings.Cut(content, "needs "); ok {
			if _, there := got["assets/"+asset]; !there {
				t.Errorf("%s: %s needs %s, which is not there", when, name, asset)
			}
		}
	}
	for name := range foreign {
		if _, there := got[name]; !there {
			t.Errorf("%s: %s is gone", when, name)
		}
	}
}

func TestEveryStepIsFitForReaders(t *testing.T) {
	dir := prepared(t)
	watching := &countingDisk{disk: realDisk{}}
	watching.after = func(change string) { checkReaders(t, dir, "after "+change) }
	w := writerOn(dir, watching)
	report, err := w.write(newSite, Mark{})
	if err != nil {
		t.Fatal(err)
	}
	same(t, "report", report, Report{Written: 5, Unchanged: 1, Removed: 3})
	same(t, "files", readTree(t, dir).withoutList(), siteTree(t, newSite))
	if watching.changes < 20 {
		t.Errorf("only %d changes were looked at", watching.changes)
	}
}

// A press is cut at each of its steps; the next press, of the old site, the new one or none, must put all in order and
// know every file again.
func TestPressCutAtEveryStep(t *testing.T) {
	nexts := map[string][]File{"old": oldSite, "new": newSite, "none": nil}
	for name, next := range nexts {
		want := siteTree(t, next)
		steps := 0
		for cut := 0; ; cut++ {
			dir := prepared(t)
			_, err := writerOn(dir, &cutDisk{realDisk{}, cut}).write(newSite, Mark{})
			if err == nil {
				steps = cut
				break
			}
			if !errors.Is(err, errCut) {
				t.Fatalf("cut at %d: %v", cut, err)
			}
			when := fmt.Sprintf("cut at %d, then the %s site", cut, name)
			checkReaders(t, dir, when)
			write(t, dir, next)
			same(t, when, readTree(t, dir).withoutList(), want)
			same(t, when+", listed", listed(t, dir), paths(next))
			if t.Failed() {
				return
			}
		}
		if steps < 20 {
			t.Errorf("only %d steps were cut", steps)
		}
	}
}

// The press after a cut one is cut as well.
func TestPressCutTwice(t *testing.T) {
	want := siteTree(t, newSite)
	for first := 0; first < 40; first += 5 {
		for second := 0; second < 40; second += 4 {
			dir := prepared(t)
			_, _ = writerOn(dir, &cutDisk{realDisk{}, first}).write(newSite, Mark{})
			_, _ = writerOn(dir, &cutDisk{realDisk{}, second}).write(oldSite, Mark{})
			write(t, dir, newSite)
			same(t, fmt.Sprintf("cut at %d and %d", first, second), readTree(t, dir).withoutList(), want)
			if t.Failed() {
				return
			}
		}
	}
}

// Somebody puts a file of his own in a place that a cut press had listed and not filled.
func TestPressCutAndPlaceTaken(t *testing.T) {
	taken := 0
	for cut := range 40 {
		dir := prepared(t)
		if _, err := writerOn(dir, &cutDisk{realDisk{}, cut}).write(newSite, Mark{}); err == nil {
			break
		}
		if _, err := os.Lstat(filepath.Join(dir, "guides/new/deep/index.html")); err == nil {
			continue
		}
		taken++
		plant(t, dir, tree{"guides/new/deep/index.html": "my own words"})
		before := readTree(t, dir)
		_, err := Write(dir, newSite, Mark{})
		if err == nil || !strings.Contains(err.Error(), "guides/new/deep/index.html is in the way") {
			t.Fatalf("cut at %d: %v", cut, err)
		}
		write(t, dir, nil)
		after := readTree(t, dir)
		same(t, fmt.Sprintf("cut at %d", cut), after["guides/new/deep/index.html"], before["guides/new/deep/index.html"])
	}
	if taken < 10 {
		t.Errorf("the place was free only %d times", taken)
	}
}

// The disk fills up at each file and folder in turn. The old site, the list and everything else stay as they were.
func TestFullDiskLeavesTheOldSiteWhole(t *testing.T) {
	for room := 0; ; room++ {
		dir := prepared(t)
		before := readTree(t, dir)
		_, err := writerOn(dir, &fullDisk{realDisk{}, room}).write(newSite, Mark{})
		if err == nil {
			if room < 8 {
				t.Errorf("the disk filled up at only %d places", room)
			}
			return
		}
		if !errors.Is(err, syscall.ENOSPC) || !strings.Contains(err.Error(), "the disk is full") {
			t.Fatalf("room for %d: %v", room, err)
		}
		checkReaders(t, dir, fmt.Sprintf("room for %d", room))
		if strings.Contains(err.Error(), oldSiteWhole) {
			same(t, fmt.Sprintf("room for %d", room), readTree(t, dir).withoutList(), before.withoutList())
		} else if room < 7 {
			t.Errorf("room for %d: the error does not say that the old site is whole: %v", room, err)
		}
		write(t, dir, newSite)
		same(t, "the next press", readTree(t, dir).withoutList(), siteTree(t, newSite))
	}
}

func TestReadOnlyFolderIsSaidPlainly(t *testing.T) {
	dir := prepared(t)
	before := readTree(t, dir)
	for at := 1; at <= 8; at++ {
		_, err := writerOn(dir, &refusingDisk{disk: realDisk{}, at: at}).write(newSite, Mark{})
		if err == nil || !strings.Contains(err.Error(), "may not be written, its folder is read-only. "+oldSiteWhole) {
			t.Errorf("refused at %d: %v", at, err)
		}
		same(t, "files", readTree(t, dir), before)
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
