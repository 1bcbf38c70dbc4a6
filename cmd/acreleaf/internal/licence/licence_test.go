package licence

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write licences.txt")

// A linked package is one that go list says the program is made of.
type linked struct {
	Dir                         string
	Standard                    bool
	GoFiles, SFiles, EmbedFiles []string
	Module                      *struct {
		Path, Version, Dir string
		Main               bool
	}
}

// kinds are the computers that the program is built for: each may link in packages of its own.
var kinds = []string{"linux/amd64", "linux/arm64", "darwin/amd64", "darwin/arm64", "windows/amd64", "windows/arm64"}

// TestCurrent makes the text anew from the modules, and compares it with the one that the program has.
func TestCurrent(t *testing.T) {
	made := write(t)
	if *update {
		if err := os.WriteFile("licences.txt", []byte(made), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if made != Text {
		t.Error("licences.txt is not made from the modules of now; " +
			"run go test ./cmd/acreleaf/internal/licence -update, and read what changed")
	}
}

// TestEachHasItsText looks at the text as a reader gets it.
func TestEachHasItsText(t *testing.T) {
	for _, want := range []string{
		"Go and its standard library", "Copyright 2009 The Go Authors",
		"go.yaml.in/yaml/v3", "Copyright 2011-2016 Canonical Ltd.", // of its NOTICE
		"dotnet/corefx was released under this license", // of an ATTRIB
		"Lucent Technologies",                           // of one file of Go's runtime
	} {
		if !strings.Contains(Text, want) {
			t.Errorf("%q is not in the licences", want)
		}
	}
	for _, without := range []string{"wazero", "staticcheck", "/tmp", "go/pkg/mod"} {
		if strings.Contains(Text, without) {
			t.Errorf("%q is in the licences", without)
		}
	}
}

// write makes the text: our own licence, Go's, each module's by its name, and what single files ask for.
func write(t *testing.T) string {
	own, err := os.ReadFile(filepath.Join("..", "..", "..", "..", "LICENSE"))
	if err != nil {
		t.Fatal(err)
	}
	all := packages(t)
	root := goRoot(t)
	var b strings.Builder
	b.WriteString("Acreleaf is made of the works below. Each has its own licence, printed whole.\n")
	section(&b, "Acreleaf", string(own))
	section(&b, "Go and its standard library", texts(t, root)+notices(t, all, ""))
	names := map[string]string{}
	for _, p := range all {
		if p.Module != nil && !p.Module.Main {
			names[p.Module.Path+" "+p.Module.Version] = p.Module.Dir
		}
	}
	for _, name := range slices.Sorted(mapKeys(names)) {
		section(&b, name, texts(t, names[name])+notices(t, all, names[name]))
	}
	return b.String()
}

func mapKeys(m map[string]string) func(func(string) bool) {
	return func(yield func(string) bool) {
		for key := range m {
			if !yield(key) {
				return
			}
		}
	}
}

func section(b *strings.Builder, name, text string) {
	fmt.Fprintf(b, "\n\n%s\n%s\n\n%s\n", name, strings.Repeat("=", len(name)), strings.TrimSpace(text))
}

// goRoot is where the licence of Go lies.
func goRoot(t *testing.T) string {
	out, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	return strings.TrimSpace(string(out))
}

// packages are those of the program on all kinds of computers.
func packages(t *testing.T) []linked {
	var all []linked
	for _, kind := range kinds {
		system, processor, _ := strings.Cut(kind, "/")
		list := exec.Command("go", "list", "-deps", "-json=Dir,Standard,GoFiles,SFiles,EmbedFiles,Module", "./cmd/acreleaf")
		list.Dir = filepath.Join("..", "..", "..", "..")
		list.Env = append(os.Environ(), "GOOS="+system, "GOARCH="+processor, "CGO_ENABLED=0")
		out, err := list.Output()
		if err != nil {
			t.Fatalf("go list on %s (Go is %s): %v", kind, runtime.Version(), err)
		}
		decoder := json.NewDecoder(strings.NewReader(string(out)))
		for {
			var p linked
			err := decoder.Decode(&p)
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				t.Fatal(err)
			}
			all = append(all, p)
		}
	}
	return all
}

var licenceFile = regexp.MustCompile(`^(?i:licen[cs]e|copying|notice|attrib|patents)\b`)

// texts are the licences and notices in a folder, one after another.
func texts(t *testing.T, folder string) string {
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, entry := range entries {
		if entry.IsDir() || !licenceFile.MatchString(entry.Name()) {
			continue
		}
		text, err := os.ReadFile(filepath.Join(folder, entry.Name()))
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, clean(string(text)))
	}
	if len(all) == 0 {
		t.Fatalf("%s has no licence", folder)
	}
	return strings.Join(all, "\n\n") + "\n\n"
}

var trailing = regexp.MustCompile(`[ \t\r]+\n`)

func clean(text string) string {
	return strings.TrimSpace(trailing.ReplaceAllString(text+"\n", "\n"))
}

// Comments of single files that claim a right of others than the licence above them names.
var (
	claim  = regexp.MustCompile(`(?im)copyright (\(c\)|©|\d{4})|MIT license|^License: `)
	common = regexp.MustCompile(`(?i)^copyright (\(c\) )?\d{4}([-, ]*\d{4})* The Go Authors\. All rights reserved`)
	banner = regexp.MustCompile(`(?s)={20,}\n(.*?)\n={20,}`)
)

// claimed is the part of a comment that claims a right, with all that comes after it or, where it has bars above and
// below, what is between them. It is empty where there is none.
func claimed(comment string) string {
	if found := banner.FindStringSubmatch(comment); found != nil {
		comment = found[1]
	}
	paragraphs := strings.Split(comment, "\n\n")
	for i, p := range paragraphs {
		if p = strings.TrimSpace(p); claim.MatchString(p) && !common.MatchString(p) {
			return strings.TrimSpace(strings.Join(paragraphs[i:], "\n\n"))
		}
	}
	return ""
}

// notices are such comments in the files of a module, or of the standard library, each once. They are sorted, so that
// they stay when a file is renamed.
func notices(t *testing.T, all []linked, module string) string {
	found := map[string]string{}
	seen := map[string]bool{}
	for _, p := range all {
		if module == "" && !p.Standard || module != "" && (p.Module == nil || p.Module.Dir != module) {
			continue
		}
		for _, name := range slices.Concat(p.GoFiles, p.SFiles) {
			file := filepath.Join(p.Dir, name)
			if seen[file] {
				continue
			}
			seen[file] = true
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			for _, comment := range comments(string(text)) {
				if text := claimed(comment); text != "" {
					found[text] = file
				}
			}
		}
	}
	list := slices.Sorted(mapKeys(found))
	if len(list) == 0 {
		return ""
	}
	return "Some of its files have notices of their own:\n\n" + strings.Join(list, "\n\n") + "\n"
}

// comments are the comments of a file of Go or of the assembler, each a run of lines.
func comments(text string) []string {
	var all, run []string
	for line := range strings.Lines(text + "\n\n") {
		line = strings.TrimSpace(line)
		if comment, ok := strings.CutPrefix(line, "//"); ok {
			run = append(run, strings.TrimRight(strings.TrimPrefix(comment, " "), " \t"))
			continue
		}
		if run != nil {
			all = append(all, strings.TrimSpace(strings.Join(run, "\n")))
			run = nil
		}
	}
	return all
}
