package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"acreleaf/cmd/check/internal/step"
)

// goTest runs the Go tests and counts them one by one.
func goTest(ctx context.Context, r *step.Record) error { return runTests(ctx, r, "./...") }

// runTests runs go test with some arguments, and adds what came of it to the record. The step vet runs all of go vet,
// and go test would run a part of it again for each package. Nobody debugs these programs, so they are linked without
// the tables for that, which take a third of a link. Tests are roomy as the compiler is; those that measure memory ask
// for the usual themselves.
func runTests(ctx context.Context, r *step.Record, arguments ...string) error {
	flags := []string{"-json", "-vet=off", "-ldflags=-s -w"}
	args := slices.Concat([]string{"go", "test"}, flags, arguments)
	stream, failure := r.Command(ctx, step.Command{Args: args, Env: roomy, Quiet: true})
	report, err := readTests(stream)
	if err != nil {
		return err
	}
	r.Passed += report.passed
	r.Failed += report.failed
	for _, line := range report.closing {
		r.Note("%s", line)
	}
	r.Detail("%s", report.failures.String())
	return failure
}

// An event is one line of go test -json (see go doc test2json). A build has an ImportPath in place of a Package.
type event struct{ Action, Package, ImportPath, Test, Output string }

// A testReport is what a run of go test came to.
type testReport struct {
	passed, failed int
	closing        []string        // the usual line for each package
	failures       strings.Builder // all that the failed tests, packages and builds printed

	printed map[string]*strings.Builder // what each test, package and build has printed so far
	broken  map[string]bool             // the packages that had a failed test
}

// readTests reads the events of a run. Tests that have subtests are counted beside them. A skipped test counts as
// failed: the checks leave nothing out.
func readTests(stream []byte) (*testReport, error) {
	report := &testReport{printed: map[string]*strings.Builder{}, broken: map[string]bool{}}
	lines := bufio.NewScanner(bytes.NewReader(stream))
	const longest = 16 << 20
	lines.Buffer(nil, longest)
	for lines.Scan() {
		var e event
		if err := json.Unmarshal(lines.Bytes(), &e); err != nil {
			return nil, fmt.Errorf("go test -json printed a line that is no event: %s", lines.Text())
		}
		if e.Test != "" {
			report.takeTest(e)
		} else {
			report.takePackage(e)
		}
	}
	return report, lines.Err()
}

// takeTest takes an event of one test.
func (t *testReport) takeTest(e event) {
	switch e.Action {
	case "output":
		t.print(e)
	case "pass":
		t.passed++
	case "fail", "skip":
		t.failed++
		t.broken[e.Package] = true
		t.failures.WriteString(t.print(e))
	}
}

// takePackage takes an event of a package as a whole, or of its build.
func (t *testReport) takePackage(e event) {
	switch e.Action {
	case "output", "build-output":
		t.print(e)
		for _, start := range []string{"ok  \t", "FAIL\t", "?   \t"} {
			if strings.HasPrefix(e.Output, start) {
				t.closing = append(t.closing, strings.TrimRight(e.Output, "\n"))
			}
		}
	case "build-fail":
		t.failures.WriteString(t.print(e))
	case "fail":
		t.failures.WriteString(t.print(e))
		if !t.broken[e.Package] {
			t.failed++ // it did not build, or broke off: no test of it says so
		}
	}
}

// print adds to what the test, package or build has printed, and gives all of it.
func (t *testReport) print(e event) string {
	key := e.ImportPath + e.Package + " " + e.Test
	if t.printed[key] == nil {
		t.printed[key] = &strings.Builder{}
	}
	t.printed[key].WriteString(e.Output)
	return t.printed[key].String()
}
