package schema

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"go.yaml.in/yaml/v3"

	"acreleaf/cmd/acreleaf/internal/construct"
)

var update = flag.Bool("update", false, "write the schemas into the content folder")

var content = filepath.Join("..", "..", "..", "..", "content")

// The schemas that the site publishes are those that the program makes.
func TestShapes(t *testing.T) {
	for name, text := range Files() {
		at := filepath.Join(content, Folder, name)
		if *update {
			if err := os.MkdirAll(filepath.Dir(at), 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(at, text, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if there, err := os.ReadFile(at); err != nil || !bytes.Equal(there, text) {
			t.Errorf("%s is not what the program makes (%v); run the test with -update", name, err)
		}
	}
}

// Each kind of block has a shape, and a reader that its shape is compared with.
func TestEveryConstruct(t *testing.T) {
	for k := range construct.All() {
		if shapes[k] == nil {
			t.Fatalf("a %s has no shape: shapes in schema.go", k)
		}
		if readers[k.String()+".json"] == nil {
			t.Errorf("nothing reads a %s in the tests of shapes: readers in reader_test.go", k)
		}
	}
}

// compiled are the schemas, each found valid against the metaschema of draft 2020-12.
func compiled(t *testing.T) map[string]*jsonschema.Schema {
	t.Helper()
	schemas := map[string]*jsonschema.Schema{}
	for name, text := range Files() {
		value, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
		if err != nil {
			t.Fatal(name, err)
		}
		compiler := jsonschema.NewCompiler()
		if err := compiler.AddResource("shapes/"+name, value); err != nil {
			t.Fatal(name, err)
		}
		if schemas[name], err = compiler.Compile("shapes/" + name); err != nil {
			t.Fatal(name, err)
		}
	}
	return schemas
}

// parsed is a text as YAML's reader has it, and a null for no text.
func parsed(t *testing.T, text string) *yaml.Node {
	t.Helper()
	var document yaml.Node
	if err := yaml.Unmarshal([]byte(text), &document); err != nil {
		t.Fatalf("%v in %q", err, text)
	}
	if len(document.Content) == 0 {
		return &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!null"}
	}
	return document.Content[0]
}

// plain gives YAML as JSON has it: a date is a text.
func plain(n *yaml.Node) any {
	switch {
	case n.Kind == yaml.MappingNode:
		table := map[string]any{}
		for i := 0; i+1 < len(n.Content); i += 2 {
			table[n.Content[i].Value] = plain(n.Content[i+1])
		}
		return table
	case n.Kind == yaml.SequenceNode:
		list := []any{}
		for _, item := range n.Content {
			list = append(list, plain(item))
		}
		return list
	case n.Tag == "!!null":
		return nil
	case n.Tag == "!!bool":
		return n.Value == "true"
	case n.Tag == "!!int", n.Tag == "!!float":
		if number, err := strconv.ParseFloat(n.Value, 64); err == nil {
			return number
		}
	}
	return n.Value
}
