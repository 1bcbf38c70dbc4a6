package desk

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"testing/synctest"
	"time"

	"github.com/fsnotify/fsnotify"
)

// A system in place of the real one: it reports nothing of itself, and takes so many folders.
type system struct {
	room   int
	events chan fsnotify.Event
}

func (s *system) Add(string) error {
	if s.room--; s.room < 0 {
		return syscall.ENOSPC
	}
	return nil
}

func (s *system) Remove(string) error { return nil }
func (s *system) Close() error        { return nil }

func (s *system) open() (reports, error) { return reports{events: s.events, folders: s}, nil }

// yardOf is a folder with a guide in it, watched by a system of the test.
func yardOf(t *testing.T, open func() (reports, error)) (folder string, w *watcher, said *screen) {
	t.Helper()
	folder, said = t.TempDir(), new(screen)
	save(t, filepath.Join(folder, "guides", "soil.md"), "one")
	w, err := watch(folder, "content", func(text string) { _, _ = said.Write([]byte(text + "\n")) }, open)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(w.close)
	return folder, w, said
}

// On a shared folder a system reports nothing that another computer does. What is saved there is found all the same,
// and the author is told once how.
func TestChangesWithoutReportsAreFound(t *testing.T) { synctest.Test(t, changesWithoutReports) }

func changesWithoutReports(t *testing.T) {
	folder, w, said := yardOf(t, (&system{room: 100}).open)
	guide := filepath.Join(folder, "guides", "soil.md")
	save(t, guide, "longer")
	names(t, w, "a save", "guides/soil.md")
	said.waitFor(t, "without a report of the system, as on a shared folder, so the desk looks at the folder every second.")
	for _, text := range []string{"short", "long again"} {
		save(t, guide, text)
		names(t, w, "a later save", "guides/soil.md")
	}
	past := time.Now().AddDate(-1, 0, 0)
	if err := os.Chtimes(guide, past, past); err != nil {
		t.Fatal(err)
	}
	names(t, w, "a file with a time of last year", "guides/soil.md")
	if err := os.Remove(guide); err != nil {
		t.Fatal(err)
	}
	names(t, w, "a file that is deleted", "guides/soil.md")
	save(t, filepath.Join(folder, "manual", "frost.md"), "one")
	everything(t, w, "a new folder")
	save(t, filepath.Join(folder, "manual", "frost.md"), "three")
	names(t, w, "a save in a new folder", "manual/frost.md")
	if err := os.RemoveAll(filepath.Join(folder, "manual")); err != nil {
		t.Fatal(err)
	}
	everything(t, w, "a folder that is deleted")
	if n := strings.Count(said.String(), "\n"); n != 1 {
		t.Errorf("%d sentences:\n%s", n, said)
	}
}

// A report that comes after the look found the change is one: the system is slow and not silent.
func TestALateReportIsOne(t *testing.T) { synctest.Test(t, lateReport) }

func lateReport(t *testing.T) {
	late := &system{room: 100, events: make(chan fsnotify.Event)}
	folder, w, said := yardOf(t, late.open)
	guide := filepath.Join(folder, "guides", "soil.md")
	for _, text := range []string{"longer", "short"} {
		save(t, guide, text)
		names(t, w, "a save", "guides/soil.md")
		late.events <- fsnotify.Event{Name: guide, Op: fsnotify.Write}
		names(t, w, "its report", "guides/soil.md")
	}
	if said.String() != "" {
		t.Error(said)
	}
}

// At its limit a system watches no more folders. The author is told once which limit it is and what the desk does
// instead, whether it was reached at the start or by a new folder.
func TestLimitsOfWatches(t *testing.T) {
	for name, open := range map[string]func() (reports, error){
		"no program more": func() (reports, error) { return reports{}, syscall.EMFILE },
		"no folder":       (&system{}).open,
		"one folder":      (&system{room: 1}).open,
		"two folders":     (&system{room: 2}).open,
	} {
		t.Run(name, func(t *testing.T) { synctest.Test(t, func(t *testing.T) { limitOfWatches(t, open) }) })
	}
}

func limitOfWatches(t *testing.T, open func() (reports, error)) {
	folder, w, said := yardOf(t, open)
	save(t, filepath.Join(folder, "manual", "spring", "frost.md"), "one")
	everything(t, w, "a new folder")
	for _, way := range []string{"guides/soil.md", "manual/spring/frost.md"} {
		save(t, filepath.Join(folder, filepath.FromSlash(way)), "another text")
		names(t, w, "a save", way)
	}
	text := said.String()
	if strings.Count(text, "\n") != 1 || !strings.Contains(text, "so the desk looks at the folder every second") {
		t.Errorf("the author is told\n%s", said)
	}
}

// A folder that comes in the place of another one is followed, though somebody has the old one open: the system then
// never reports that it was removed.
func TestAFolderThatSomebodyHasOpen(t *testing.T) {
	t.Parallel()
	for range 5 {
		folder, w, said := yardOf(t, reportsOfTheSystem)
		root, err := os.OpenRoot(folder)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.RemoveAll(folder); err != nil {
			t.Fatal(err)
		}
		save(t, filepath.Join(folder, "guides", "soil.md"), "two")
		said.waitFor(t, "the desk follows ")
		everything(t, w, "another folder")
		save(t, filepath.Join(folder, "guides", "soil.md"), "three")
		names(t, w, "a save in it", "guides/soil.md")
		_ = root.Close()
	}
}

// What a desk costs that nobody uses is mostly its looks. They are made more seldom where they take long.
func TestALookCostsLittle(t *testing.T) {
	var w watcher
	for _, took := range []time.Duration{0, 10 * time.Millisecond, 300 * time.Millisecond, time.Minute} {
		for _, deaf := range []bool{false, true} {
			w.deaf = deaf
			most := 100
			if w.deaf {
				most = 20
			}
			if pause := w.pause(look{took: took}); pause < often || pause < time.Duration(most)*took {
				t.Errorf("after a look of %v comes one in %v", took, pause)
			}
		}
	}
}
