//go:build unix

package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"testing"
	"time"
)

// The right to write is taken away while a press is at work: in the site's folder, and in the one that it is in. The
// press says so in a sentence, and the site is as it was. With the right again, the next press makes all whole.
func TestRightsTakenAwayMidway(t *testing.T) {
	folder := t.TempDir()
	public := filepath.Join(folder, "public")
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	// A guest comes in, and writes where the superuser made the folder.
	must(os.Chmod(filepath.Dir(folder), 0o755))
	must(os.Chmod(folder, 0o777))
	must(os.CopyFS(filepath.Join(folder, "content"), os.DirFS(filepath.Join("testdata", "site", "content"))))
	if said, err := press(folder, "guest"); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	before := listing(t, public)
	for i := range 300 { // which take a while to make
		must(os.WriteFile(filepath.Join(folder, "content", "guides", fmt.Sprintf("page-%d.md", i)),
			fmt.Appendf(nil, "---\ntitle: Page %d\nsummary: One.\norder: %d\n---\nOne.\n", i, i+10), 0o644))
	}
	guest := exec.Command("guest", "press")
	guest.Dir = folder
	ended := make(chan string)
	go func() {
		said, err := guest.CombinedOutput()
		ended <- fmt.Sprintf("%s%v", said, err)
	}()
	lock := filepath.Join(folder, ".acreleaf-lock-public")
	for end := time.Now().Add(deskPatience); ; time.Sleep(time.Millisecond) {
		if _, err := os.Lstat(lock); err == nil {
			break
		} else if !errors.Is(err, os.ErrNotExist) || time.Now().After(end) {
			t.Fatalf("the press takes no lock: %v", err)
		}
	}
	must(errors.Join(os.Chmod(folder, 0o555), os.Chmod(public, 0o555)))
	said := <-ended
	must(errors.Join(os.Chmod(folder, 0o777), os.Chmod(public, 0o755)))
	if !regexp.MustCompile(`^error: (public|\.acreleaf-new-public)(/\S+)? may not be written, \S.*\. What was there ` +
		`before is unchanged\. Give yourself the right to write there, or choose another folder with --to: ` +
		`permission denied\nexit status 1$`).MatchString(said) {
		t.Error(said)
	}
	if after := listing(t, public); after != before {
		t.Errorf("the site changed:\n%s\n%s", before, after)
	}
	if said, err := press(folder, "guest"); err != nil {
		t.Fatalf("with the right again: %v\n%s", err, said)
	}
	if _, err := os.Lstat(filepath.Join(public, "guides", "page-299", "index.html")); err != nil {
		t.Error(err)
	}
	entries, err := os.ReadDir(folder)
	if err != nil || len(entries) != 2 {
		t.Errorf("the presses leave %v (%v)", entries, err)
	}
}
