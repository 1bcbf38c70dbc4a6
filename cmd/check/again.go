package main

import (
	"context"
	"crypto/sha256"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
)

// A projectCopy is a copy of the project in a folder of its own, to see that the bytes of a program do not depend on
// where it was built.
type projectCopy struct{ folder string }

// notCopied are folders that no program is built from.
var notCopied = []string{"node_modules", ".tools"}

// copyProject copies the project with its repository, since the commit is in the programs.
func copyProject() (projectCopy, error) {
	folder, err := os.MkdirTemp("", "acreleaf-built-again-")
	if err != nil {
		return projectCopy{}, err
	}
	made := projectCopy{folder}
	err = filepath.WalkDir(".", func(name string, entry fs.DirEntry, err error) error {
		to := filepath.Join(made.project(), name)
		switch {
		case err != nil:
			return err
		case entry.IsDir() && slices.Contains(notCopied, entry.Name()):
			return fs.SkipDir
		case entry.IsDir():
			return os.MkdirAll(to, 0o755)
		case !entry.Type().IsRegular():
			return nil
		}
		text, err := os.ReadFile(name)
		if errors.Is(err, fs.ErrNotExist) {
			return nil // a lock of git that is gone
		}
		if err != nil {
			return err
		}
		info, err := entry.Info()
		if err != nil {
			return err
		}
		return os.WriteFile(to, text, info.Mode().Perm()|0o200)
	})
	return made, err
}

func (c projectCopy) project() string { return filepath.Join(c.folder, "project") }

// same builds a target from the copy, and compares its sum. For this kind of computer nothing that was compiled before
// is used either; for the others that would take two minutes of a processor each.
func (c projectCopy) same(ctx context.Context, t target, sum [sha256.Size]byte) error {
	file := filepath.Join(c.folder, t.file())
	b := build{from: c.project(), to: file}
	if t.system == runtime.GOOS && t.processor == runtime.GOARCH {
		b.environment = []string{"GOCACHE=" + filepath.Join(c.folder, "cache")}
	}
	if _, err := t.build(ctx, b); err != nil {
		return err
	}
	bytes, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	if sha256.Sum256(bytes) != sum {
		return errors.New("a second build, from a copy of the project, has other bytes")
	}
	return nil
}
