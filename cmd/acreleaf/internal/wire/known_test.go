package wire_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/wire"
)

var attributeName = regexp.MustCompile(`\bdata-[a-z]+(?:-[a-z]+)*\b`)

// read gives the text of the files that match, without one that is made.
func read(t *testing.T, patterns ...string) map[string]string {
	t.Helper()
	texts := map[string]string{}
	for _, pattern := range patterns {
		names, err := filepath.Glob("../../../../" + pattern)
		if err != nil || len(names) == 0 {
			t.Fatalf("no file matches %s: %v", pattern, err)
		}
		for _, name := range names {
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			if name != scriptFile && !strings.HasSuffix(name, "_test.go") {
				texts[name] = string(text)
			}
		}
	}
	return texts
}

func anyHas(texts map[string]string, part *regexp.Regexp) bool {
	for _, text := range texts {
		if part.MatchString(text) {
			return true
		}
	}
	return false
}

// calcWrites are the attributes in the mathematics of package calc/sheet, which may not import this one.
var calcWrites = map[string]bool{wire.Value: true, wire.Scale: true, wire.Call: true}

// inPart finds how the script names a pair of attributes that differ in their last word: data-${end}.
func inPart(attribute string) *regexp.Regexp {
	last := attribute[strings.LastIndexByte(attribute, '-')+1:]
	return regexp.MustCompile(`(?s)\["(?:\w+", ")*` + last + `"[^\n]*as const.{0,120}` + "`" + `data-\$\{`)
}

// Every name is written by the press and read by the script or the style, and neither side uses any other.
func TestBothSidesKnowEveryName(t *testing.T) {
	press := read(t, "cmd/acreleaf/internal/render/*.go", "cmd/acreleaf/internal/edition/site/*.go")
	calc := read(t, "calc/sheet/*.go")
	reads := read(t, "theme/script/*.ts", "theme/style/*.css")
	checks := read(t, "cmd/check/browser/*.mjs")
	known := map[string]bool{}
	for _, c := range constants(t) {
		name, _ := strconv.Unquote(c.value)
		used := regexp.MustCompile(`\b` + name + `\b(?:[^-]|$)`)
		if c.kind == "Word" {
			used = regexp.MustCompile(`"` + name + `"`)
		}
		known[name] = true
		writes := anyHas(press, regexp.MustCompile(`\bwire\.`+c.name+`\b`))
		if calcWrites[name] {
			writes = anyHas(calc, used)
		}
		if !writes {
			t.Errorf("the press does not write %s (wire.%s)", name, c.name)
		}
		if !anyHas(reads, used) && !anyHas(reads, inPart(name)) {
			t.Errorf("neither script nor style reads %s (wire.%s)", name, c.name)
		}
	}
	for _, texts := range []map[string]string{reads, checks, calc} {
		for file, text := range texts {
			for _, name := range attributeName.FindAllString(text, -1) {
				if !known[name] {
					t.Errorf("%s uses %s, which package wire does not know", file, name)
				}
			}
		}
	}
	for file, text := range press {
		for _, name := range attributeName.FindAllString(regexp.MustCompile(`//.*`).ReplaceAllString(text, ""), -1) {
			t.Errorf("%s writes %s itself: use package wire", file, name)
		}
	}
}
