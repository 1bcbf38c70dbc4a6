package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"

	"acreleaf/cmd/check/internal/step"
)

// material builds cmd/check/parity and has it write the modules of the catalogue, of the random programs and of the
// pressed pages, with the native answers to compare them with.
func (b *bench) material(ctx context.Context, r *step.Record) error {
	build := []string{"go", "build", "-ldflags=-s -w", "-o", b.parity, "./cmd/check/parity"}
	if _, err := r.Command(ctx, step.Command{Args: build, Env: roomy}); err != nil {
		return err
	}
	_, err := r.Command(ctx, step.Command{Args: []string{b.parity, "-site", b.site, "-to", b.modules}})
	return err
}

// wasmValidate has an outside validator read every module.
func (b *bench) wasmValidate(ctx context.Context, r *step.Record) error {
	modules, err := filepath.Glob(filepath.Join(b.modules, "*.wasm"))
	if err != nil {
		return err
	}
	if len(modules) == 0 {
		return errors.New("there is no module to validate")
	}
	for _, name := range modules {
		if _, err := r.Command(ctx, step.Command{Args: []string{"wasm-validate", name}}); err != nil {
			r.Failed++
			r.Detail("%v", err)
			continue
		}
		r.Passed++
	}
	if r.Failed > 0 {
		return fmt.Errorf("%d modules are not valid", r.Failed)
	}
	return nil
}
