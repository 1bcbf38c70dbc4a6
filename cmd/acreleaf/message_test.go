package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// unreachable are messages that no content can bring about; they are there so that a fault of the program itself is
// told with the page it happened on.
var unreachable = map[string]bool{"page-unprintable": true, "worksheet-unprintable": true,
	"calculation-unmade": true}

// A message that no script shows is one that nobody has read.
func TestEveryMessageStandsInAScript(t *testing.T) {
	var shown strings.Builder
	for _, folder := range []string{"testdata", filepath.Join("internal", "worksheet", "testdata")} {
		err := fs.WalkDir(os.DirFS(folder), ".", func(name string, entry fs.DirEntry, err error) error {
			if err != nil || filepath.Ext(name) != ".txtar" {
				return err
			}
			text, err := os.ReadFile(filepath.Join(folder, name))
			shown.Write(text)
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	ids := append(messageIDs(t, "site"), messageIDs(t, "worksheet")...)
	ids = append(ids, messageIDs(t, filepath.Join("..", "..", "..", "calc", "formula"))...)
	if len(ids) < 25 {
		t.Errorf("only %d messages were found", len(ids))
	}
	for _, id := range ids {
		if there := strings.Contains(shown.String(), "["+id+"]\n"); there == unreachable[id] {
			t.Errorf("%s: shown by a script: %v", id, there)
		}
	}
}

// reporting are the methods that take the id of a message.
var reporting = []string{"fault", "faultAt", "drop", "unread"}

var idText = regexp.MustCompile(`^"[a-z]+(-[a-z0-9]+)+"$`)

// messageIDs finds the ids of messages in a package: a field ID, or an argument of a method that reports.
func messageIDs(t *testing.T, name string) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("internal", name, "*.go"))
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	var ids []string
	take := func(e ast.Expr) {
		if literal, is := e.(*ast.BasicLit); is && idText.MatchString(literal.Value) {
			ids = append(ids, strings.Trim(literal.Value, `"`))
		}
	}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.KeyValueExpr:
				if key, is := n.Key.(*ast.Ident); is && key.Name == "ID" {
					take(n.Value)
				}
			case *ast.CallExpr:
				if method, is := n.Fun.(*ast.SelectorExpr); is && slices.Contains(reporting, method.Sel.Name) {
					for _, argument := range n.Args {
						take(argument)
					}
				}
			}
			return true
		})
	}
	return ids
}
