package desk

import (
	"os"
	"path/filepath"
	"testing"
	"time"
)

// patience is how long a test waits for what must come. It is spent only when a test fails.
const patience = 20 * time.Second

// yard is a watched folder with a guide in it.
func yard(t *testing.T) (folder string, w *watcher) {
	t.Helper()
	folder = t.TempDir()
	save(t, filepath.Join(folder, "guides", "soil.md"), "one")
	w, err := watch(folder)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(w.close)
	return folder, w
}

func save(t *testing.T, path, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// changed waits for the watcher to tell of a change, and then until it has nothing more to tell.
func changed(t *testing.T, w *watcher, what string) {
	t.Helper()
	select {
	case <-w.changes:
	case <-time.After(patience):
		t.Fatalf("nothing is told of %s", what)
	}
	for {
		select {
		case <-w.changes:
		case <-time.After(100 * time.Millisecond):
			return
		}
	}
}

func TestSavesAreTold(t *testing.T) {
	folder, w := yard(t)
	guide := filepath.Join(folder, "guides", "soil.md")

	save(t, guide, "two")
	changed(t, w, "a save in place")

	for _, text := range []string{"three", "four"} { // twice: the first puts another file in the place of the watched one
		beside := filepath.Join(folder, "guides", "soil.new")
		save(t, beside, text)
		if err := os.Rename(beside, guide); err != nil {
			t.Fatal(err)
		}
		changed(t, w, "a save by a new file in the old one's place")
	}

	for range 50 {
		save(t, guide, "burst")
	}
	changed(t, w, "a burst")

	if err := os.Remove(guide); err != nil {
		t.Fatal(err)
	}
	changed(t, w, "a file that is deleted")
}

func TestNewFoldersAreWatched(t *testing.T) {
	folder, w := yard(t)
	inside := filepath.Join(folder, "manual", "spring", "frost.md")
	save(t, inside, "one") // the folders and the file at once: the file may be older than the watch
	changed(t, w, "new folders")
	save(t, inside, "two")
	changed(t, w, "a save in a new folder")

	if err := os.RemoveAll(filepath.Join(folder, "manual")); err != nil {
		t.Fatal(err)
	}
	changed(t, w, "a folder that is deleted")
	save(t, inside, "three")
	changed(t, w, "a folder that is there again")
	save(t, inside, "four")
	changed(t, w, "a save in a folder that is there again")
}

// What programs keep for themselves is no change of the content.
func TestHiddenFilesAreNotTold(t *testing.T) {
	folder, w := yard(t)
	save(t, filepath.Join(folder, ".git", "index"), "one")
	save(t, filepath.Join(folder, ".git", "objects", "00"), "one")
	save(t, filepath.Join(folder, "guides", ".soil.md.swp"), "one")
	select {
	case <-w.changes:
		t.Error("a hidden file is told of")
	case <-time.After(300 * time.Millisecond):
	}
	save(t, filepath.Join(folder, "guides", "soil.md"), "two")
	changed(t, w, "a save after those")
}

func TestAFolderThatIsNotThereCannotBeWatched(t *testing.T) {
	if w, err := watch(filepath.Join(t.TempDir(), "gone")); err == nil {
		w.close()
		t.Error("no error")
	}
}
