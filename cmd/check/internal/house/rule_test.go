package house

import (
	"strings"
	"testing"
	"testing/fstest"
)

// Every rule is tried on a tree that breaks it and on one that just does not, so that none passes by looking away.
func TestRulesFindWhatBreaksThem(t *testing.T) {
	const m = `"` + module + `/`
	long := strings.Repeat("x", columns-3)
	for _, c := range []struct {
		name       string
		rule       rule
		file, good string
		bad        string
		says       string
	}{
		{"up the ladder", importLadder, "calc/unit/a.go",
			"package unit\nimport \"fmt\"", "package unit\nimport " + m + `calc/sheet"`,
			"calc/unit may not import calc/sheet"},
		{"sideways", importLadder, "cmd/acreleaf/internal/output/a.go",
			"package output\nimport " + m + `cmd/acreleaf/internal/message"`,
			"package output\nimport " + m + `cmd/acreleaf/internal/page"`, "may not import cmd/acreleaf/internal/page"},
		{"no rung", importLadder, "calc/trial/a.go", "", "package trial", "no rung"},
		{"tests climb too", importLadder, "wasm/a_test.go",
			"package wasm\nimport " + m + `wasm/wasmtest"`, "package wasm\nimport " + m + `theme"`, "may not import theme"},
		{"a script that imports itself", scriptCircles, "theme/script/a.ts",
			"import { b } from \"./b\";", "import {\n  a,\n} from \"./a\";", "in a circle: theme/script/a.ts > theme"},
		{"a rung that is not used", ladderIsUsed, "wasm/a.go",
			"package wasm\nimport " + m + `calc/sheet"`, "package wasm", "wasm may import calc/sheet and need not"},
		{"a second importer", importersOfLibraries, "cmd/acreleaf/internal/edition/site/a.go",
			"package site\nimport \"github.com/yuin/goldmarkish\"", "package site\nimport \"github.com/yuin/goldmark/ast\"",
			"only cmd/acreleaf/internal/markdown"},
		{"a test's importer", importersOfLibraries, "cmd/acreleaf/a.go",
			"", "package main\nimport \"github.com/yuin/goldmark\"", "may import github.com/yuin/goldmark"},
		{"a test's library", importersOfLibraries, "calc/a.go",
			"", "package calc\nimport \"github.com/google/go-cmp/cmp\"", "may import github.com/google/go-cmp/cmp"},
		{"calc reads a file", calcHasNoIO, "calc/nitrogen/a.go",
			"package nitrogen\nimport \"io/fs\"", "package nitrogen\nimport \"os\"", "calc may not import os"},
		{"calc asks the net", calcHasNoIO, "calc/a.go",
			"package calc\nimport \"math\"", "package calc\nimport \"net/http\"", "calc may not import net/http"},
		{"a long file", fileLength, "calc/a.go",
			"package calc\nvar x = []int{\n" + strings.Repeat("1,\n", fileLines) + "}",
			"package calc" + strings.Repeat("\n//", fileLines),
			"401 lines, at most 400"},
		{"a long function", functionLength, "calc/a.go",
			"package calc\nfunc a() {" + strings.Repeat("\n", functionLines-1) + "}",
			"package calc\nfunc a() {" + strings.Repeat("\n", functionLines) + "}", "a takes 61 lines"},
		{"many parameters", functionLength, "calc/a.go",
			"package calc\nfunc a(b, c, d, e, f int) {}", "package calc\nfunc a(b, c, d, e, f, g int) {}", "6 parameters"},
		{"a long line", lineLength, "calc/a.go",
			"package calc\n// " + long, "package calc\n// ×" + long, "a.go:2: 121 columns"},
		{"an empty name", packageNames, "calc/util/a.go", "", "package util", "calc/util: the name says nothing"},
		{"no doc", packageDocs, "calc/a.go",
			"// Package calc counts.\npackage calc", "package calc", "calc: 0 files have a package doc"},
		{"another's doc", packageDocs, "calc/a.go", "", "// Package unit counts.\npackage calc", `begin with "Package calc"`},
		{"left work", barredWords, "README.md", "To do: nothing.", "TO" + "DO: all", "README.md:1"},
		{"a machine's path", barredWords, "a.txt", "see /work: and https://example.org/home/x", "see /ho" + "me/ana/x",
			"a path of one machine"},
		{"a registry", barredWords, "a.md", "the registry", "https://registry.npm" + "js.org/", "a package registry"},
	} {
		t.Run(c.name, func(t *testing.T) {
			for text, says := range map[string]string{c.good: "", c.bad: c.says} {
				if text == "" {
					continue
				}
				made, err := readTree(fstest.MapFS{c.file: {Data: []byte(text + "\n")}})
				if err != nil {
					t.Fatal(err)
				}
				broken := strings.Join(c.rule(made), "\n")
				if says == "" && broken != "" || !strings.Contains(broken, says) {
					t.Errorf("the rule says %q of\n%.200s\nwant %q", broken, text, says)
				}
			}
		})
	}
}

// What others made is not held to our rules.
func TestTreeLeavesOthersFilesOut(t *testing.T) {
	made, err := readTree(fstest.MapFS{
		"node_modules/a/b.go": {Data: []byte("no Go at all")}, "public/x.html": {Data: []byte("x")},
		"a/testdata/b.go": {Data: []byte("no Go either")}, "picture.png": {Data: []byte("\x89PNG\x00")},
		"a/b.go": {Data: []byte("package a\n")},
	})
	if err != nil || len(made.gos) != 1 || len(made.texts) != 2 {
		t.Errorf("%v: %d Go files, %d texts", err, len(made.gos), len(made.texts))
	}
}
