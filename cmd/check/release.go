package main

import (
	"context"
	"crypto/sha256"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// release builds the program for every kind of computer into a folder, beside a list of their SHA-256 sums in the form
// that sha256sum -c reads. Each file is built under another name and renamed when its header has been read, so that
// the folder never has a file that was not looked at. Each is also built from a copy of the project in another folder,
// and must have the same bytes.
func release(ctx context.Context, w io.Writer, arguments []string) (bool, error) {
	set := flag.NewFlagSet("release", flag.ContinueOnError)
	set.SetOutput(w)
	to := set.String("to", "", "the folder for the programs; it is made if it is missing")
	if err := set.Parse(arguments); err != nil {
		return false, err
	}
	if *to == "" || set.NArg() > 0 {
		return false, errors.New("write the folder for the programs: go run ./cmd/check release -to ../acreleaf-release")
	}
	if err := os.MkdirAll(*to, 0o755); err != nil {
		return false, err
	}
	again, err := copyProject()
	if err != nil {
		return false, err
	}
	defer os.RemoveAll(again.folder)
	sums, failed := "", 0
	for _, t := range targets {
		size, sum, err := t.release(ctx, *to)
		if err == nil {
			err = again.same(ctx, t, sum)
		}
		if err != nil {
			failed++
			fmt.Fprintf(w, "%-14s FAILED: %v\n", t.name(), err)
			continue
		}
		fmt.Fprintf(w, "%-14s %s  %s\n", t.name(), size, t.file())
		sums += fmt.Sprintf("%x  %s\n", sum, t.file())
	}
	fmt.Fprintf(w, "%d built twice, from two folders: %d the same bytes, %d failed\n", len(targets), len(targets)-failed,
		failed)
	if failed > 0 {
		return false, nil
	}
	return true, replaceFile(filepath.Join(*to, "sha256.txt"), []byte(sums))
}

// release builds one target into the folder and gives its size and its sum.
func (t target) release(ctx context.Context, folder string) (size string, sum [sha256.Size]byte, err error) {
	file := filepath.Join(folder, t.file())
	unread := file + ".part"
	defer os.Remove(unread)
	if size, err = t.build(ctx, build{from: ".", to: unread}); err != nil {
		return "", sum, err
	}
	bytes, err := os.ReadFile(unread)
	if err != nil {
		return "", sum, err
	}
	return size, sha256.Sum256(bytes), os.Rename(unread, file)
}

// replaceFile writes a file under another name and renames it.
func replaceFile(name string, text []byte) error {
	part := name + ".part"
	if err := os.WriteFile(part, text, 0o644); err != nil {
		return err
	}
	return os.Rename(part, name)
}
