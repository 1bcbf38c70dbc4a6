package main

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"

	"acreleaf/cmd/check/internal/step"
	"acreleaf/cmd/check/internal/tool"
)

// browser gives the step that runs one of the test scripts on the pressed demo site.
func (b *bench) browser(script string) func(context.Context, *step.Record) error {
	return func(ctx context.Context, r *step.Record) error {
		return b.node(ctx, r, script, "content", b.site)
	}
}

// node runs a test script with Node's own test runner and takes over its counts.
func (b *bench) node(ctx context.Context, r *step.Record, script, content, site string) error {
	// The driver wants the place of the browser, not its name.
	chromium, err := exec.LookPath(tool.Chromium.Name)
	if err != nil {
		return err
	}
	arguments := []string{
		"node", "--test-reporter=spec", filepath.Join(browserFolder, script),
		"--chromium", chromium, "--site", site, "--content", content, "--acreleaf", b.acreleaf, "--answers", b.answers,
		"--marks", b.marks,
		"--numbers", filepath.Join(b.numbers, "number.mjs"), "--vectors", "calc/unit/testdata/number-text.csv",
		"--parity", b.modules, "--native", b.parity, "--handed", b.handed, "--packets", b.packets,
		"--codes", "cmd/acreleaf/internal/record/testdata/codes.txt",
	}
	if b.blocks > 0 {
		arguments = append(arguments, "--blocks", strconv.Itoa(b.blocks), "--visits", "1")
	}
	out, failure := r.Command(ctx, step.Command{Args: arguments})
	counts, err := readCounts(out)
	if err != nil {
		return fmt.Errorf("%s did not come to its end: %w", script, err)
	}
	// A test that was skipped, put off or cancelled was not passed.
	r.Passed = counts["pass"]
	r.Failed = counts["fail"] + counts["skipped"] + counts["todo"] + counts["cancelled"]
	for _, line := range diagnostic.FindAllSubmatch(out, -1) {
		if _, isCount := counts[string(line[1])]; !isCount {
			r.Note("  %s", line[0][len("ℹ "):])
		}
	}
	if r.Passed == 0 {
		return fmt.Errorf("%s ran no test", script)
	}
	return failure
}

var diagnostic = regexp.MustCompile(`(?m)^ *ℹ (\S+) .*$`)

var count = regexp.MustCompile(`(?m)^ℹ (pass|fail|skipped|todo|cancelled|tests|suites|duration_ms) ([\d.]+)$`)

// readCounts reads the lines with which Node's test runner ends.
func readCounts(out []byte) (map[string]int, error) {
	counts := map[string]int{}
	for _, found := range count.FindAllSubmatch(out, -1) {
		n, err := strconv.ParseFloat(string(found[2]), 64)
		if err != nil {
			return nil, err
		}
		counts[string(found[1])] = int(n)
	}
	if _, ended := counts["pass"]; !ended {
		return nil, fmt.Errorf("it printed no count of tests")
	}
	return counts, nil
}

// numberText makes a module of the page's number text, one of how the page works ranges, and two of its codes, with the
// same bundler that presses the site.
func (b *bench) numberText(ctx context.Context, r *step.Record) error {
	if err := os.MkdirAll(b.numbers, 0o755); err != nil {
		return err
	}
	blank := []byte("<!DOCTYPE html><html lang=\"en\"><title>Blank</title></html>\n")
	if err := os.WriteFile(filepath.Join(b.numbers, "blank.html"), blank, 0o644); err != nil {
		return err
	}
	_, err := r.Command(ctx, step.Command{Env: roomy, Args: []string{
		"go", "run", "github.com/evanw/esbuild/cmd/esbuild", "theme/script/number.ts", "theme/script/spread.ts",
		"theme/script/ranges.ts", "theme/script/code.ts", "theme/script/qr.ts",
		"--bundle", "--format=esm", "--out-extension:.js=.mjs", "--outdir=" + b.numbers,
	}})
	return err
}
