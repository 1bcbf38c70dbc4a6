package main

import (
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"regexp"
	"strings"
	"syscall"
	"testing"
)

// A disk that has no room left ends a press with a clear sentence, and the old site is whole. The disk is a small one
// in memory. Where none may be mounted, the log says so, and only TestLargestFile stands for it here; that the sentence
// for a full disk is right is then left to the tests of the output package.
func TestFullDisk(t *testing.T) {
	folder := t.TempDir()
	public := filepath.Join(folder, "public")
	if err := os.Mkdir(public, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := syscall.Mount("tmpfs", public, "tmpfs", 0, "size=1m"); err != nil {
		t.Logf("no disk can be mounted here: %v", err)
		return
	}
	t.Cleanup(func() { _ = syscall.Unmount(public, 0) })
	// Files are written side by side, so that a small one may be the first that finds no room.
	runOut(t, folder, "acreleaf", `error: the disk is full, there is no room for public/(large\.svg|index\.html)\. `+
		`What was there before is unchanged\. Free some space and try again: no space left on device\n`)
}

// A system that lets nobody write so large a file ends a press in the same way.
func TestLargestFile(t *testing.T) {
	runOut(t, t.TempDir(), "limited", `error: public/large\.svg could not be written\. What was there before is `+
		`unchanged\. Try again, or choose another folder with --to: file too large\n`)
}

// runOut presses a site, presses it again with more than there is room for, and then with less.
func runOut(t *testing.T, folder, program, sentence string) {
	t.Helper()
	if err := os.CopyFS(folder, os.DirFS(filepath.Join("testdata", "site"))); err != nil {
		t.Fatal(err)
	}
	if said, err := press(folder, program); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	public := filepath.Join(folder, "public")
	before := listing(t, public)
	home := addLarge(t, filepath.Join(folder, "content"))
	said, err := press(folder, program)
	if err == nil || !regexp.MustCompile(`^`+sentence+`$`).MatchString(said) {
		t.Errorf("%v\n%swant\n%s", err, said, sentence)
	}
	if after := listing(t, public); after != before {
		t.Errorf("the old site is not whole:\n%swas\n%s", after, before)
	}
	if err := os.WriteFile(filepath.Join(folder, "content", "home.md"), home, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(filepath.Join(folder, "content", "large.svg")); err != nil {
		t.Fatal(err)
	}
	if said, err := press(folder, program); err != nil {
		t.Errorf("with room again: %v\n%s", err, said)
	}
}

// addLarge puts almost two megabytes and a changed home page into the content, and gives the home page that was there.
func addLarge(t *testing.T, content string) []byte {
	t.Helper()
	home, err := os.ReadFile(filepath.Join(content, "home.md"))
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{
		"large.svg": `<svg xmlns="http://www.w3.org/2000/svg">` + strings.Repeat("<!-- almost 2 MB -->\n", 85_000) + `</svg>`,
		"home.md":   "---\ntitle: Test Row\nsummary: Changed.\n---\nSee ![it](large.svg).\n",
	} {
		if err := os.WriteFile(filepath.Join(content, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return home
}

// fileLimit is more than the theme's files take and less than addLarge adds.
const fileLimit = 1 << 20

// asLimited runs the program where no file can be larger than fileLimit.
func asLimited() {
	signal.Ignore(syscall.SIGXFSZ) // so that writing ends in an error
	limit := syscall.Rlimit{Cur: fileLimit, Max: fileLimit}
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &limit); err != nil {
		fmt.Fprintln(os.Stderr, "the limit cannot be set:", err)
		os.Exit(3)
	}
	main()
}
