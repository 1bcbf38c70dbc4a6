package main

import (
	"context"
	_ "embed"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"

	"acreleaf/cmd/check/internal/step"
)

//go:embed unbundled.go.txt
var unbundled []byte

// races runs the tests in which goroutines meet once more, under the race detector. It makes everything five to ten
// times as slow, and where one goroutine works alone it has nothing to find.
func (b *bench) races(ctx context.Context, r *step.Record) error {
	overlay, err := b.withoutBundler()
	if err != nil {
		return err
	}
	const (
		internal = "./cmd/acreleaf/internal/"
		// In these one goroutine works at a time, over and over.
		alone = "^(TestAPauseAtEachStep|TestEveryCallFails|TestPressCutAtEveryCall|TestRandomPresses)$"
	)
	return errors.Join(
		runTests(ctx, r, "-race", overlay, "-skip", alone, internal+"desk", internal+"output", internal+"book",
			"./cmd/check/internal/step"),
		runTests(ctx, r, "-race", overlay, "-run", "AnyNumberOfWorkers|^TestAPanic|^TestParallel", internal+"edition/site",
			internal+"markdown"),
	)
}

// withoutBundler gives the flag that has the Go tool compile package assets without the bundler.
func (b *bench) withoutBundler() (string, error) {
	if err := os.MkdirAll(b.raced, 0o755); err != nil {
		return "", err
	}
	instead := filepath.Join(b.raced, "build.go")
	if err := os.WriteFile(instead, unbundled, 0o644); err != nil {
		return "", err
	}
	const assets = "cmd/acreleaf/internal/assets"
	replaced := map[string]string{}
	for name, by := range map[string]string{"build.go": instead, "reader.go": "", "report.go": ""} {
		file, err := filepath.Abs(filepath.Join(assets, name))
		if err != nil {
			return "", err
		}
		replaced[file] = by
	}
	text, err := json.Marshal(map[string]any{"Replace": replaced})
	if err != nil {
		return "", err
	}
	overlay := filepath.Join(b.raced, "overlay.json")
	return "-overlay=" + overlay, os.WriteFile(overlay, text, 0o644)
}
