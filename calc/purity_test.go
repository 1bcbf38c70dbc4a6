package calc_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// outside are the packages through which a program sees or touches what is outside it: files, the network, other
// programs, the clock, chance.
var outside = []string{
	"os", "net", "time", "io/ioutil", "syscall", "plugin", "log", "path/filepath", "database/sql", "math/rand",
	"math/rand/v2", "crypto/rand", "unsafe", "C", "runtime/debug", "expvar", "flag", "bufio",
}

// allowed are the packages that may have a little more, and why.
var allowed = map[string][]string{
	// Its own source to show, the texts, and the published rows.
	"embed": {"calc/nitrogen", "calc/words", "calc/internal/reference"},

	"io/fs":                  {"calc", "calc/words"},      // to list what is embedded
	"testing":                {"calc/internal/reference"}, // it serves tests only
	"go/ast":                 {"calc", "calc/formula"},    // to cut a function out of the source
	"go/parser":              {"calc", "calc/formula"},
	"go/scanner":             {"calc/formula"},
	"go/token":               {"calc", "calc/formula"},
	"encoding/csv":           {"calc/internal/reference"},
	"acreleaf/calc/fact":     {"calc/formula", "calc/nitrogen", "calc/sheet"},
	"acreleaf/calc/sheet":    {"calc", "calc/formula", "calc/nitrogen", "calc/practice"}, // downwards only
	"acreleaf/calc/unit":     {"calc/formula", "calc/practice", "calc/prose", "calc/sheet"},
	"acreleaf/calc/words":    {"calc/fact", "calc/formula", "calc/practice", "calc/sheet"},
	"acreleaf/calc":          nil,
	"acreleaf/calc/nitrogen": {"calc"},
	"acreleaf/calc/prose":    {"calc/practice"},
}

// A calculation gives the same answer today and tomorrow, here and in a page, because it cannot ask for anything.
func TestCalcHasNoIO(t *testing.T) {
	var files int
	err := fs.WalkDir(os.DirFS("."), ".", func(name string, _ fs.DirEntry, err error) error {
		if err != nil || path.Ext(name) != ".go" || strings.HasSuffix(name, "_test.go") {
			return err
		}
		files++
		for _, imported := range imports(t, name) {
			checkImport(t, name, imported)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if files < 40 {
		t.Errorf("only %d files were looked at", files)
	}
}

func imports(t testing.TB, name string) []string {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
	if err != nil {
		t.Fatal(err)
	}
	var paths []string
	for _, spec := range file.Imports {
		imported, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			t.Fatal(err)
		}
		paths = append(paths, imported)
	}
	return paths
}

func checkImport(t testing.TB, file, imported string) {
	t.Helper()
	dir := path.Join("calc", path.Dir(file))
	for _, forbidden := range outside {
		if imported == forbidden || strings.HasPrefix(imported, forbidden+"/") {
			t.Errorf("%s imports %s; a calculation sees nothing outside itself", file, imported)
		}
	}
	if dirs, special := allowed[imported]; special && !slices.Contains(dirs, dir) {
		t.Errorf("%s imports %s, which is for %q", file, imported, dirs)
	}
	first, _, _ := strings.Cut(imported, "/")
	_, listed := allowed[imported]
	if (strings.Contains(first, ".") || first == "acreleaf") && !listed {
		t.Errorf("%s imports %s; calculations are made of the standard library and of what is under calc", file, imported)
	}
}
