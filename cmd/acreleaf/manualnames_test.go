package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"acreleaf/calc"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/drawing"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/media"
)

// A nameList is names that a page of the manual must give an entry to.
type nameList struct {
	page, what string
	names      []string
}

// endings are those of the names of all kinds of files that a site publishes.
func endings() []string {
	var list []string
	for _, k := range media.Kinds {
		list = append(list, k.Ending)
	}
	return list
}

// manualLists reads the names from the code that knows them.
func manualLists(t *testing.T) []nameList {
	markdown, worksheet := readCode(t, "markdown"), readCode(t, "worksheet")
	config, page := readCode(t, "config"), readCode(t, "page")
	return []nameList{
		{"text.md", "words after a fence", append(construct.Words(), "example")},
		{"text.md", "signal words", markdown.list(t, "signalWords")},
		{"text.md", "schemes of links", markdown.list(t, "linkSchemes")},
		{"text.md", "kinds of files", endings()},
		{"figures.md", "schemes of figures", construct.SchemeWords()},
		{"pages.md", "keys of metadata", page.list(t, "keys")},
		{"pages.md", "folders of pages", kind.Folders(func(r kind.Row) bool { return r.Written })},
		{"site.md", "keys of site.yaml", slices.Concat(config.list(t, "siteKeys"), config.list(t, "contactKeys"),
			config.list(t, "hazardKeys"),
			readCode(t, "reading").returned("Languages"))},
		{"sources.md", "keys of sources.yaml", config.list(t, "referenceKeys")},
		{"sources.md", "kinds of sources", readCode(t, "../../../calc/fact").list(t, "Kinds")},
		{"worksheets.md", "keys of a worksheet", worksheet.constants("block.go")},
		{"passages.md", "keys of a passage", markdown.list(t, "passageKeys")},
		{"reckoners.md", "keys of a reckoner", worksheet.list(t, "tableKeys")},
		{"exercises.md", "keys of an exercise", worksheet.constants("exercise.go")},
		{"drawings.md", "keys of a drawing", worksheet.list(t, "drawingKeys")},
		{"drawings.md", "calculations that can be drawn", drawing.Calculations()},
		{"references.md", "keys of a reference", worksheet.constants("reference.go")},
		{"references.md", "columns of the tables", calc.References()[0].Columns},
		{"own-calculations.md", "keys of a calculation", slices.Concat(worksheet.list(t, "definitionKeys"),
			worksheet.list(t, "givenKeys"), worksheet.list(t, "constantKeys"), worksheet.list(t, "resultKeys"),
			worksheet.list(t, "checkKeys"), worksheet.list(t, "signalNames"))},
	}
}

// code is the source of one package.
type code struct {
	files  map[string]*ast.File // by base name, without tests
	values map[string]ast.Expr  // what constants and variables of the package are set to
}

func readCode(t *testing.T, folder string) *code {
	t.Helper()
	names, err := filepath.Glob(filepath.Join("internal", filepath.FromSlash(folder), "*.go"))
	if err != nil || len(names) == 0 {
		t.Fatal(folder, err)
	}
	c := &code{files: map[string]*ast.File{}, values: map[string]ast.Expr{}}
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		c.files[filepath.Base(name)] = file
		for name, value := range valuesOf(file) {
			c.values[name] = value
		}
	}
	return c
}

// valuesOf gives what the constants and variables of a file are set to.
func valuesOf(file *ast.File) map[string]ast.Expr {
	values := map[string]ast.Expr{}
	for _, declaration := range file.Decls {
		group, ok := declaration.(*ast.GenDecl)
		if !ok {
			continue
		}
		for _, spec := range group.Specs {
			if s, ok := spec.(*ast.ValueSpec); ok && len(s.Values) == len(s.Names) {
				for i, name := range s.Names {
					values[name.Name] = s.Values[i]
				}
			}
		}
	}
	return values
}

// text is the text that an expression stands for; "" when it is none.
func (c *code) text(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.BasicLit:
		if text, err := strconv.Unquote(e.Value); err == nil && e.Kind == token.STRING {
			return text
		}
	case *ast.Ident:
		if value, ok := c.values[e.Name]; ok {
			return c.text(value)
		}
	}
	return ""
}

// texts are the texts of a list.
func (c *code) texts(e ast.Expr) []string {
	list, ok := e.(*ast.CompositeLit)
	if !ok {
		return nil
	}
	var found []string
	for _, element := range list.Elts {
		if text := c.text(element); text != "" {
			found = append(found, text)
		}
	}
	return found
}

// list gives the texts of a variable of the package.
func (c *code) list(t *testing.T, name string) []string {
	t.Helper()
	value, ok := c.values[name]
	if !ok {
		t.Errorf("there is no %s any more; the test must find its names elsewhere", name)
	}
	return c.texts(value)
}

// returned gives the texts of the list that a function of the package returns.
func (c *code) returned(name string) []string {
	var found []string
	for _, file := range c.files {
		ast.Inspect(file, func(n ast.Node) bool {
			f, is := n.(*ast.FuncDecl)
			if is && f.Name.Name == name && len(f.Body.List) == 1 {
				if result, ok := f.Body.List[0].(*ast.ReturnStmt); ok && len(result.Results) == 1 {
					found = append(found, c.texts(result.Results[0])...)
				}
			}
			return true
		})
	}
	return found
}

// constants gives the texts of the constants of a file.
func (c *code) constants(file string) []string {
	var found []string
	for _, value := range valuesOf(c.files[file]) {
		if text := c.text(value); text != "" {
			found = append(found, text)
		}
	}
	slices.Sort(found)
	return found
}

// The packages whose messages content can bring about, from here.
var messagePackages = []string{"book", "config", "edition/epub", "edition/site", "markdown", "media",
	"message", "output", "page", "proof", "worksheet", "yamltext", "../../../calc/formula"}

var anID = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// allMessages finds the ids of messages: a field ID, or the argument for id of a function that takes a text and a note
// as well.
func allMessages(t *testing.T) []string {
	packages := map[string]*code{}
	for _, name := range messagePackages {
		packages[name] = readCode(t, name)
	}
	everywhere := packages["config"].reporting()
	ids := map[string]bool{}
	for _, c := range packages {
		reporting := c.reporting()
		for name, places := range everywhere {
			if ast.IsExported(name) {
				reporting[name] = append(reporting[name], places...)
			}
		}
		for _, file := range c.files {
			ast.Inspect(file, func(n ast.Node) bool {
				for _, e := range idsIn(n, reporting) {
					if text := c.text(e); anID.MatchString(text) {
						ids[text] = true
					}
				}
				return true
			})
		}
	}
	return slices.Sorted(maps.Keys(ids))
}

// idsIn gives the expressions for ids in one node.
func idsIn(n ast.Node, reporting map[string][]int) []ast.Expr {
	switch n := n.(type) {
	case *ast.CompositeLit:
		return fieldID(n)
	case *ast.CallExpr:
		var found []ast.Expr
		for _, place := range reporting[called(n.Fun)] {
			if place < len(n.Args) {
				found = append(found, n.Args[place])
			}
		}
		return found
	}
	return nil
}

// fieldID is the field ID of a message: what has a text as well.
func fieldID(n *ast.CompositeLit) []ast.Expr {
	var found []ast.Expr
	text := false
	for _, element := range n.Elts {
		field, ok := element.(*ast.KeyValueExpr)
		if !ok {
			return nil
		}
		switch key, _ := field.Key.(*ast.Ident); {
		case key == nil:
		case key.Name == "ID":
			found = append(found, field.Value)
		case key.Name == "Text" || key.Name == "Span" || key.Name == "Note":
			text = true
		}
	}
	if !text {
		return nil
	}
	return found
}

func called(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.SelectorExpr:
		return e.Sel.Name
	}
	return ""
}

// reporting gives the functions of the package that take an id with a text and a note, and the place of the id.
func (c *code) reporting() map[string][]int {
	found := map[string][]int{}
	take := func(name string, f *ast.FuncType) {
		var names []string
		for _, field := range f.Params.List {
			for _, n := range field.Names {
				names = append(names, n.Name)
			}
		}
		if at := slices.Index(names, "id"); at >= 0 && slices.Contains(names, "note") || at >= 0 && name == "unread" {
			found[name] = append(found[name], at)
		}
	}
	for _, file := range c.files {
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.FuncDecl:
				take(n.Name.Name, n.Type)
			case *ast.AssignStmt:
				if f, ok := n.Rhs[0].(*ast.FuncLit); ok {
					take(called(n.Lhs[0]), f.Type)
				}
			}
			return true
		})
	}
	return found
}
