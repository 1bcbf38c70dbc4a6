package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"acreleaf/cmd/check/internal/pressed"
	"acreleaf/cmd/check/internal/step"
)

// press builds the program, and what answers for it in the browser's checks, and presses the demo site. All are linked
// without the tables for a debugger, as the tests are.
func (b *bench) press(ctx context.Context, r *step.Record) error {
	_, err := r.Command(ctx, step.Command{Env: roomy, Args: []string{
		"go", "build", "-ldflags=-s -w", "-o", filepath.Dir(b.acreleaf) + string(filepath.Separator),
		"./cmd/acreleaf", "./cmd/acreleaf/internal/cli/answers", "./cmd/acreleaf/internal/cli/marks",
	}})
	if err != nil {
		return err
	}
	return b.pressInto(ctx, r, "content", b.site)
}

// again presses the site twice more: into another folder, and into the first once more. All must hold the same
// bytes, and nothing else may have changed: not in the project, not in the home folder, not in the folder for
// temporary files.
func (b *bench) again(ctx context.Context, r *step.Record) error {
	first, err := pressed.Snapshot(b.site)
	if err != nil {
		return err
	}
	before, err := project()
	if err != nil {
		return err
	}
	var faults []error
	for _, dir := range []string{b.site + "-again", b.site} {
		if err := b.pressInto(ctx, r, "content", dir); err != nil {
			return err
		}
		next, err := pressed.Snapshot(dir)
		if err != nil {
			return err
		}
		faults = append(faults, same("two presses of the same content differ", first.Differ(next)))
	}
	after, err := project()
	if err != nil {
		return err
	}
	aside, err := pressed.Snapshot(b.aside)
	if err != nil {
		return err
	}
	r.Note("  %d files and folders, the same each time", len(first))
	return errors.Join(append(faults,
		same("the press changed the project beside its output", before.Differ(after)),
		same("the press left something in the home or temporary folder", aside.Differ(emptyAside)),
	)...)
}

// emptyAside is the folder aside with nothing put into it.
var emptyAside = pressed.Tree{"./": {}, "home/": {}, "tmp/": {}}

// pressInto presses the content into dir, with a home and a temporary folder in which anything left will be seen.
func (b *bench) pressInto(ctx context.Context, r *step.Record, content, dir string) error {
	home, tmp := filepath.Join(b.aside, "home"), filepath.Join(b.aside, "tmp")
	for _, folder := range []string{home, tmp} {
		if err := os.MkdirAll(folder, 0o755); err != nil {
			return err
		}
	}
	_, err := r.Command(ctx, step.Command{
		Args: []string{b.acreleaf, "press", "--from", content, "--to", dir},
		Env:  []string{"HOME=" + home, "TMPDIR=" + tmp},
	})
	return err
}

// project takes the state of the project's folder. What git and npm keep for themselves is not part of it.
func project() (pressed.Tree, error) { return pressed.Snapshot(".", ".git", "node_modules") }

// same gives an error when there are paths that differ.
func same(fault string, paths []string) error {
	if len(paths) == 0 {
		return nil
	}
	const enough = 20
	return fmt.Errorf("%s: %s", fault, strings.Join(paths[:min(len(paths), enough)], " "))
}
