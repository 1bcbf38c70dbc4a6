package output

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

// withoutLocks is a computer whose file system has no locks.
func withoutLocks(now time.Time) machine {
	m := thisMachine()
	m.name, m.now = "packhouse", func() time.Time { return now }
	m.take = func(*os.File) error { return errNoLocks }
	return m
}

// Many take a lock at once, again and again: one at a time has it, with the locks of the system and without.
func TestOneAtATimeHasTheLock(t *testing.T) {
	for name, m := range map[string]machine{"with locks": thisMachine(), "without": withoutLocks(time.Now())} {
		path := filepath.Join(t.TempDir(), "lock")
		var holders, most, taken atomic.Int64
		var wait sync.WaitGroup
		for range 8 {
			wait.Go(func() {
				for range 200 {
					free, err := m.lock(path)
					if err != nil {
						var h *held
						if !errors.As(err, &h) {
							t.Errorf("%s: %v", name, err)
						}
						continue
					}
					taken.Add(1)
					if n := holders.Add(1); n > 1 {
						most.Store(n)
					}
					holders.Add(-1)
					free()
				}
			})
		}
		wait.Wait()
		if most.Load() > 0 || taken.Load() < 8 {
			t.Errorf("%s: %d had the lock at once, it was taken %d times", name, most.Load(), taken.Load())
		}
		if _, err := os.Lstat(path); !errors.Is(err, os.ErrNotExist) {
			t.Errorf("%s: the lock stays: %v", name, err)
		}
	}
}

// gone is the number of a process that has ended.
func gone(t *testing.T) int {
	t.Helper()
	test := exec.Command(os.Args[0], "-test.run=^$")
	if err := test.Run(); err != nil {
		t.Fatal(err)
	}
	return test.Process.Pid
}

// A lock that was left is judged by what it says, where the file system has no locks, and taken over where it has.
func TestLocksThatWereLeft(t *testing.T) {
	now := time.Date(2026, 11, 30, 9, 0, 0, 0, time.UTC)
	text := func(process int, computer string, since time.Time) string {
		return owner{process, computer, since}.text()
	}
	earlier, later := now.Add(-time.Hour), now.AddDate(1, 0, 0) // by a clock that was wrong
	runs := fmt.Sprintf("another acreleaf is writing public: process %d on packhouse, since ", os.Getpid())
	const elsewhere = "another computer writes public, or failed while it did: process 7 on "
	const unknown = "does not say who is writing public"
	for name, test := range map[string]struct{ left, said string }{
		"a process that has ended":   {text(gone(t), "packhouse", earlier), ""},
		"one that runs":              {text(os.Getpid(), "packhouse", earlier), runs},
		"another computer":           {text(7, "office", earlier), elsewhere + "office, since "},
		"a time to come":             {text(gone(t), "packhouse", later), "begins in the future: process "},
		"one that runs, of then":     {text(os.Getpid(), "packhouse", later), "begins in the future: process "},
		"nothing":                    {"", unknown},
		"a text of somebody else":    {"mine", unknown},
		"a line that was cut":        {strings.TrimSuffix(text(7, "packhouse", earlier), "\n"), unknown},
		"an impossible process":      {text(-1, "packhouse", earlier), ""},
		"a name with a line's break": {text(7, "off\nice", earlier), elsewhere + `"off\nice", since`},
	} {
		path := filepath.Join(t.TempDir(), "lock")
		if err := os.WriteFile(path, []byte(test.left), 0o644); err != nil {
			t.Fatal(err)
		}
		free, err := withoutLocks(now).lock(path)
		var h *held
		switch {
		case test.said == "" && err == nil:
			free()
		case errors.As(err, &h):
			h.folder = "public"
			if text := err.Error(); test.said == "" || !strings.Contains(text, test.said) ||
				!strings.Contains(text, "Nothing was changed.") {
				t.Errorf("%s: %v", name, err)
			}
			if content, err := os.ReadFile(path); err != nil || string(content) != test.left {
				t.Errorf("%s: it holds %q (%v)", name, content, err)
			}
		default:
			t.Errorf("%s: %v", name, err)
		}
		if err := os.WriteFile(path, []byte(test.left), 0o644); err != nil {
			t.Fatal(err)
		}
		free, err = thisMachine().lock(path)
		if err != nil {
			t.Fatalf("%s, with locks: %v", name, err)
		}
		free()
	}
}

// Of two presses into one folder, the second says who is writing; with Wait it waits. It takes nothing of the first.
func TestTheSecondPressWaits(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	write(t, dir, oldSite)
	first, err := Begin(dir)
	if err != nil {
		t.Fatal(err)
	}
	if err := first.Put(newSite[0]); err != nil {
		t.Fatal(err)
	}
	said := fmt.Sprintf("another acreleaf is writing %s: process %d on ", filepath.ToSlash(dir), os.Getpid())
	if _, err := Begin(dir); err == nil || !strings.Contains(err.Error(), said) ||
		!strings.HasSuffix(err.Error(), "Nothing was changed. Wait until it is done, or add --wait") {
		t.Errorf("error: %v", err)
	}
	var told []string
	done := make(chan error)
	go func() {
		second, err := Wait(dir, func(text string) { told = append(told, text) })
		if err == nil {
			err = second.Put(oldSite[1])
		}
		if err == nil {
			_, err = second.Commit(Mark{})
		}
		done <- err
	}()
	time.Sleep(500 * time.Millisecond)
	if _, err := first.Commit(Mark{}); err != nil {
		t.Fatal(err)
	}
	if err := <-done; err != nil || len(told) != 1 || !strings.HasPrefix(told[0], said) {
		t.Errorf("it says %q, %v", told, err)
	}
	same(t, "files", readTree(t, filepath.Dir(dir)), tree{"public/": "",
		"public/index.html": string(oldSite[1].Bytes), "public/" + manifestName: readTree(t, dir)[manifestName]})
}

// What a press cannot write to is one sentence.
func TestTargetsThatCannotBe(t *testing.T) {
	parent := t.TempDir()
	if err := os.Symlink("nowhere", filepath.Join(parent, "dangling")); err != nil {
		t.Log("this computer makes no links:", err)
		return
	}
	const tooLong = "is a longer name than this computer allows. Nothing was written. Choose another folder"
	for dir, said := range map[string]string{
		"dangling":               "/dangling is a link to something that is not there. Nothing was written.",
		strings.Repeat("a", 300): tooLong,
		strings.Repeat("folder/", 585) + "public": tooLong,
	} {
		_, err := Write(filepath.Join(parent, dir), first, Mark{})
		if err == nil || !strings.Contains(err.Error(), said) || len(err.Error()) > 400 {
			t.Errorf("%.20s: %v", dir, err)
		}
	}
	same(t, "files", readTree(t, parent), tree{"dangling": "-> nowhere"})
}

// A folder behind a link, and one with a long name, are written file by file, and nothing is left beside them.
func TestFoldersThatCannotBeExchanged(t *testing.T) {
	parent := t.TempDir()
	if err := errors.Join(os.Mkdir(filepath.Join(parent, "real"), 0o755),
		os.Symlink("real", filepath.Join(parent, "link"))); err != nil {
		t.Log("this computer makes no links:", err)
		return
	}
	long := strings.Repeat("a", 250)
	for _, dir := range []string{"link", long} {
		for _, files := range [][]File{oldSite, newSite} {
			write(t, filepath.Join(parent, dir), files)
			same(t, "listed", listed(t, filepath.Join(parent, dir)), paths(files))
		}
	}
	entries, err := os.ReadDir(parent)
	if err != nil || len(entries) != 3 {
		t.Errorf("%v, %v", entries, err)
	}
}
