package mutate

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"time"
)

// A Fate is what becomes of a mutant.
type Fate int

// Killed: a test fails, or runs far too long. Survived: every test passes. Unmade: it does not compile.
const (
	Killed Fate = iota
	Survived
	Unmade
)

// A Trial runs the tests of one package on its mutants.
type Trial struct {
	Root    string        // the project's folder
	Package string        // "calc/unit"
	Jobs    int           // how many mutants at once
	Limit   time.Duration // of one run; a mutant that takes longer is killed
}

// Whole says whether the tests pass with nothing changed.
func (t *Trial) Whole(ctx context.Context) error {
	fate, said, err := t.test(ctx, nil)
	if err == nil && fate != Survived {
		err = fmt.Errorf("the tests of %s fail with nothing changed; mend them first:\n%s", t.Package, said)
	}
	return err
}

// Run calls told with the fate of each mutant as it is known, one at a time and in no order.
func (t *Trial) Run(ctx context.Context, mutants []Mutant, told func(Mutant, Fate)) error {
	faults := make([]error, len(mutants))
	var group sync.WaitGroup
	var one sync.Mutex
	next := make(chan int)
	for range max(1, t.Jobs) {
		group.Go(func() {
			for i := range next {
				fate, _, err := t.test(ctx, &mutants[i])
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

// test runs the tests with one file in the place of another. Only what depends on that file is compiled again.
func (t *Trial) test(ctx context.Context, m *Mutant) (Fate, string, error) {
	folder, err := os.MkdirTemp("", "acreleaf-mutant-")
	if err != nil {
		return 0, "", err
	}
	defer os.RemoveAll(folder)
	arguments := []string{"test", "-count=1", "-failfast", "-vet=off", "-timeout=" + t.Limit.String()}
	if m != nil {
		overlay, err := m.write(t.Root, folder)
		if err != nil {
			return 0, "", err
		}
		arguments = append(arguments, "-overlay="+overlay)
	}
	command := exec.CommandContext(ctx, "go", append(arguments, "./"+t.Package)...)
	command.Dir = t.Root
	out, err := command.CombinedOutput()
	var failed *exec.ExitError
	switch {
	case err == nil:
		return Survived, "", nil
	case !errors.As(err, &failed) || ctx.Err() != nil:
		return 0, "", err
	case strings.Contains(string(out), "[build failed]") || strings.Contains(string(out), "[setup failed]"):
		return Unmade, string(out), nil
	}
	return Killed, string(out), nil
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
	list, err := json.Marshal(map[string]map[string]string{"Replace": {whole: changed}})
	if err != nil {
		return "", err
	}
	overlay = filepath.Join(folder, "overlay.json")
	return overlay, os.WriteFile(overlay, list, 0o644)
}
