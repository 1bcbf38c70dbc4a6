package mutate

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

// chosen is the variable of the package under test, and of its environment, that says which mutant runs; 0 for none.
const chosen = "acreleafMutant"

// A batch is one test binary that holds many mutants: each function has a body for each of its mutants beside its own,
// and chooses one by number. Compiling is most of what a mutant costs, and so it is done once for all.
type batch struct {
	binary string
	within []bool        // by mutant: it is in the binary
	unmade []bool        // by mutant: it does not compile
	took   time.Duration // how long the tests run with nothing changed
	slow   string        // the names of the slow ones among them, as a pattern; "" for none
}

// build makes the batch in a folder. What does not compile is taken out, and the rest is compiled again.
func (t *Trial) build(ctx context.Context, folder string, mutants []Mutant) (*batch, error) {
	b := &batch{binary: filepath.Join(folder, "package.test"), within: make([]bool, len(mutants)),
		unmade: make([]bool, len(mutants))}
	for i, m := range mutants {
		b.within[i] = m.body.end > 0
	}
	for {
		overlay, err := t.overlay(folder, mutants, b.within)
		if err != nil {
			return nil, err
		}
		command := exec.CommandContext(ctx, "go", "test", "-c", "-vet=off", "-gcflags=-e", "-overlay="+overlay,
			"-o", b.binary, "./"+t.Package)
		command.Dir = t.Root
		said, err := command.CombinedOutput()
		if err == nil {
			return b, nil
		}
		if ctx.Err() != nil || !b.drop(string(said)) {
			return nil, fmt.Errorf("%s does not compile: %w\n%s", t.Package, err, said)
		}
	}
}

// place is how the compiler tells a place in the body of a mutant.
var place = regexp.MustCompile(`mutant-(\d+):\d+`)

// drop takes the mutants out that the compiler speaks of. False when there is none.
func (b *batch) drop(said string) bool {
	dropped := false
	for _, found := range place.FindAllStringSubmatch(said, -1) {
		i, err := strconv.Atoi(found[1])
		if err != nil || i < 1 || i > len(b.within) {
			continue
		}
		dropped = dropped || b.within[i-1]
		b.within[i-1], b.unmade[i-1] = false, true
	}
	return dropped
}

// overlay writes the files with all bodies, and the list that puts them in the place of the whole ones.
func (t *Trial) overlay(folder string, mutants []Mutant, within []bool) (string, error) {
	root, err := filepath.Abs(t.Root)
	if err != nil {
		return "", err
	}
	replaced := map[string]string{}
	for i, m := range mutants {
		whole := filepath.Join(root, filepath.FromSlash(m.File))
		if !within[i] || replaced[whole] != "" {
			continue
		}
		text, err := os.ReadFile(whole)
		if err != nil {
			return "", err
		}
		replaced[whole] = filepath.Join(folder, filepath.Base(m.File))
		if err := os.WriteFile(replaced[whole], []byte(allBodies(string(text), m.File, mutants, within)), 0o644); err != nil {
			return "", err
		}
		if chooser := filepath.Join(root, t.Package, "acreleaf_mutant.go"); replaced[chooser] == "" {
			replaced[chooser] = filepath.Join(folder, "acreleaf_mutant.go")
			choose := fmt.Sprintf("package %s\n\nimport (\n\t\"os\"\n\t\"strconv\"\n)\n\n"+
				"var %[2]s, _ = strconv.Atoi(os.Getenv(%[2]q))\n", m.name, chosen)
			if err := os.WriteFile(replaced[chooser], []byte(choose), 0o644); err != nil {
				return "", err
			}
		}
	}
	return writeOverlay(folder, replaced)
}

// writeOverlay writes the list of files that the go command takes in the place of others.
func writeOverlay(folder string, replaced map[string]string) (string, error) {
	list, err := json.Marshal(map[string]map[string]string{"Replace": replaced})
	if err != nil {
		return "", err
	}
	name := filepath.Join(folder, "overlay.json")
	return name, os.WriteFile(name, list, 0o644)
}

// allBodies is the text of a file in which each function chooses among its bodies. Each is under a name and lines of
// its own, so that what the compiler says of it can be told apart.
func allBodies(text, file string, mutants []Mutant, within []bool) string {
	bodies := map[span][]int{}
	for i, m := range mutants {
		if within[i] && m.File == file {
			bodies[m.body] = append(bodies[m.body], i)
		}
	}
	var order []span
	for body := range bodies {
		order = append(order, body)
	}
	slices.SortFunc(order, func(a, b span) int { return a.start - b.start })
	var out strings.Builder
	done := 0
	for _, body := range order {
		out.WriteString(text[done:body.start] + "{\nswitch " + chosen + " {\n")
		for _, i := range bodies[body] {
			m := mutants[i]
			fmt.Fprintf(&out, "case %d:\n//line mutant-%[1]d:1\n", i+1)
			out.WriteString(text[body.start:m.start] + m.Is + text[m.end:body.end] + "\n")
		}
		line := 1 + strings.Count(text[:body.start], "\n")
		fmt.Fprintf(&out, "default:\n//line %s:%d\n", filepath.Base(file), line)
		out.WriteString(text[body.start:body.end] + "\n}\n}")
		done = body.end
	}
	return out.String() + text[done:]
}

// whole runs the tests with nothing changed, which must pass, and notes how long they take.
func (b *batch) whole(ctx context.Context, t *Trial) error {
	start := time.Now()
	fate, said, err := b.run(ctx, t, 0, 10*time.Minute, "-test.v")
	if err == nil && fate != Survived {
		err = fmt.Errorf("the tests of %s fail with nothing changed; fix them first:\n%s", t.Package, said)
	}
	b.took = time.Since(start)
	b.slow = slowTests(said)
	return err
}

// timed is how a test tells how long it, or a part of it, took.
var timed = regexp.MustCompile(`--- PASS: (\w+)\S* \(([\d.]+)s\)`)

// slowTests is a pattern with the tests that take more than a twentieth of the time of all.
func slowTests(said string) string {
	took, all := map[string]float64{}, 0.0
	for _, found := range timed.FindAllStringSubmatch(said, -1) {
		if seconds, err := strconv.ParseFloat(found[2], 64); err == nil {
			took[found[1]] += seconds
			all += seconds
		}
	}
	var slow []string
	for name, seconds := range took {
		if seconds > all/20 {
			slow = append(slow, name)
		}
	}
	slices.Sort(slow)
	return strings.Join(slow, "|")
}

// fate tries the mutant of a number: first the quick tests, then those that are slow.
func (b *batch) fate(ctx context.Context, t *Trial, number int) (Fate, error) {
	slow := "^(" + b.slow + ")$"
	fate, _, err := b.run(ctx, t, number, limit(b.took), "-test.failfast", "-test.skip="+slow)
	if err == nil && fate == Survived && b.slow != "" {
		fate, _, err = b.run(ctx, t, number, limit(b.took), "-test.failfast", "-test.run="+slow)
	}
	return fate, err
}

// grace is how much longer than its limit a test binary may run: it keeps the limit itself once its tests begin, and
// not while its variables are made.
const grace = 5 * time.Second

// run runs the tests of the batch on the mutant of a number; 0 for none.
func (b *batch) run(ctx context.Context, t *Trial, number int, limit time.Duration, arguments ...string) (
	Fate, string, error) {
	bounded, stop := context.WithTimeout(ctx, limit+grace)
	defer stop()
	command := exec.CommandContext(bounded, b.binary, append(arguments, "-test.timeout="+limit.String())...)
	command.Dir = filepath.Join(t.Root, filepath.FromSlash(t.Package))
	command.Env = append(os.Environ(), chosen+"="+strconv.Itoa(number))
	said, err := command.CombinedOutput()
	var exit *exec.ExitError
	switch {
	case err == nil:
		return Survived, string(said), nil
	case !errors.As(err, &exit) || ctx.Err() != nil:
		return 0, "", err
	case bounded.Err() != nil:
		return Late, string(said), nil
	}
	return failed(said), string(said), nil
}
