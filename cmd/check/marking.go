package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"

	"acreleaf/cmd/check/internal/step"
)

// pressTwice presses the demo content with every workshop once more as a page in Spanish: its sentences are as they
// were, and the marks are in the other language.
func (b *bench) pressTwice(ctx context.Context, r *step.Record) error {
	if err := os.CopyFS(b.twice, os.DirFS("content")); err != nil {
		return err
	}
	if err := replace(filepath.Join(b.twice, "site.yaml"), "language: en\n", "language: [en, es]\n"); err != nil {
		return err
	}
	workshops, err := filepath.Glob(filepath.Join(b.twice, "workshops", "*.md"))
	if err != nil {
		return err
	}
	for _, name := range workshops {
		text, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		twin := filepath.Join(filepath.Dir(name), "es-"+filepath.Base(name))
		if err := os.WriteFile(twin, text, 0o644); err != nil {
			return err
		}
		if err := replace(twin, "language: en\n", "language: es\n"); err != nil {
			return err
		}
	}
	return b.pressInto(ctx, r, b.twice, b.twiceTo)
}

// replace puts a text in the place of another that a file has once.
func replace(name, old, text string) error {
	before, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	if bytes.Count(before, []byte(old)) != 1 {
		return fmt.Errorf("%s does not have %q once", name, old)
	}
	return os.WriteFile(name, bytes.Replace(before, []byte(old), []byte(text), 1), 0o644)
}

// browserTwice gives the step that runs one of the test scripts on that site.
func (b *bench) browserTwice(script string) func(context.Context, *step.Record) error {
	return func(ctx context.Context, r *step.Record) error {
		return b.node(ctx, r, script, b.twice, b.twiceTo)
	}
}
