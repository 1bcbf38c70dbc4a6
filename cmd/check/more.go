package main

import (
	"context"
	"embed"
	"os"
	"path/filepath"

	"acreleaf/cmd/check/internal/step"
)

// morePages are guides that only the checks press: one of ten worksheets, those with every kind of number, one with
// what must be said, and one with figures in every part of a text.
//
//go:embed ten.md kinds.md days.md cautions.md margin.md
var morePages embed.FS

// pressMore presses the demo content with the guides of the checks.
func (b *bench) pressMore(ctx context.Context, r *step.Record) error {
	if err := os.CopyFS(b.more, os.DirFS("content")); err != nil {
		return err
	}
	if err := os.CopyFS(filepath.Join(b.more, "guides"), morePages); err != nil {
		return err
	}
	return b.pressInto(ctx, r, b.more, b.moreSite)
}

// browserMore gives the step that runs one of the test scripts on that site.
func (b *bench) browserMore(script string) func(context.Context, *step.Record) error {
	return func(ctx context.Context, r *step.Record) error {
		return b.node(ctx, r, script, b.more, b.moreSite)
	}
}
