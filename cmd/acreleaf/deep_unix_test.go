//go:build unix

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// A page in folders so deep that its whole path, of more than 4,096 bytes, is none that the system takes, and a content
// folder of such a path: a press says what is too long, and the site is as it was.
func TestPathsThatNoSystemTakes(t *testing.T) {
	folder := t.TempDir()
	if err := os.CopyFS(folder, os.DirFS(filepath.Join("testdata", "site"))); err != nil {
		t.Fatal(err)
	}
	if said, err := press(folder, "acreleaf"); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	before := listing(t, filepath.Join(folder, "public"))
	makeDeep(t, filepath.Join(folder, "content", "guides"), strings.Repeat("w", 200), 21)
	for from, sentence := range map[string]string{
		"content": `^error: the name "guides/w+…w+/index\.html" has \d+ bytes, and may have 800 \[output-name\]\n` +
			`   note: put the source file into fewer folders, or give them shorter names\n1 error\n` +
			`Nothing was written: public is as it was\.\n$`,
		strings.Repeat("folder/", 600): `^error: the name of the content folder has 4200 bytes, more than this computer ` +
			`allows\n   note: go to a folder that is nearer to it, and name it from there: --from=FOLDER\n$`,
	} {
		press := exec.Command("acreleaf", "press", "--from", from)
		press.Dir = folder
		said, err := press.CombinedOutput()
		if err == nil || !regexp.MustCompile(sentence).Match(said) {
			t.Errorf("%v\n%s", err, said)
		}
	}
	if after := listing(t, filepath.Join(folder, "public")); after != before {
		t.Errorf("the site changed:\n%s\n%s", before, after)
	}
}

// makeDeep makes folders of a name in each other, and a page in the deepest, and takes them away after the test.
func makeDeep(t *testing.T, folder, name string, levels int) {
	t.Helper()
	root, err := os.OpenRoot(folder)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		_ = root.RemoveAll(name)
		_ = root.Close()
	})
	way := strings.TrimSuffix(strings.Repeat(name+"/", levels), "/")
	if err := root.MkdirAll(way, 0o755); err != nil {
		t.Fatal(err)
	}
	page := "---\ntitle: Deep\nsummary: Far down.\norder: 9\n---\nText.\n"
	if err := root.WriteFile(way+"/deep.md", []byte(page), 0o644); err != nil {
		t.Fatal(err)
	}
}
