package draft

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

func rootOf(t *testing.T, folder string) *os.Root {
	t.Helper()
	root, err := os.OpenRoot(folder)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = root.Close() })
	return root
}

func names(t *testing.T, folder string) string {
	t.Helper()
	var all []string
	err := filepath.WalkDir(folder, func(name string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() {
			all = append(all, filepath.Base(name))
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(all, " ")
}

// Of many drafts of one page at a time, one is written whole, the others are told, and nothing else is left.
func TestWriteAtOnce(t *testing.T) {
	folder := t.TempDir()
	root := rootOf(t, folder)
	const many = 20
	var all sync.WaitGroup
	errs := make([]error, many)
	for i := range many {
		all.Go(func() {
			text := strings.Repeat(fmt.Sprintf("%02d\n", i), 50_000)
			errs[i] = Write(root, "content", File{Name: "guides/new/frost.md", Text: []byte(text)})
		})
	}
	all.Wait()
	var refused *Error
	written := 0
	for _, err := range errs {
		switch {
		case err == nil:
			written++
		case !errors.As(err, &refused) || !strings.Contains(refused.Text, "content/guides/new/frost.md is there already"):
			t.Error(err)
		}
	}
	text, err := root.ReadFile("guides/new/frost.md")
	if err != nil || written != 1 || strings.Count(string(text), string(text[:3])) != 50_000 {
		t.Errorf("%d were written, the last with %d bytes: %v", written, len(text), err)
	}
	if left := names(t, folder); left != "frost.md" {
		t.Error(left)
	}
}

// Where the disk knows no second names, a file still keeps its place, and a new one gets it.
func TestSettleWithoutSecondNames(t *testing.T) {
	folder := t.TempDir()
	root := rootOf(t, folder)
	none := func(from, to string) error {
		return &os.LinkError{Op: "link", Old: from, New: to, Err: errors.ErrUnsupported}
	}
	for _, name := range []string{"one", "two"} {
		if err := root.WriteFile(name, []byte(name), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := settle(root, "one", "page", none); err != nil {
		t.Error(err)
	}
	if err := settle(root, "two", "page", none); !errors.Is(err, fs.ErrExist) {
		t.Error(err)
	}
	if text, err := root.ReadFile("page"); err != nil || string(text) != "one" {
		t.Errorf("%q, %v", text, err)
	}
}

// A file where a folder is needed is named, and nothing is left.
func TestWriteWhereNoFolderCanBe(t *testing.T) {
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "guides"), nil, 0o644); err != nil {
		t.Fatal(err)
	}
	err := Write(rootOf(t, folder), "content", File{Name: "guides/north/frost.md"})
	var refused *Error
	if !errors.As(err, &refused) || refused.Text != "content/guides is a file, and a folder is needed" {
		t.Error(err)
	}
	if left := names(t, folder); left != "guides" {
		t.Error(left)
	}
}
