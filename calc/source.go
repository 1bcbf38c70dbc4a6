package calc

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"strings"
	"sync"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
)

// Source is the Go function that builds a sheet, with the comment on it if there is one, as it is in the source. It
// is "" for a sheet that was not built by a function of the catalogue.
func Source(s *sheet.Sheet) string { return functions()[s.Origin] }

// functions holds the text of every function of the shelves by name. They are read once, from the embedded source.
var functions = sync.OnceValue(func() map[string]string {
	texts := map[string]string{}
	names, err := fs.Glob(nitrogen.Files, "*.go")
	if err != nil {
		panic(err)
	}
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		content, err := nitrogen.Files.ReadFile(name)
		if err != nil {
			panic(err)
		}
		readFunctions(name, content, texts)
	}
	return texts
})

func readFunctions(name string, content []byte, texts map[string]string) {
	files := token.NewFileSet()
	file, err := parser.ParseFile(files, name, content, parser.ParseComments|parser.SkipObjectResolution)
	if err != nil {
		panic(err) // the embedded source is what this program was built from
	}
	for _, declaration := range file.Decls {
		if f, ok := declaration.(*ast.FuncDecl); ok {
			start := f.Pos()
			if f.Doc != nil {
				start = f.Doc.Pos()
			}
			texts[f.Name.Name] = string(content[files.Position(start).Offset:files.Position(f.End()).Offset])
		}
	}
}
