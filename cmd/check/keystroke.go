package main

import (
	"context"
	_ "embed"
	"os"
	"path/filepath"

	"acreleaf/cmd/check/internal/step"
)

//go:embed ten.md
var tenWorksheets []byte

// keystroke presses the demo content with one more guide, of ten worksheets, and times a keystroke on it.
func (b *bench) keystroke(ctx context.Context, r *step.Record) error {
	if err := os.CopyFS(b.ten, os.DirFS("content")); err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(b.ten, "guides", "ten.md"), tenWorksheets, 0o644); err != nil {
		return err
	}
	if err := b.pressInto(ctx, r, b.ten, b.tenSite); err != nil {
		return err
	}
	return b.node(ctx, r, "keystroke.mjs", b.ten, b.tenSite)
}
