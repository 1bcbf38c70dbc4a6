package main

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"time"
)

// instrumented are the packages that the fuzzer watches, to tell which input does something new: ours, and the readers
// of Markdown and YAML. With the whole Go library too, as go test -fuzz has it, a first build takes many minutes.
var instrumented = []string{"acreleaf/...", "github.com/yuin/goldmark/...", "go.yaml.in/yaml/v3"}

// A fuzzTarget is one function that takes any input: Fuzz… in the tests of a package.
type fuzzTarget struct {
	folder, name string
	program      string // the tests of the package, built for fuzzing
}

// A fuzzing is one run of all targets.
type fuzzing struct {
	w      io.Writer
	time   time.Duration // for each target
	corpus string        // the folder of inputs that did something new
	built  string        // the folder of the programs
}

// fuzz runs the targets for a given time each, two at once. What does something new is kept for the next run. False
// when an input broke a target; it is then in testdata/fuzz of the package, where every later go test tries it.
func fuzz(ctx context.Context, w io.Writer, arguments []string) (bool, error) {
	set := flag.NewFlagSet("fuzz", flag.ContinueOnError)
	set.SetOutput(w)
	corpus := set.String("corpus", "", "the folder of inputs that did something new; the cache of Go when none is named")
	if err := set.Parse(arguments); err != nil {
		return false, err
	}
	each, err := time.ParseDuration(set.Arg(0))
	if err != nil || each <= 0 {
		return false, errors.New("write a time for each target, and names when not all are meant: " +
			"go run ./cmd/check fuzz 10m, or: go run ./cmd/check fuzz 1m calc/unit FuzzPage")
	}
	f := &fuzzing{w: w, time: each}
	if f.corpus, err = corpusFolder(ctx, *corpus); err != nil {
		return false, err
	}
	if f.built, err = os.MkdirTemp("", "acreleaf-fuzz-"); err != nil {
		return false, err
	}
	defer os.RemoveAll(f.built)
	targets, err := findFuzzTargets(set.Args()[1:])
	if err != nil {
		return false, err
	}
	start := time.Now()
	if err := f.build(ctx, targets); err != nil {
		return false, err
	}
	fmt.Fprintf(w, "%d targets built in %.0f s; %s each, two at once; inputs are kept in %s\n", len(targets),
		time.Since(start).Seconds(), each, f.corpus)
	return f.run(ctx, targets), nil
}

// corpusFolder is the folder that is named, or the one that go test -fuzz uses.
func corpusFolder(ctx context.Context, named string) (string, error) {
	if named != "" {
		return filepath.Abs(named)
	}
	out, err := exec.CommandContext(ctx, "go", "env", "GOCACHE").Output()
	return filepath.Join(strings.TrimSpace(string(out)), "fuzz"), err
}

// findFuzzTargets finds the targets of the project by reading its tests: all, or those of the folders and names.
func findFuzzTargets(wanted []string) ([]*fuzzTarget, error) {
	var targets []*fuzzTarget
	err := filepath.WalkDir(".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() && slices.Contains([]string{"node_modules", ".git", "public"}, entry.Name()) {
			return fs.SkipDir
		}
		if !strings.HasSuffix(name, "_test.go") {
			return nil
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		folder := filepath.ToSlash(filepath.Dir(name))
		for _, d := range file.Decls {
			if f, ok := d.(*ast.FuncDecl); ok && f.Recv == nil && strings.HasPrefix(f.Name.Name, "Fuzz") {
				targets = append(targets, &fuzzTarget{folder: folder, name: f.Name.Name})
			}
		}
		return nil
	})
	for _, one := range wanted {
		if !slices.ContainsFunc(targets, func(t *fuzzTarget) bool { return t.is(one) }) {
			return nil, fmt.Errorf("there is no target %q, and no folder with one", one)
		}
	}
	return slices.DeleteFunc(targets, func(t *fuzzTarget) bool {
		return len(wanted) > 0 && !slices.ContainsFunc(wanted, t.is)
	}), err
}

func (t *fuzzTarget) is(wanted string) bool {
	return t.name == wanted || t.folder == strings.Trim(filepath.ToSlash(wanted), "./")
}

// build builds the tests of all packages that have a target at once, so that no processor waits for one that is linked.
func (f *fuzzing) build(ctx context.Context, targets []*fuzzTarget) error {
	args := []string{"test", "-c", "-vet=off", "-o", f.built + string(filepath.Separator)}
	for _, pattern := range instrumented {
		args = append(args, "-gcflags="+pattern+"=-d=libfuzzer")
	}
	for _, t := range targets {
		t.program = filepath.Join(f.built, path.Base(t.folder)+".test") // as go test names it
		if folder := "./" + t.folder; !slices.Contains(args, folder) {
			args = append(args, folder)
		}
	}
	if printed, err := exec.CommandContext(ctx, "go", args...).CombinedOutput(); err != nil {
		return fmt.Errorf("the targets do not build: %w\n%s", err, printed)
	}
	return nil
}

// run runs the targets, two at once, prints a line for each, and says whether none broke.
func (f *fuzzing) run(ctx context.Context, targets []*fuzzTarget) bool {
	waiting := make(chan *fuzzTarget, len(targets))
	for _, t := range targets {
		waiting <- t
	}
	close(waiting)
	var mu sync.Mutex
	var workers sync.WaitGroup
	total, finds := 0, 0
	for range 2 {
		workers.Go(func() {
			for t := range waiting {
				out, err := f.one(ctx, t)
				result := readFuzz(out)
				mu.Lock()
				total += result.executions
				fmt.Fprintf(f.w, "%-38s %-18s %12d executions, %5d new inputs", t.folder, t.name, result.executions, result.fresh)
				if err == nil {
					fmt.Fprintln(f.w, ", no find")
				} else {
					finds++
					fmt.Fprintf(f.w, ", A FIND\n%s\nto repeat it: %s\n", out, t.repeat(result.input))
				}
				mu.Unlock()
			}
		})
	}
	workers.Wait()
	fmt.Fprintf(f.w, "%d targets, %d executions, %d finds\n", len(targets), total, finds)
	return finds == 0 && ctx.Err() == nil
}

// one runs one target in the folder of its package. The program ends by itself; when it does not, it is ended.
func (f *fuzzing) one(ctx context.Context, t *fuzzTarget) (printed []byte, err error) {
	ctx, cancel := context.WithTimeout(ctx, f.time+5*time.Minute)
	defer cancel()
	c := exec.CommandContext(ctx, t.program, "-test.run=^$", "-test.fuzz=^"+t.name+"$", "-test.parallel=1",
		"-test.fuzztime="+f.time.String(), "-test.fuzzminimizetime=10s",
		"-test.fuzzcachedir="+filepath.Join(f.corpus, "acreleaf", filepath.FromSlash(t.folder)))
	c.Dir = filepath.FromSlash(t.folder)
	return c.CombinedOutput()
}

// repeat is the command that tries the input of a find again, or the target with all inputs that are kept.
func (t *fuzzTarget) repeat(input string) string {
	return fmt.Sprintf("go test ./%s -run='^%s$%s'", t.folder, t.name, input)
}

// A fuzzResult is what a target prints as it runs.
type fuzzResult struct {
	executions, fresh int
	input             string // of a find, as go test names it behind the target
}

var (
	fuzzLine = regexp.MustCompile(`execs: (\d+) .*new interesting: (\d+)`)
	fuzzFind = regexp.MustCompile(`testdata[/\\]fuzz[/\\]\w+[/\\](\w+)`)
)

func readFuzz(printed []byte) fuzzResult {
	var r fuzzResult
	lines := bufio.NewScanner(bytes.NewReader(printed))
	lines.Buffer(nil, len(printed)+1)
	for lines.Scan() {
		if found := fuzzLine.FindStringSubmatch(lines.Text()); found != nil {
			fmt.Sscan(found[1], &r.executions)
			fmt.Sscan(found[2], &r.fresh)
		}
		if found := fuzzFind.FindStringSubmatch(lines.Text()); found != nil {
			r.input = "/^" + found[1] + "$"
		}
	}
	return r
}
