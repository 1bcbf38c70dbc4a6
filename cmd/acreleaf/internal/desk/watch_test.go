package desk

import (
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"acreleaf/cmd/acreleaf/internal/book"
)

// patience is how long a test waits for what must come. It is spent only when a test fails.
const patience = 20 * time.Second

// yard is a watched folder with a guide in it.
func yard(t *testing.T) (folder string, w *watcher) {
	t.Helper()
	folder = t.TempDir()
	save(t, filepath.Join(folder, "guides", "soil.md"), "one")
	w, err := watch(folder, "content", func(string) {}, reportsOfTheSystem)
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

// changed waits for the watcher to tell of a change, and then until it has nothing more to tell. It gives what changed.
func changed(t *testing.T, w *watcher, what string) book.Changes {
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
			return w.take()
		}
	}
}

// names wants a change to be told of by these names and no others.
func names(t *testing.T, w *watcher, what string, want ...string) {
	t.Helper()
	c := changed(t, w, what)
	if c.Everything || !slices.Equal(c.Names, want) {
		t.Errorf("%s: told of %v, not %v", what, c, want)
	}
}

// everything wants a change after which all is to be looked at.
func everything(t *testing.T, w *watcher, what string) {
	t.Helper()
	if c := changed(t, w, what); !c.Everything {
		t.Errorf("%s: told of %v alone", what, c.Names)
	}
}

func TestSavesAreTold(t *testing.T) {
	folder, w := yard(t)
	guide := filepath.Join(folder, "guides", "soil.md")

	save(t, guide, "two")
	names(t, w, "a save in place", "guides/soil.md")

	for _, text := range []string{"three", "four"} { // twice: the first puts another file in the place of the watched one
		beside := filepath.Join(folder, "guides", "soil.new")
		save(t, beside, text)
		if err := os.Rename(beside, guide); err != nil {
			t.Fatal(err)
		}
		names(t, w, "a save by a new file in the old one's place", "guides/soil.md", "guides/soil.new")
	}

	for range 50 {
		save(t, guide, "burst")
	}
	names(t, w, "a burst", "guides/soil.md")

	if err := os.Remove(guide); err != nil {
		t.Fatal(err)
	}
	names(t, w, "a file that is deleted", "guides/soil.md")
}

func TestNewFoldersAreWatched(t *testing.T) {
	folder, w := yard(t)
	inside := filepath.Join(folder, "manual", "spring", "frost.md")
	save(t, inside, "one") // the folders and the file at once: the file may be older than the watch
	everything(t, w, "new folders")
	save(t, inside, "two")
	names(t, w, "a save in a new folder", "manual/spring/frost.md")

	if err := os.RemoveAll(filepath.Join(folder, "manual")); err != nil {
		t.Fatal(err)
	}
	everything(t, w, "a folder that is deleted")
	save(t, inside, "three")
	everything(t, w, "a folder that is there again")
	save(t, inside, "four")
	names(t, w, "a save in a folder that is there again", "manual/spring/frost.md")
}

// A folder with another name is watched by that name, and no longer by the old one.
func TestRenamedFoldersAreWatched(t *testing.T) {
	folder, w := yard(t)
	old, now := filepath.Join(folder, "guides"), filepath.Join(folder, "manual")
	if err := os.Rename(old, now); err != nil {
		t.Fatal(err)
	}
	everything(t, w, "a folder that is renamed")
	save(t, filepath.Join(now, "soil.md"), "two")
	names(t, w, "a save in a renamed folder", "manual/soil.md")
	if err := os.Rename(now, old); err != nil {
		t.Fatal(err)
	}
	everything(t, w, "a folder that has its name again")
	save(t, filepath.Join(old, "soil.md"), "three")
	names(t, w, "a save in a folder that has its name again", "guides/soil.md")
}

// The content folder itself may go, and another may come in its place.
func TestTheFolderItselfComesBack(t *testing.T) {
	folder, w := yard(t)
	aside := folder + "-aside"
	if err := os.Rename(folder, aside); err != nil {
		t.Fatal(err)
	}
	everything(t, w, "the folder that is away")
	save(t, filepath.Join(aside, "guides", "soil.md"), "away") // no concern of ours
	if err := os.Rename(aside, folder); err != nil {
		t.Fatal(err)
	}
	everything(t, w, "the folder that is back")
	save(t, filepath.Join(folder, "guides", "soil.md"), "two")
	names(t, w, "a save in the folder that is back", "guides/soil.md")

	if err := os.RemoveAll(folder); err != nil {
		t.Fatal(err)
	}
	everything(t, w, "the folder that is deleted")
	save(t, filepath.Join(folder, "guides", "soil.md"), "three")
	everything(t, w, "the folder that is there again")
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
	names(t, w, "a save after those", "guides/soil.md")
}

func TestAFolderThatIsNotThereCannotBeWatched(t *testing.T) {
	if w, err := watch(filepath.Join(t.TempDir(), "gone"), "content", nil, reportsOfTheSystem); err == nil {
		w.close()
		t.Error("no error")
	}
}
