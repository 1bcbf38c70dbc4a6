package house

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// The blocks of go.mod, by how their comments begin: what the program is made of, and what only tests and checks need.
const (
	programBlock = "The program is made of these"
	testBlock    = "These are for tests and checks alone"
)

var (
	requireBlock = regexp.MustCompile(`(?ms)^// ([^\n]*)\nrequire \(\n(.*?)^\)`)
	required     = regexp.MustCompile(`(?m)^\t(\S+) v`)
	loneRequire  = regexp.MustCompile(`(?m)^require [^(]`)
)

// blocksOf gives the modules of each block of a go.mod, by the comment above the block.
func blocksOf(text string) map[string][]string {
	blocks := map[string][]string{}
	for _, block := range requireBlock.FindAllStringSubmatch(text, -1) {
		name := block[1]
		for _, known := range []string{programBlock, testBlock} {
			if strings.HasPrefix(name, known) {
				name = known
			}
		}
		for _, line := range required.FindAllStringSubmatch(block[2], -1) {
			blocks[name] = append(blocks[name], line[1])
		}
	}
	return blocks
}

// misplaced compares the blocks with the modules that the program links in.
func misplaced(text string, linked []string) []string {
	var broken []string
	blocks := blocksOf(text)
	if len(blocks) != 2 || strings.Count(text, "\nrequire") != 2 || loneRequire.MatchString(text) {
		broken = append(broken, "go.mod: two blocks of modules are wanted, the program's and that of the tests")
	}
	for _, name := range blocks[programBlock] {
		if !slices.Contains(linked, name) {
			broken = append(broken, fmt.Sprintf("go.mod: the program has nothing of %s, which belongs to the tests", name))
		}
	}
	for _, name := range linked {
		if !slices.Contains(blocks[programBlock], name) {
			broken = append(broken, fmt.Sprintf("go.mod: %s is in the program, and belongs to its block", name))
		}
	}
	return broken
}

// TestModulesAreApart asks the Go tool what the program links in on the systems that it is built for.
func TestModulesAreApart(t *testing.T) {
	folder := filepath.Join("..", "..", "..", "..")
	text, err := os.ReadFile(filepath.Join(folder, "go.mod"))
	if err != nil {
		t.Fatal(err)
	}
	var linked []string
	for _, system := range []string{"linux", "darwin", "windows"} {
		list := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{.Path}}{{end}}", "./cmd/acreleaf")
		list.Dir = folder
		list.Env = append(os.Environ(), "GOOS="+system, "CGO_ENABLED=0")
		out, err := list.Output()
		if err != nil {
			t.Fatal(err)
		}
		linked = append(linked, strings.Fields(string(out))...)
	}
	slices.Sort(linked)
	linked = slices.DeleteFunc(slices.Compact(linked), func(name string) bool { return name == module })
	if len(linked) < 5 {
		t.Fatalf("only %q are in the program", linked)
	}
	for _, broken := range misplaced(string(text), linked) {
		t.Error(broken)
	}
}

func TestMisplacedModulesAreFound(t *testing.T) {
	const good = "module m\n\n// " + programBlock + ": all.\nrequire (\n\ta.b/c v1.0.0\n\ta.b/d v1.0.0 // indirect\n)\n" +
		"\n// " + testBlock + ".\nrequire (\n\tt.b/c v1.0.0\n)\n"
	for _, c := range []struct{ name, text, says string }{
		{"as it should be", good, ""},
		{"a test's among the program's", strings.Replace(good, "\ta.b/d", "\tt.b/d v1.0.0\n\ta.b/d", 1), "nothing of t.b/d"},
		{"one of the program's missing", strings.Replace(good, "\ta.b/c v1.0.0\n", "", 1), "a.b/c is in the program"},
		{"a third block", good + "\nrequire x.y/z v1.0.0\n", "two blocks"},
	} {
		broken := strings.Join(misplaced(c.text, []string{"a.b/c", "a.b/d"}), "\n")
		if c.says == "" && broken != "" || !strings.Contains(broken, c.says) {
			t.Errorf("%s: %q", c.name, broken)
		}
	}
}
