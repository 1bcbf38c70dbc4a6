package mutate

import (
	"bytes"
	"context"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"time"
)

// A Fate is what becomes of a mutant.
type Fate int

// Killed: a test fails. Late: the tests run far longer than with nothing changed, because of an endless loop or because
// the machine is busy. Survived: every test passes. Unmade: it does not compile.
const (
	Killed Fate = iota
	Late
	Survived
	Unmade
)

// failed is the fate of a mutant whose tests said this when they failed.
func failed(said []byte) Fate {
	if bytes.Contains(said, []byte("panic: test timed out after")) || bytes.Contains(said, []byte("ran too long")) {
		return Late
	}
	return Killed
}

// A Trial runs the tests of one package on its mutants.
type Trial struct {
	Root    string // the project's folder
	Package string // "calc/unit"
	Jobs    int    // how many mutants at once
}

// limit is how long a mutant may run, for tests that take so long with nothing changed.
func limit(took time.Duration) time.Duration { return 20*time.Second + 4*took }

// Run calls told with the fate of each mutant as it is known, one at a time and in no order. It is an error if the
// tests fail with nothing changed.
func (t *Trial) Run(ctx context.Context, mutants []Mutant, told func(Mutant, Fate)) error {
	folder, err := os.MkdirTemp("", "acreleaf-mutants-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(folder)
	b, err := t.build(ctx, folder, mutants)
	if err != nil {
		return err
	}
	if err := b.whole(ctx, t); err != nil {
		return err
	}
	return t.each(ctx, b, mutants, told)
}

// each tries the mutants, so many at once.
func (t *Trial) each(ctx context.Context, b *batch, mutants []Mutant, told func(Mutant, Fate)) error {
	faults := make([]error, len(mutants))
	var group sync.WaitGroup
	var one sync.Mutex
	next := make(chan int)
	for range max(1, t.Jobs) {
		group.Go(func() {
			for i := range next {
				fate, err := t.try(ctx, b, mutants, i)
				if faults[i] = err; err != nil {
					continue
				}
				one.Lock()
				told(mutants[i], fate)
				one.Unlock()
			}
		})
	}
	for i := range mutants {
		if ctx.Err() != nil {
			break
		}
		next <- i
	}
	close(next)
	group.Wait()
	return errors.Join(append(faults, ctx.Err())...)
}

// try gives the fate of one mutant, by the batch if it is there.
func (t *Trial) try(ctx context.Context, b *batch, mutants []Mutant, i int) (Fate, error) {
	switch {
	case b.unmade[i]:
		return Unmade, nil
	case b.within[i]:
		return b.fate(ctx, t, i+1)
	}
	return t.alone(ctx, mutants[i], limit(b.took))
}

// alone compiles one mutant and runs the tests on it: one that is in no function, such as a figure of a table.
func (t *Trial) alone(ctx context.Context, m Mutant, limit time.Duration) (Fate, error) {
	folder, err := os.MkdirTemp("", "acreleaf-mutant-")
	if err != nil {
		return 0, err
	}
	defer os.RemoveAll(folder)
	overlay, err := m.write(t.Root, folder)
	if err != nil {
		return 0, err
	}
	command := exec.CommandContext(ctx, "go", "test", "-count=1", "-failfast", "-vet=off", "-timeout="+limit.String(),
		"-overlay="+overlay, "./"+t.Package)
	command.Dir = t.Root
	out, err := command.CombinedOutput()
	var exit *exec.ExitError
	switch {
	case err == nil:
		return Survived, nil
	case !errors.As(err, &exit) || ctx.Err() != nil:
		return 0, err
	case strings.Contains(string(out), "[build failed]") || strings.Contains(string(out), "[setup failed]"):
		return Unmade, nil
	}
	return failed(out), nil
}

// write writes the changed file and the list that puts it in the place of the whole one.
func (m *Mutant) write(root, folder string) (overlay string, err error) {
	whole, err := filepath.Abs(filepath.Join(root, filepath.FromSlash(m.File)))
	if err != nil {
		return "", err
	}
	text, err := os.ReadFile(whole)
	if err != nil {
		return "", err
	}
	changed := filepath.Join(folder, filepath.Base(m.File))
	mutated := string(text[:m.start]) + m.Is + string(text[m.end:])
	if err := os.WriteFile(changed, []byte(mutated), 0o644); err != nil {
		return "", err
	}
	return writeOverlay(folder, map[string]string{whole: changed})
}
