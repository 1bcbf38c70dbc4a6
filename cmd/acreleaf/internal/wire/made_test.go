package wire_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/wire"
)

var update = flag.Bool("update", false, "write the files that are made from this package")

const (
	scriptFile = "../../../../theme/script/wire.ts"
	checkFile  = "../../../check/internal/pressed/wire.json"
)

// The script's types and the check's list are made from this package.
func TestMadeFilesAreUpToDate(t *testing.T) {
	for name, want := range map[string]string{scriptFile: script(t), checkFile: list(t)} {
		if *update {
			if err := os.WriteFile(name, []byte(want), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		if got, err := os.ReadFile(name); err != nil || string(got) != want {
			t.Errorf("%s is not what this package says (%v); run: go test ./cmd/acreleaf/internal/wire -update", name, err)
		}
	}
}

// list is what the check reads: the attributes that name cells, and the fields of the data block.
func list(t *testing.T) string {
	var out bytes.Buffer
	encoder := json.NewEncoder(&out)
	encoder.SetIndent("", "  ")
	if err := encoder.Encode(map[string]any{
		"inputs": wire.Inputs, "outputs": wire.Outputs,
		"data": fields(reflect.TypeFor[wire.Data]()), "sheets": fields(reflect.TypeFor[wire.Part]()),
		"tables": fields(reflect.TypeFor[wire.Grid]()),
	}); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// fields gives the names that a struct has in JSON.
func fields(of reflect.Type) []string {
	var names []string
	for i := range of.NumField() {
		name, _, _ := strings.Cut(of.Field(i).Tag.Get("json"), ",")
		names = append(names, name)
	}
	return names
}

// script is the file of the script's types.
func script(t *testing.T) string {
	w := &strings.Builder{}
	fmt.Fprint(w, "// What a printed page holds for its script. Made from package wire, and not to be changed by hand:\n",
		"// go test ./cmd/acreleaf/internal/wire -update\n\n/** An attribute of an element. */\nexport type Attribute =")
	for _, c := range constants(t) {
		if c.kind == "" {
			fmt.Fprintf(w, "\n  | %s // %s", c.value, c.comment)
		}
	}
	fmt.Fprint(w, "\n;\n\n/** A word or a sentence that the script writes itself. */\n",
		"export type Word =")
	for _, c := range constants(t) {
		if c.kind == "Word" {
			fmt.Fprintf(w, "\n  | %s", c.value)
		}
	}
	fmt.Fprint(w, "\n;\n")
	for _, declaration := range parsed(t, "data.go").Decls {
		if general, is := declaration.(*ast.GenDecl); is && general.Tok == token.TYPE {
			typeOf(w, general)
		}
	}
	return w.String()
}

// A constant is one of this package's names, as the source has it.
type constant struct{ name, kind, value, comment string }

func constants(t *testing.T) []constant {
	var all []constant
	for _, declaration := range parsed(t, "attribute.go").Decls {
		general, is := declaration.(*ast.GenDecl)
		if !is || general.Tok != token.CONST {
			continue
		}
		for _, spec := range general.Specs {
			value := spec.(*ast.ValueSpec)
			c := constant{name: value.Names[0].Name, value: value.Values[0].(*ast.BasicLit).Value}
			c.comment = strings.TrimSpace(value.Comment.Text())
			if kind, typed := value.Type.(*ast.Ident); typed {
				c.kind = kind.Name
			}
			all = append(all, c)
		}
	}
	return all
}

func parsed(t *testing.T, name string) *ast.File {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	return file
}

// typeOf writes a Go type as the script's: a struct with names in JSON is an interface, any other a tuple.
func typeOf(w *strings.Builder, declaration *ast.GenDecl) {
	spec := declaration.Specs[0].(*ast.TypeSpec)
	fmt.Fprintf(w, "\n/** %s */\n", strings.ReplaceAll(strings.TrimSpace(declaration.Doc.Text()), "\n", "\n * "))
	structure, is := spec.Type.(*ast.StructType)
	if !is {
		fmt.Fprintf(w, "export type %s = number | null;\n", spec.Name.Name)
		return
	}
	var tuple []string
	named := false
	for _, field := range structure.Fields.List {
		name, omitted, inJSON := tagged(field)
		if inJSON {
			if !named {
				fmt.Fprintf(w, "export interface %s {\n", spec.Name.Name)
			}
			named = true
			fmt.Fprintf(w, "  %s%s: %s;", name, omitted, scriptType(field.Type))
			if comment := strings.TrimSpace(field.Comment.Text()); comment != "" {
				fmt.Fprintf(w, " // %s", comment)
			}
			fmt.Fprintln(w)
			continue
		}
		for _, name := range field.Names {
			tuple = append(tuple, strings.ToLower(name.Name)+omitted+": "+scriptType(field.Type))
		}
	}
	if named {
		fmt.Fprint(w, "}\n")
		return
	}
	fmt.Fprintf(w, "export type %s = [%s];\n", spec.Name.Name, strings.Join(tuple, ", "))
}

// tagged reads the tag of a field: its name in JSON, and a question mark where it may be left out.
func tagged(field *ast.Field) (name, omitted string, inJSON bool) {
	if field.Tag == nil {
		return "", "", false
	}
	tag, _ := strconv.Unquote(field.Tag.Value)
	name, option, _ := strings.Cut(reflect.StructTag(tag).Get("json"), ",")
	if option == "omitempty" {
		omitted = "?"
	}
	return name, omitted, name != ""
}

// scriptType is the script's name for the type of a field.
func scriptType(of ast.Expr) string {
	switch of := of.(type) {
	case *ast.StarExpr:
		return scriptType(of.X)
	case *ast.ArrayType:
		if element := scriptType(of.Elt); element != "byte" {
			return element + "[]"
		}
		return "string"
	}
	switch name := of.(*ast.Ident).Name; name {
	case "int", "float64":
		return "number"
	default:
		return name
	}
}
