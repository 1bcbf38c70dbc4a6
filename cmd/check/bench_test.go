package main

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"acreleaf/cmd/check/internal/tool"
)

// A step can only wait for one that comes before it, and for tools that setting up knows.
func TestStepsAreInOrder(t *testing.T) {
	known := map[string]bool{packages: true}
	for _, one := range tool.All() {
		known[one.Name] = true
	}
	before := map[string]bool{}
	for _, s := range newBench("").steps() {
		for _, name := range s.After {
			if !before[name] {
				t.Errorf("%s comes after %q, which does not stand before it", s.Name, name)
			}
		}
		for _, name := range s.Tools {
			if !known[name] {
				t.Errorf("%s calls %q, which nothing sets up", s.Name, name)
			}
		}
		if before[s.Name] {
			t.Errorf("two steps are named %s", s.Name)
		}
		before[s.Name] = true
	}
}

// The lock file pins every package by its hash and names no server, so that each machine uses its own.
func TestLockFileNamesNoServer(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("browser", "package-lock.json"))
	if err != nil {
		t.Fatal(err)
	}
	var lock struct {
		Packages map[string]struct{ Version, Resolved, Integrity string }
	}
	if err := json.Unmarshal(text, &lock); err != nil {
		t.Fatal(err)
	}
	if len(lock.Packages) < 5 {
		t.Errorf("only %d packages", len(lock.Packages))
	}
	for name, one := range lock.Packages {
		if one.Resolved != "" {
			t.Errorf("%s is tied to %s", name, one.Resolved)
		}
		if name != "" && one.Integrity == "" {
			t.Errorf("%s has no hash", name)
		}
	}
}

// Every script that a step runs is there, and every script that is there belongs to one.
func TestScriptsAreUsed(t *testing.T) {
	files, err := filepath.Glob(filepath.Join("browser", "*.mjs"))
	if err != nil || len(files) == 0 {
		t.Fatalf("%d scripts, %v", len(files), err)
	}
	var all strings.Builder
	for _, name := range append(files, "bench.go", "books.go", "packet.go") {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		all.Write(text)
	}
	for _, name := range files {
		if !strings.Contains(all.String(), filepath.Base(name)) {
			t.Errorf("nothing names %s", name)
		}
	}
	for _, found := range regexp.MustCompile(`"(\w+\.mjs)"`).FindAllStringSubmatch(all.String(), -1) {
		if _, err := os.Stat(filepath.Join("browser", found[1])); err != nil {
			t.Error(err)
		}
	}
}

// The command must run when the code that it checks does not compile.
func TestCheckImportsNoneOfWhatItChecks(t *testing.T) {
	out, err := exec.Command("go", "list", "-deps", ".").Output()
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(out)) {
		name := strings.TrimSpace(line)
		if strings.HasPrefix(name, "acreleaf/") && !strings.HasPrefix(name, "acreleaf/cmd/check") {
			t.Errorf("cmd/check depends on %s", name)
		}
	}
}
