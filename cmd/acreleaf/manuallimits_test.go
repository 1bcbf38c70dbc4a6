package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var limitRow = regexp.MustCompile("(?m)^\\| .* \\| `(\\d+)(?: MB)?`(?: bytes)? \\| `([a-z-]+)` \\| .+ \\|$")

// The manual's table of limits has the numbers of the messages. What a message says is in the cases and scripts that
// show it, and in the test of the limits of Markdown.
func TestManualLimits(t *testing.T) {
	page, err := os.ReadFile(filepath.Join(demoFolder, "manual", "limits.md"))
	if err != nil {
		t.Fatal(err)
	}
	names, err := filepath.Glob(filepath.Join("testdata", "*", "*.txtar"))
	if err != nil {
		t.Fatal(err)
	}
	cases, err := filepath.Glob(filepath.Join("testdata", "fault", "*", "*.txtar"))
	if err != nil {
		t.Fatal(err)
	}
	var said []string
	for _, name := range append(append(names, cases...), filepath.Join("internal", "markdown", "limits_test.go")) {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		said = append(said, strings.Split(string(text), "\n")...)
	}
	rows := limitRow.FindAllStringSubmatch(string(page), -1)
	if all := strings.Count(string(page), "\n| ") - 2; len(rows) != all || all < 10 {
		t.Errorf("%d of the %d rows were read", len(rows), all)
	}
	for _, row := range rows {
		number := regexp.MustCompile(`\b` + row[1] + `\b`)
		if !slices.ContainsFunc(said, func(line string) bool {
			return number.MatchString(line) && (strings.Contains(line, "["+row[2]+"]") || strings.HasPrefix(line, "\t\t{\""))
		}) {
			t.Errorf("no message %s says %s", row[2], row[1])
		}
	}
}
