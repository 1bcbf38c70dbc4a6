package main

import (
	"bytes"
	"context"
	"errors"
	"strings"

	"acreleaf/cmd/check/internal/step"
)

// rowsSpeed works 10,000 rows of a file and notes how many a second that was, and how much memory it took.
func rowsSpeed(ctx context.Context, r *step.Record) error {
	const folder = "./cmd/acreleaf/internal/rows"
	args := []string{"go", "test", "-count=1", "-vet=off", "-v", "-run", "^TestRowsSpeed$", folder}
	out, err := r.Command(ctx, step.Command{Args: args})
	if err != nil {
		return err
	}
	for line := range bytes.Lines(out) {
		if _, figures, found := strings.Cut(string(line), "_test.go:"); found {
			_, figures, _ = strings.Cut(figures, ": ")
			r.Note("  %s", strings.TrimSpace(figures))
			return nil
		}
	}
	return errors.New("the test of 10,000 rows did not say how fast it was")
}
