package house

import (
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
)

// module is the name of the module, which begins the import path of every package of ours.
const module = "acreleaf"

// A tree is the files of the project, with the Go files parsed. Names are slash paths from the project's folder.
type tree struct {
	texts map[string]string
	gos   []*goFile
	set   *token.FileSet
}

// A goFile is one Go file.
type goFile struct {
	name  string
	lines []string
	test  bool // belongs to tests only
	ast   *ast.File
}

// folder is the package's folder, as the tables of rules call it.
func (f *goFile) folder() string { return path.Dir(f.name) }

// imports lists the import paths of a file.
func (f *goFile) imports() []string {
	var list []string
	for _, one := range f.ast.Imports {
		list = append(list, strings.Trim(one.Path.Value, `"`))
	}
	return list
}

// notOurs are folders that hold what others made, or what is made from the rest.
var notOurs = []string{".git", ".tools", "node_modules", "public"}

// readTree reads a project: every file that is a text.
func readTree(project fs.FS) (*tree, error) {
	t := &tree{texts: map[string]string{}, set: token.NewFileSet()}
	err := fs.WalkDir(project, ".", func(name string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case entry.IsDir() && slices.Contains(notOurs, entry.Name()):
			return fs.SkipDir
		case !entry.Type().IsRegular():
			return nil
		}
		content, err := fs.ReadFile(project, name)
		if errors.Is(err, fs.ErrNotExist) {
			return nil // somebody works in the tree while it is read
		}
		if err != nil || strings.Contains(string(content[:min(len(content), 512)]), "\x00") {
			return err
		}
		t.texts[name] = string(content)
		if path.Ext(name) != ".go" || strings.Contains(name, "testdata/") {
			return nil
		}
		return t.parse(name, content)
	})
	return t, err
}

func (t *tree) parse(name string, content []byte) error {
	parsed, err := parser.ParseFile(t.set, name, content, parser.ParseComments|parser.SkipObjectResolution)
	if err != nil {
		return err
	}
	t.gos = append(t.gos, &goFile{
		name: name, lines: strings.Split(strings.TrimSuffix(string(content), "\n"), "\n"),
		test: strings.HasSuffix(name, "_test.go"), ast: parsed,
	})
	return nil
}

// line is the line of a place in a Go file.
func (t *tree) line(at token.Pos) int { return t.set.Position(at).Line }

// A rule lists what in a tree breaks it, a sentence each.
type rule func(t *tree) []string

// readProject reads the project itself, once for all the rules; none of them changes what it is given.
var readProject = sync.OnceValues(func() (*tree, error) {
	folder, err := filepath.Abs(filepath.Join("..", "..", "..", ".."))
	if err != nil {
		return nil, err
	}
	if _, err := os.Stat(filepath.Join(folder, "go.mod")); err != nil {
		return nil, fmt.Errorf("this is not the project's folder: %w", err)
	}
	return readTree(os.DirFS(folder))
})

// hold is a test that the project keeps a rule.
func hold(t *testing.T, r rule) {
	t.Helper()
	project, err := readProject()
	if err != nil {
		t.Fatal(err)
	}
	if len(project.gos) < 100 {
		t.Fatalf("only %d Go files were found", len(project.gos))
	}
	for _, broken := range r(project) {
		t.Error(broken)
	}
}
