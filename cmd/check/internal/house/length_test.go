package house

import (
	"fmt"
	"go/ast"
	"testing"
	"unicode/utf8"
)

// A line of a table does not count: a table is a composite literal of a slice, an array or a map, and stands for one
// line wherever it is. What is left is what a reader must follow.
const (
	fileLines     = 400
	functionLines = 60
	columns       = 120 // characters; a tab is one
	parameters    = 5
)

// tableLines counts the lines that tables take in a node, beyond the first line of each.
func tableLines(t *tree, in ast.Node) int {
	lines := 0
	ast.Inspect(in, func(n ast.Node) bool {
		literal, is := n.(*ast.CompositeLit)
		if !is {
			return true
		}
		switch literal.Type.(type) {
		case *ast.ArrayType, *ast.MapType:
			lines += t.line(literal.End()) - t.line(literal.Pos())
			return false
		}
		return true
	})
	return lines
}

func fileLength(t *tree) []string {
	var broken []string
	for _, f := range t.gos {
		if n := len(f.lines) - tableLines(t, f.ast); n > fileLines {
			broken = append(broken, fmt.Sprintf("%s: %d lines, at most %d", f.name, n, fileLines))
		}
	}
	return broken
}

func functionLength(t *tree) []string {
	var broken []string
	for _, f := range t.gos {
		for _, declaration := range f.ast.Decls {
			function, is := declaration.(*ast.FuncDecl)
			if !is {
				continue
			}
			n := t.line(function.End()) - t.line(function.Name.Pos()) + 1 - tableLines(t, function)
			if n > functionLines {
				broken = append(broken, fmt.Sprintf("%s:%d: %s takes %d lines, at most %d", f.name,
					t.line(function.Pos()), function.Name.Name, n, functionLines))
			}
			if n := function.Type.Params.NumFields(); n > parameters {
				broken = append(broken, fmt.Sprintf("%s:%d: %s takes %d parameters, at most %d", f.name,
					t.line(function.Pos()), function.Name.Name, n, parameters))
			}
		}
	}
	return broken
}

func lineLength(t *tree) []string {
	var broken []string
	for _, f := range t.gos {
		for i, line := range f.lines {
			if n := utf8.RuneCountInString(line); n > columns {
				broken = append(broken, fmt.Sprintf("%s:%d: %d columns, at most %d", f.name, i+1, n, columns))
			}
		}
	}
	return broken
}

func TestFileLength(t *testing.T)     { hold(t, fileLength) }
func TestFunctionLength(t *testing.T) { hold(t, functionLength) }
func TestLineLength(t *testing.T)     { hold(t, lineLength) }
