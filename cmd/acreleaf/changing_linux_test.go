package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// TestChangedWhilePressed saves another text and the old one again while a press is at work, and presses once more: it
// may not take the site of the other text for one of the old text. The first save comes when the press looks at a large
// file: it has looked at the page by then, and not yet read it.
func TestChangedWhilePressed(t *testing.T) {
	folder := t.TempDir()
	if err := os.CopyFS(folder, os.DirFS(filepath.Join("testdata", "site"))); err != nil {
		t.Fatal(err)
	}
	stretch(t, filepath.Join(folder, "content", "zz.mp4"), 95<<20)
	home := filepath.Join(folder, "content", "home.md")
	text, err := os.ReadFile(home)
	if err != nil {
		t.Fatal(err)
	}
	save := func(text string) {
		if err := os.WriteFile(home+".new", []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		if err := os.Rename(home+".new", home); err != nil {
			t.Fatal(err)
		}
	}
	const tries = 6
	told := 0
	for try := range tries {
		text := fmt.Sprintf("%s\nTry %d.\n", text, try)
		save(text) // or there would be nothing to press
		c := exec.Command("acreleaf", "press")
		var said strings.Builder
		c.Dir, c.Stderr = folder, &said
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		waitUntilOpen(c.Process.Pid, "zz.mp4")
		save(text + "EDITED\n")
		_ = c.Wait() // it may end with a fault; what counts is the next one
		if strings.Contains(said.String(), " changed while the site was made from it.\n") {
			told++
		}
		save(text)
		if said, err := press(folder, "acreleaf"); err != nil {
			t.Fatalf("%v\n%s", err, said)
		}
		page, err := os.ReadFile(filepath.Join(folder, "public", "index.html"))
		if err != nil || strings.Contains(string(page), "EDITED") {
			t.Fatalf("try %d: the site has a text that is not there: %v", try, err)
		}
	}
	t.Logf("%d of %d presses said that a file changed", told, tries)
	if told == 0 {
		t.Error("no press saw that a file changed")
	}
}

// TestGoneWhilePressed takes a page away while a press is at work: the press looks again, and says what is wrong now.
// The site stays as it was.
func TestGoneWhilePressed(t *testing.T) {
	folder := t.TempDir()
	if err := os.CopyFS(folder, os.DirFS(filepath.Join("testdata", "site"))); err != nil {
		t.Fatal(err)
	}
	if said, err := press(folder, "acreleaf"); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	for i := range 5 { // which take half a second to read
		stretch(t, filepath.Join(folder, "content", fmt.Sprintf("z%d.mp4", i)), 95<<20)
	}
	before := listing(t, filepath.Join(folder, "public"))
	c := exec.Command("acreleaf", "press")
	var said strings.Builder
	c.Dir, c.Stderr = folder, &said
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	waitUntilOpen(c.Process.Pid, "z0.mp4")
	if err := os.Remove(filepath.Join(folder, "content", "guides", "water.md")); err != nil {
		t.Fatal(err)
	}
	if err := c.Wait(); err == nil {
		t.Error("it pressed a site with a link that leads nowhere")
	}
	for _, want := range []string{`there is no file "guides/water.md" in content [link-broken]`,
		"Nothing was written: public is as it was.\n"} {
		if !strings.Contains(said.String(), want) {
			t.Errorf("it says no %q:\n%s", want, said.String())
		}
	}
	if after := listing(t, filepath.Join(folder, "public")); after != before {
		t.Errorf("the site changed:\n%s\n%s", before, after)
	}
}

// waitUntilOpen waits until a process has a file open, or has ended.
func waitUntilOpen(process int, name string) {
	for {
		open, err := filepath.Glob(fmt.Sprintf("/proc/%d/fd/*", process))
		if err != nil || len(open) == 0 {
			return
		}
		for _, one := range open {
			if file, err := os.Readlink(one); err == nil && filepath.Base(file) == name {
				return
			}
		}
		time.Sleep(time.Millisecond)
	}
}

// TestLargeFilesCostNoMemory presses beside three files of 3 GB, one of them of a kind that may be published.
func TestLargeFilesCostNoMemory(t *testing.T) {
	folder := t.TempDir()
	if err := os.CopyFS(folder, os.DirFS(filepath.Join("testdata", "site"))); err != nil {
		t.Fatal(err)
	}
	without := costOf(t, folder, "acreleaf", "press")
	for _, name := range []string{"film.mp4", "film.mov", "film.md.orig"} {
		stretch(t, filepath.Join(folder, "content", name), 3<<30)
	}
	with := costOf(t, folder, "acreleaf", "press")
	t.Logf("%.0f MB and %.2f s of processor without them, %.0f MB and %.2f s with them",
		without.megabytes, without.seconds, with.megabytes, with.seconds)
	if with.megabytes > without.megabytes+20 || with.seconds > without.seconds+1 {
		t.Error("they are read")
	}
}

// stretch makes a file with nothing but a hole in it.
func stretch(t *testing.T, name string, size int64) {
	t.Helper()
	file, err := os.Create(name)
	if err != nil {
		t.Fatal(err)
	}
	if err := file.Truncate(size); err != nil {
		t.Fatal(err)
	}
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
}
