package output

import (
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// tree is a folder's files by slash path; a folder has a slash at its end and no content.
type tree map[string]string

func readTree(t *testing.T, dir string) tree {
	t.Helper()
	files := tree{}
	err := filepath.WalkDir(dir, func(name string, entry fs.DirEntry, err error) error {
		if err != nil || name == dir {
			return err
		}
		inside, err := filepath.Rel(dir, name)
		if err != nil {
			return err
		}
		inside = filepath.ToSlash(inside)
		switch {
		case entry.IsDir():
			files[inside+"/"] = ""
		case entry.Type()&fs.ModeSymlink != 0:
			target, err := os.Readlink(name)
			files[inside] = "-> " + target
			return err
		default:
			content, err := os.ReadFile(name)
			files[inside] = string(content)
			return err
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// withoutList is the tree without Acreleaf's list of files.
func (files tree) withoutList() tree {
	rest := tree{}
	for name, content := range files {
		if name != manifestName {
			rest[name] = content
		}
	}
	return rest
}

// plant writes files by hand, as somebody else would.
func plant(t *testing.T, dir string, files tree) {
	t.Helper()
	for name, content := range files {
		full := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(full), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(full, []byte(content), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// pages makes files in a fixed order from paths and contents in turn.
func pages(pairs ...string) []File {
	var files []File
	for i := 0; i < len(pairs); i += 2 {
		files = append(files, File{pairs[i], []byte(pairs[i+1])})
	}
	return files
}

func same(t *testing.T, what string, got, want any) {
	t.Helper()
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("%s (-want +got):\n%s", what, diff)
	}
}

// writerOn is a writer that takes one file at a time, to a disk of the test's own.
func writerOn(dir string, d disk) *Writer {
	return &Writer{disk: d, dir: dir, workers: 1}
}
