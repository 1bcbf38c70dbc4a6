package main

import (
	"context"
	"errors"
	"path/filepath"
	"strings"

	"acreleaf/cmd/check/internal/step"
)

// The steps that read the source.

func format(ctx context.Context, r *step.Record) error {
	out, err := r.Command(ctx, step.Command{Args: []string{"gofmt", "-l", "."}})
	if err == nil && len(out) > 0 {
		err = errors.New("these files are not laid out as gofmt does it; to fix them, run gofmt -w on each")
	}
	return err
}

// goModules wants go.mod and go.sum to be what the source asks for, and the modules to be those that go.sum names.
func goModules(ctx context.Context, r *step.Record) error {
	for _, args := range []string{"go mod tidy -diff", "go mod verify"} {
		if _, err := r.Command(ctx, step.Command{Args: strings.Fields(args)}); err != nil {
			return err
		}
	}
	return nil
}

// roomy has the Go tool's programs, such as the compiler, collect memory after four times the usual growth: they free
// little of it, and looking for it took a sixth of the time of a compilation.
var roomy = []string{"GOGC=400"}

func vet(ctx context.Context, r *step.Record) error {
	_, err := r.Command(ctx, step.Command{Args: []string{"go", "vet", "./..."}, Env: roomy})
	return err
}

// staticcheck keeps nearly all that it reads, so that what is true of the compiler is true of it as well.
func staticcheck(ctx context.Context, r *step.Record) error {
	_, err := r.Command(ctx, step.Command{Args: []string{"go", "tool", "staticcheck", "./..."}, Env: roomy})
	return err
}

// types has the page's script judged by the compiler of its language: the bundler takes the types away unread.
func types(ctx context.Context, r *step.Record) error {
	compiler := filepath.Join(browserFolder, "node_modules", "typescript", "bin", "tsc")
	_, err := r.Command(ctx, step.Command{Args: []string{"node", compiler, "--project", "theme/script"}})
	return err
}
