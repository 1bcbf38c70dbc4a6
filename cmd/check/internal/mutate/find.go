package mutate

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"strings"
)

// A Mutant is one change of a file.
type Mutant struct {
	File       string // from the project's folder
	Line       int
	Within     string // the function or the declaration that it is in
	Was, Is    string // what is there, in one line, and what is put in its place
	Source     string // the line, without the space around it
	name       string // of the package
	start, end int    // byte offsets of what is there
	body       span   // of the function, where a copy of it can be beside the whole one
}

// A span is a part of a file, in byte offsets.
type span struct{ start, end int }

// String tells a mutant with its place.
func (m Mutant) String() string {
	return fmt.Sprintf("%s:%d: in %s: %s → %s | %s", m.File, m.Line, m.Within, m.Was, m.Is, m.Source)
}

// Key tells a mutant by what it changes, so that lines above it do not matter.
func (m Mutant) Key() string {
	return strings.Join([]string{m.File, m.Within, m.Source, m.Was + " → " + m.Is}, " | ")
}

// Find lists the mutants of the Go files of a package, tests left out, in the order of the files.
func Find(root, folder string) ([]Mutant, error) {
	names, err := filepath.Glob(filepath.Join(root, folder, "*.go"))
	if err != nil {
		return nil, err
	}
	var all []Mutant
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		text, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		found, err := inFile(filepath.ToSlash(filepath.Join(folder, filepath.Base(name))), text)
		if err != nil {
			return nil, err
		}
		all = append(all, found...)
	}
	if all == nil {
		return nil, fmt.Errorf("there is nothing to change in %s; write the folder of a package, such as calc/unit", folder)
	}
	return all, nil
}

// inFile lists the mutants of one file.
func inFile(file string, text []byte) ([]Mutant, error) {
	set := token.NewFileSet()
	tree, err := parser.ParseFile(set, file, text, parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	f := &finder{file: file, text: text, set: set, name: tree.Name.Name}
	for _, declaration := range tree.Decls {
		f.within, f.body = nameOf(declaration), f.bodyOf(declaration)
		if general, is := declaration.(*ast.GenDecl); is && general.Tok == token.IMPORT {
			continue
		}
		ast.Inspect(declaration, f.look)
	}
	return f.found, nil
}

// nameOf is what a declaration is called.
func nameOf(declaration ast.Decl) string {
	switch d := declaration.(type) {
	case *ast.FuncDecl:
		return d.Name.Name
	case *ast.GenDecl:
		for _, spec := range d.Specs {
			switch s := spec.(type) {
			case *ast.ValueSpec:
				return s.Names[0].Name
			case *ast.TypeSpec:
				return s.Name.Name
			}
		}
	}
	return "the file"
}

// A finder gathers the mutants of a file.
type finder struct {
	file   string
	text   []byte
	set    *token.FileSet
	name   string
	within string
	body   span
	found  []Mutant
}

// bodyOf is the body of a function; none where it has a label, of which there may be one alone.
func (f *finder) bodyOf(declaration ast.Decl) span {
	function, is := declaration.(*ast.FuncDecl)
	if !is || function.Body == nil {
		return span{}
	}
	labelled := false
	ast.Inspect(function.Body, func(n ast.Node) bool {
		_, label := n.(*ast.LabeledStmt)
		labelled = labelled || label
		return !labelled
	})
	if labelled {
		return span{}
	}
	return span{f.set.Position(function.Body.Pos()).Offset, f.set.Position(function.Body.End()).Offset}
}

// lineEnd is the end of a line and the space around it: a mutant is told in one line.
var lineEnd = regexp.MustCompile(`\s*\n\s*`)

// add notes that the text between two places may become another.
func (f *finder) add(from, to token.Pos, is string) {
	start, end := f.set.Position(from).Offset, f.set.Position(to).Offset
	line := f.set.Position(from).Line
	begin := strings.LastIndexByte(string(f.text[:start]), '\n') + 1
	source, _, _ := strings.Cut(string(f.text[begin:]), "\n")
	f.found = append(f.found, Mutant{
		File: f.file, Line: line, Within: f.within, Was: lineEnd.ReplaceAllString(string(f.text[start:end]), " "), Is: is,
		Source: strings.TrimSpace(source), name: f.name, start: start, end: end, body: f.body,
	})
}

// swaps are what an operator may be taken for.
var swaps = map[token.Token][]token.Token{
	token.ADD: {token.SUB}, token.SUB: {token.ADD}, token.MUL: {token.QUO}, token.QUO: {token.MUL},
	token.REM: {token.MUL}, token.EQL: {token.NEQ}, token.NEQ: {token.EQL},
	token.LSS: {token.LEQ, token.GEQ}, token.LEQ: {token.LSS, token.GTR},
	token.GTR: {token.GEQ, token.LEQ}, token.GEQ: {token.GTR, token.LSS},
}

// look finds what may be changed in one node.
func (f *finder) look(n ast.Node) bool {
	switch n := n.(type) {
	case *ast.BinaryExpr:
		f.binary(n)
	case *ast.UnaryExpr:
		if n.Op == token.NOT || n.Op == token.SUB {
			f.add(n.OpPos, n.X.Pos(), "")
		}
	case *ast.IfStmt:
		f.condition(n.Cond)
	case *ast.BasicLit:
		f.literal(n)
	case *ast.BlockStmt:
		for _, statement := range n.List {
			f.statement(statement)
		}
	case *ast.CaseClause:
		for _, statement := range n.Body {
			f.statement(statement)
		}
	case *ast.CallExpr:
		if name, is := n.Fun.(*ast.Ident); is && (name.Name == "min" || name.Name == "max") {
			f.add(name.Pos(), name.End(), map[string]string{"min": "max", "max": "min"}[name.Name])
		}
	case *ast.Field:
		return n.Tag == nil // tags are no code
	}
	return true
}

func (f *finder) binary(n *ast.BinaryExpr) {
	end := n.OpPos + token.Pos(len(n.Op.String()))
	if n.Op == token.LAND || n.Op == token.LOR {
		f.add(n.X.Pos(), n.Y.Pos(), "") // the first condition dropped
		f.add(n.X.End(), n.Y.End(), "") // the second
		return
	}
	if n.Op == token.ADD && (isText(n.X) || isText(n.Y)) {
		return // texts have no other operator
	}
	for _, other := range swaps[n.Op] {
		f.add(n.OpPos, end, other.String())
	}
}

// isText says whether a term is a text as far as its syntax tells.
func isText(x ast.Expr) bool {
	switch x := x.(type) {
	case *ast.BasicLit:
		return x.Kind == token.STRING
	case *ast.BinaryExpr:
		return x.Op == token.ADD && (isText(x.X) || isText(x.Y))
	}
	return false
}

// condition makes an if hold never.
func (f *finder) condition(c ast.Expr) {
	text := string(f.text[f.set.Position(c.Pos()).Offset:f.set.Position(c.End()).Offset])
	f.add(c.Pos(), c.End(), "false && ("+text+")")
}

// numeral is a text that is a number.
var numeral = regexp.MustCompile(`^"-?[\d.,/]*\d"$`)

// figures is how many figures of a number count. A change of one that stands further back may be no change at all.
const figures = 9

// literal changes a number by a little.
func (f *finder) literal(n *ast.BasicLit) {
	text := n.Value
	isNumber := n.Kind == token.INT || n.Kind == token.FLOAT
	if !isNumber && !(n.Kind == token.STRING && numeral.MatchString(text)) {
		return
	}
	last := strings.LastIndexAny(text, "0123456789")
	if strings.HasPrefix(text, "0x") || strings.HasPrefix(text, "0b") || strings.HasPrefix(text, "0o") || last < 0 {
		return
	}
	if n.Kind == token.FLOAT {
		last = strings.LastIndexAny(strings.SplitN(strings.ToLower(text), "e", 2)[0], "0123456789")
	}
	if first := strings.IndexAny(text, "123456789"); n.Kind == token.FLOAT && first >= 0 {
		last = strings.LastIndexAny(text[:min(last, first+figures)+1], "0123456789")
	}
	next := string('0' + (text[last]-'0'+1)%10)
	f.add(n.Pos(), n.End(), text[:last]+next+text[last+1:])
}

// statement takes a statement out that works by what it does: a call, a step, a value that is set anew.
func (f *finder) statement(s ast.Stmt) {
	switch s := s.(type) {
	case *ast.ExprStmt, *ast.IncDecStmt:
		f.add(s.Pos(), s.End(), "")
		if last := &f.found[len(f.found)-1]; strings.HasPrefix(last.Was, "panic(") {
			last.body = span{} // a return may be missing without it, which the compiler tells of the whole function
		}
	case *ast.AssignStmt:
		if s.Tok != token.DEFINE {
			f.add(s.Pos(), s.End(), "")
		}
	}
}
