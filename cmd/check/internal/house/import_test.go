package house

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// The packages of ours that each package may import, beside what its tests need. Imports point down this list's rungs
// only: what is not in a line is not allowed.
var ladder = map[string][]string{
	"calc/unit":               nil,
	"calc/words":              nil,
	"calc/fact":               {"calc/words"},
	"calc/prose":              {"calc/unit"},
	"calc/sheet":              {"calc/fact", "calc/unit", "calc/words"},
	"calc/nitrogen":           {"calc/fact", "calc/sheet"},
	"calc/formula":            {"calc/fact", "calc/sheet", "calc/unit", "calc/words"},
	"calc/practice":           {"calc/prose", "calc/sheet", "calc/unit", "calc/words"},
	"calc":                    {"calc/nitrogen", "calc/sheet"},
	"calc/internal/reference": nil,

	"wasm":                 {"calc/sheet"},
	"wasm/wasmtest":        {"calc/sheet"},
	"wasm/wasmtest/engine": {"calc/sheet", "wasm", "wasm/wasmtest"},
	"theme":                nil,

	"cmd/acreleaf/internal/construct": nil,

	"cmd/acreleaf":                   {"cli"},
	"cmd/acreleaf/internal/message":  nil,
	"cmd/acreleaf/internal/yamltext": {"message"},
	"cmd/acreleaf/internal/output":   {"message"},
	"cmd/acreleaf/internal/folder":   {"message"},
	"cmd/acreleaf/internal/media":    {"message"},
	"cmd/acreleaf/internal/reading":  nil,
	"cmd/acreleaf/internal/cputime":  nil,
	"cmd/acreleaf/internal/config":   {"yamltext", "message", "reading", "calc/fact", "calc/prose", "calc/unit"},
	"cmd/acreleaf/internal/kind":     nil,
	"cmd/acreleaf/internal/page":     {"config", "kind", "message"},
	"cmd/acreleaf/internal/assets":   {"message", "output"},
	"cmd/acreleaf/internal/offline":  {"output"},
	"cmd/acreleaf/internal/raster":   nil,
	"cmd/acreleaf/internal/drawing":  nil,
	"cmd/acreleaf/internal/wire":     nil,
	"cmd/acreleaf/internal/markdown": {"construct", "message", "yamltext"},
	"cmd/acreleaf/internal/worksheet": {"construct", "drawing", "markdown", "config", "message", "calc", "calc/fact",
		"calc/formula", "calc/practice", "calc/prose", "calc/sheet", "calc/unit", "wasm", "wire"},
	"cmd/acreleaf/internal/render": {"construct", "drawing", "kind", "wire", "calc/unit", "calc/words"},
	"cmd/acreleaf/internal/schema": {"construct", "config", "page", "reading", "markdown", "worksheet", "calc",
		"calc/fact",
		"calc/formula", "calc/sheet"},
	"cmd/acreleaf/internal/rows": {"message", "calc/sheet", "calc/unit"},
	"cmd/acreleaf/internal/proof": {"construct", "kind", "message", "config", "markdown", "worksheet", "page",
		"reading", "calc",
		"calc/fact", "calc/prose", "calc/sheet", "calc/unit"},
	"cmd/acreleaf/internal/terms":  nil,
	"cmd/acreleaf/internal/memo":   nil,
	"cmd/acreleaf/internal/record": nil,
	"cmd/acreleaf/internal/book": {"memo", "terms", "construct", "kind", "message", "folder", "media", "output", "config",
		"page", "markdown", "worksheet", "proof", "record", "calc", "calc/sheet", "calc/words"},
	"cmd/acreleaf/internal/edition/site": {"book", "terms", "construct", "drawing", "kind", "message", "output", "config",
		"page", "assets", "markdown", "offline", "raster", "worksheet", "render", "wire", "theme", "calc", "calc/fact",
		"calc/practice", "calc/sheet", "calc/unit", "calc/words"},
	"cmd/acreleaf/internal/edition/epub": {"book", "edition/site", "folder", "kind", "message", "nodes", "output", "page",
		"render", "theme"},
	"cmd/acreleaf/internal/edition/packet": {"book", "edition/epub", "edition/site", "folder", "kind", "media", "message",
		"nodes", "output", "page", "render", "theme"},
	"cmd/acreleaf/internal/nodes": nil,
	"cmd/acreleaf/internal/edition/handout": {"book", "kind", "message", "output", "qrcode", "worksheet", "render",
		"theme", "calc/practice", "calc/unit"},
	"cmd/acreleaf/internal/chromium": nil,
	"cmd/acreleaf/internal/qrcode":   nil,
	"cmd/acreleaf/internal/licence":  nil,
	"cmd/acreleaf/internal/desk":     {"book", "edition/site", "folder", "media", "message", "offline", "qrcode"},
	"cmd/acreleaf/internal/draft": {"yamltext", "kind", "proof", "markdown", "page", "output", "config", "message",
		"schema", "drawing",
		"calc/prose", "calc/sheet", "calc/unit"},
	"cmd/acreleaf/internal/cli": {"book", "chromium", "edition/epub", "edition/handout", "edition/packet", "edition/site",
		"proof", "desk", "draft", "folder", "licence", "record", "rows", "output", "message", "calc", "calc/prose",
		"calc/sheet", "calc/unit"},

	"cmd/acreleaf/internal/cli/answers": {"cli"},
	"cmd/acreleaf/internal/cli/marks":   {"book", "message", "output", "calc/practice", "calc/unit", "calc/words"},

	"cmd/check": {"cmd/check/internal/mutate", "cmd/check/internal/pressed", "cmd/check/internal/step",
		"cmd/check/internal/tool"},
	"cmd/check/internal/mutate":  nil,
	"cmd/check/internal/house":   nil,
	"cmd/check/internal/pressed": nil,
	"cmd/check/internal/step":    nil,
	"cmd/check/internal/tool":    nil,
	"cmd/check/parity":           {"calc", "calc/sheet", "wasm", "wasm/wasmtest", "cmd/check/internal/pressed"},
}

// What the tests of a package may import on top of that.
var ladderOfTests = map[string][]string{
	"calc":          {"calc/fact", "calc/unit", "calc/words", "wasm/wasmtest", "wasm/wasmtest/engine"},
	"calc/unit":     {"calc/internal/reference"},
	"calc/nitrogen": {"calc/unit", "calc/internal/reference"},
	"calc/formula":  {"wasm/wasmtest", "wasm/wasmtest/engine"},
	"calc/practice": {"calc/nitrogen", "wasm/wasmtest/engine"},
	"wasm":          {"wasm/wasmtest", "wasm/wasmtest/engine"},

	"cmd/acreleaf": {"construct", "drawing", "kind", "media", "book", "edition/site", "proof", "message", "calc",
		"calc/sheet", "calc/unit"},
	"cmd/acreleaf/internal/markdown":     {"cputime"},
	"cmd/acreleaf/internal/worksheet":    {"cputime"},
	"cmd/acreleaf/internal/assets":       {"theme"},
	"cmd/acreleaf/internal/render":       {"theme"},
	"cmd/acreleaf/internal/rows":         {"calc"},
	"cmd/acreleaf/internal/draft":        {"book", "edition/site", "calc"},
	"cmd/acreleaf/internal/edition/epub": {"construct"},
	"cmd/acreleaf/internal/edition/site": {"proof"},
	"cmd/acreleaf/internal/schema":       {"message"},
}

// The libraries that one package alone may import, so that another can take their place by a change of that package.
// A package that is named with "test" may do so in its tests only.
var oneImporter = map[string][]string{
	"go.yaml.in/yaml":              {"cmd/acreleaf/internal/yamltext", "cmd/acreleaf/internal/render", "test *"},
	"github.com/yuin/goldmark":     {"cmd/acreleaf/internal/markdown", "test cmd/acreleaf"},
	"github.com/alecthomas/chroma": {"cmd/acreleaf/internal/markdown"},
	"github.com/evanw/esbuild":     {"cmd/acreleaf/internal/assets"},
	"github.com/piglig/go-qr":      {"cmd/acreleaf/internal/qrcode"},
	"github.com/fsnotify/fsnotify": {"cmd/acreleaf/internal/desk"},
	"golang.org/x/image":           {"cmd/acreleaf/internal/raster"},
	"golang.org/x/net": {"cmd/acreleaf/internal/edition/epub", "cmd/acreleaf/internal/edition/packet",
		"cmd/acreleaf/internal/nodes"},
	"golang.org/x/sys":           {"cmd/acreleaf/internal/output"},
	"github.com/alecthomas/kong": {"cmd/acreleaf/internal/cli"},
	"github.com/tetratelabs/wazero": {"wasm/wasmtest/engine", "cmd/check/parity", "test wasm", "test calc",
		"test calc/formula", "test calc/practice", "test cmd/acreleaf/internal/worksheet"},
	"github.com/rogpeppe/go-internal": {"test *"},
	"github.com/google/go-cmp":        {"test *"},
}

// full is the import path's tail of a package that a table calls by its last name.
func full(name string) string {
	if _, known := ladder[name]; known {
		return name
	}
	return "cmd/acreleaf/internal/" + name
}

func importLadder(t *tree) []string {
	var broken []string
	for _, f := range t.gos {
		allowed, known := ladder[f.folder()]
		if !known {
			broken = append(broken, fmt.Sprintf("%s: its package has no rung in the ladder", f.name))
			continue
		}
		if f.test {
			allowed = slices.Concat(allowed, ladderOfTests[f.folder()], []string{f.folder()})
		}
		for _, path := range f.imports() {
			tail, ours := strings.CutPrefix(path, module+"/")
			if ours && !slices.ContainsFunc(allowed, func(name string) bool { return full(name) == tail }) {
				broken = append(broken, fmt.Sprintf("%s: %s may not import %s", f.name, f.folder(), tail))
			}
		}
	}
	return broken
}

func importersOfLibraries(t *tree) []string {
	var broken []string
	for _, f := range t.gos {
		for _, path := range f.imports() {
			for library, allowed := range oneImporter {
				if path != library && !strings.HasPrefix(path, library+"/") {
					continue
				}
				inTest := f.test && (slices.Contains(allowed, "test *") || slices.Contains(allowed, "test "+f.folder()))
				if !inTest && !slices.Contains(allowed, f.folder()) {
					broken = append(broken, fmt.Sprintf("%s: only %s may import %s", f.name, strings.Join(allowed, ", "), path))
				}
			}
		}
	}
	return broken
}

// ladderIsClimbed finds allowances that nobody needs: a package that is gone, or a rung that goes up.
func ladderIsClimbed(t *tree) []string {
	var broken []string
	there := map[string]bool{}
	for _, f := range t.gos {
		there[f.folder()] = true
	}
	for folder, allowed := range ladder {
		if !there[folder] {
			broken = append(broken, folder+": there is no such package")
		}
		for _, name := range allowed {
			if reaches(full(name), folder, map[string]bool{}) {
				broken = append(broken, fmt.Sprintf("%s and %s may import each other", folder, full(name)))
			}
		}
	}
	return broken
}

// ladderIsUsed finds allowances that no file of a package uses: the table shows how the packages depend on each other,
// and no more.
func ladderIsUsed(t *tree) []string {
	code, tests := map[string]map[string]bool{}, map[string]map[string]bool{}
	for _, f := range t.gos {
		used := code
		if f.test {
			used = tests
		}
		if used[f.folder()] == nil {
			used[f.folder()] = map[string]bool{}
		}
		for _, path := range f.imports() {
			used[f.folder()][strings.TrimPrefix(path, module+"/")] = true
		}
	}
	var broken []string
	for _, table := range []struct {
		of            string
		allowed       map[string][]string
		used, without map[string]map[string]bool
	}{{"", ladder, code, nil}, {"the tests of ", ladderOfTests, tests, code}} {
		for folder := range table.used {
			for _, name := range table.allowed[folder] {
				if !table.used[folder][full(name)] || table.without[folder][full(name)] {
					broken = append(broken, fmt.Sprintf("%s%s may import %s and need not", table.of, folder, full(name)))
				}
			}
		}
	}
	return broken
}

// reaches says whether the ladder leads from one package down to another.
func reaches(from, to string, seen map[string]bool) bool {
	if from == to {
		return true
	}
	if seen[from] {
		return false
	}
	seen[from] = true
	return slices.ContainsFunc(ladder[from], func(name string) bool { return reaches(full(name), to, seen) })
}

// What calc may not import: whatever looks at the world. It is compiled into pages, marked against and proved alike on
// every machine, so it must not know where or when it runs.
var world = []string{"os", "os/", "net", "net/", "io/ioutil", "syscall", "time", "math/rand", "plugin",
	"database/", "log", "log/", "unsafe", "C"}

// calcHasNoIO looks at what is compiled into programs. The one thing read is calc's own source, which is embedded.
func calcHasNoIO(t *tree) []string {
	var broken []string
	for _, f := range t.gos {
		if f.test || f.folder() != "calc" && !strings.HasPrefix(f.folder(), "calc/") ||
			strings.HasPrefix(f.folder(), "calc/internal/") {
			continue
		}
		for _, path := range f.imports() {
			for _, barred := range world {
				if path == barred || strings.HasSuffix(barred, "/") && strings.HasPrefix(path, barred) {
					broken = append(broken, fmt.Sprintf("%s: calc may not import %s", f.name, path))
				}
			}
		}
	}
	return broken
}

func TestImportLadder(t *testing.T)    { hold(t, importLadder) }
func TestLadderIsClimbed(t *testing.T) { hold(t, ladderIsClimbed) }
func TestLadderIsUsed(t *testing.T)    { hold(t, ladderIsUsed) }
func TestOneImporter(t *testing.T)     { hold(t, importersOfLibraries) }
func TestCalcHasNoIO(t *testing.T)     { hold(t, calcHasNoIO) }
