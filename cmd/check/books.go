package main

import (
	"archive/zip"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"

	"acreleaf/cmd/check/internal/step"
	"acreleaf/cmd/check/internal/tool"
)

// scriptJar is the reader of scripts on Java, where Debian puts it.
const scriptJar = "/usr/share/java/rhino.jar"

// epub makes the book of every guide and workshop, and has two checkers look at each: the one on Java, which knows EPUB
// 3.2, and one from npm, which knows 3.3. Both look at a book without its contents as well, and must find that one
// alone. One process of each checks all: reading its rules takes a checker longer than ten books.
func (b *bench) epub(ctx context.Context, r *step.Record) error {
	if _, err := r.Command(ctx, step.Command{Args: []string{b.acreleaf, "epub", "--to", b.books}}); err != nil {
		return err
	}
	books, err := filepath.Glob(filepath.Join(b.books, "*", "*.epub"))
	if err != nil || len(books) == 0 {
		return fmt.Errorf("there are no books: %w", err)
	}
	spoiled := filepath.Join(b.books, "spoiled.epub")
	if err := spoil(books[0], spoiled); err != nil {
		return err
	}
	all := append(slices.Clone(books), spoiled)
	checker, err := exec.LookPath(tool.EPUBCheck.Name)
	if err != nil {
		return err
	}
	jar, err := filepath.EvalSymlinks(checker)
	if err != nil {
		return err
	}
	java := []string{"java", "-Xss8m", "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-cp", scriptJar + ":" + jar,
		"org.mozilla.javascript.tools.shell.Main", filepath.Join(browserFolder, "books-java.js")}
	npm := []string{"node", filepath.Join(browserFolder, "books.mjs")}
	var faults []error
	for _, command := range [][]string{java, npm} {
		printed, err := r.Command(ctx, step.Command{Args: append(command, all...)})
		if err != nil {
			return err
		}
		var found []string
		for _, line := range refused.FindAllSubmatch(printed, -1) {
			found = append(found, string(line[1]))
		}
		if !slices.Equal(found, []string{spoiled}) {
			faults = append(faults, fmt.Errorf("%s refuses %q, and should refuse %s alone", command[0], found, spoiled))
		}
	}
	r.Note("  %d books, two checkers", len(books))
	return errors.Join(faults...)
}

// refused is how both scripts name a book with an error or a warning.
var refused = regexp.MustCompile(`(?m)^refused (.+)$`)

// spoil copies a book without its contents.
func spoil(from, to string) error {
	book, err := zip.OpenReader(from)
	if err != nil {
		return err
	}
	defer func() { _ = book.Close() }() // it was only read
	file, err := os.Create(to)
	if err != nil {
		return err
	}
	w := zip.NewWriter(file)
	for _, f := range book.File {
		if f.Name != "book/nav.xhtml" {
			err = errors.Join(err, w.Copy(f))
		}
	}
	return errors.Join(err, w.Close(), file.Close())
}
