package schema

import (
	"bytes"
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"go.yaml.in/yaml/v3"
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

// plain gives a YAML text as JSON has it: a date is a text.
func plain(t *testing.T, text string) any {
	t.Helper()
	var document yaml.Node
	if err := yaml.Unmarshal([]byte(text), &document); err != nil || len(document.Content) == 0 {
		t.Fatalf("%v in %q", err, text)
	}
	return plainNode(document.Content[0])
}

func plainNode(n *yaml.Node) any {
	switch {
	case n.Kind == yaml.MappingNode:
		table := map[string]any{}
		for i := 0; i+1 < len(n.Content); i += 2 {
			table[n.Content[i].Value] = plainNode(n.Content[i+1])
		}
		return table
	case n.Kind == yaml.SequenceNode:
		list := []any{}
		for _, item := range n.Content {
			list = append(list, plainNode(item))
		}
		return list
	case n.Tag == "!!bool":
		return n.Value == "true"
	case n.Tag == "!!int", n.Tag == "!!float":
		if number, err := strconv.ParseFloat(n.Value, 64); err == nil {
			return number
		}
	}
	return n.Value
}

var (
	metadata = regexp.MustCompile(`(?s)\A---\n(.*?)\n---\n`)
	fenced   = regexp.MustCompile("(?ms)^```(worksheet|reckoner|calculation)\\b[^\n]*\n(.*?)^```$")
)

// All that the demo site has passes: the metadata of its pages, its settings, sources and blocks.
func TestContent(t *testing.T) {
	schemas, read := compiled(t), map[string]int{}
	check := func(where, name, text string) {
		read[name]++
		if err := schemas[name].Validate(plain(t, text)); err != nil {
			t.Errorf("%s: %v\n%s", where, err, text)
		}
	}
	err := fs.WalkDir(os.DirFS(content), ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := os.ReadFile(filepath.Join(content, name))
		switch {
		case name == "site.yaml" || name == "sources.yaml":
			check(name, strings.TrimSuffix(name, ".yaml")+".json", string(text))
		case filepath.Ext(name) == ".md" && !strings.HasPrefix(name, "manual/messages"): // those are full of slips
			check(name, "page.json", metadata.FindStringSubmatch(string(text))[1])
			for _, found := range fenced.FindAllStringSubmatch(string(text), -1) {
				check(name, found[1]+".json", found[2])
			}
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for name := range schemas {
		if read[name] == 0 {
			t.Errorf("nothing was held against %s", name)
		}
	}
}

// Slips do not pass.
func TestSlips(t *testing.T) {
	schemas := compiled(t)
	for _, c := range []struct{ name, right, wrong string }{
		{"page.json", "title: A\nsummary: B", "title: A"},
		{"page.json", "title: A\nsummary: B\norder: 2", "title: A\nsummary: B\norder: second"},
		{"page.json", "title: A\nsummary: B\nreviewed: 2026-09-14", "title: A\nsummary: B\nreviewed: September"},
		{"page.json", "title: A\nsummary: B\ncrop: C", "title: A\nsummary: B\ncorp: C"},
		{"page.json", "title: A\nsummary: B\nglance: [a.b]", "title: A\nsummary: B\nglance: {a: b}"},
		{"site.json", "office: A\nlanguage: [en, es]", "language: [en, es]"},
		{"site.json", "office: A\ncontact: {name: B}", "office: A\ncontact: {nmae: B}"},
		{"site.json", "office: A\ninvented: true", "office: A\ninvented: perhaps"},
		{"sources.json", "a-b: {title: A, kind: handbook}", "a-b: {title: A, kind: handbok}"},
		{"sources.json", "a-b: {title: A, kind: memory, figures: {2 lb: of N}}", "a-b: {kind: memory}"},
		{"sources.json", "a-b: {title: A, kind: memory}", "A b: {title: A, kind: memory}"},
		{"worksheet.json", "calculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\ndepth: 12 in",
			"calculation: soil-nitrogen\nnitrate: 12 ppm NO3-N"},
		{"worksheet.json", "calculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\ndepth: from a.b",
			"calculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\ndepht: 12 in\ndepth: 12 in"},
		{"worksheet.json", "calculation: tree-density\npattern: square\ntree: 18 ft",
			"calculation: tree-density\npattern: sqare\ntree: 18 ft"},
		{"worksheet.json", "calculation: my-own\nspeed: 4 mi/h", "calculation: My own\nspeed: 4 mi/h"},
		{"worksheet.json", "calculation: my-own", "speed: 4 mi/h"},
		{"reckoner.json", "calculation: soil-nitrogen\ndown: depth = 6, 12 in\nacross: nitrate = 5, 10 ppm NO3-N",
			"calculation: soil-nitrogen\ndwon: depth = 6, 12 in"},
		{"calculation.json", "title: A\nsummary: B\nwork: c = a * 2",
			"title: A\nsummary: B"},
		{"calculation.json", "title: A\nsummary: B\nwork: c = a\nchecks: {d: {when: a > 1, say: E, signal: caution}}",
			"title: A\nsummary: B\nwork: c = a\nchecks: {d: {when: a > 1, say: E, signal: shout}}"},
	} {
		if err := schemas[c.name].Validate(plain(t, c.right)); err != nil {
			t.Errorf("%s: %v\n%s", c.name, err, c.right)
		}
		if err := schemas[c.name].Validate(plain(t, c.wrong)); err == nil {
			t.Errorf("%s takes\n%s", c.name, c.wrong)
		}
	}
}
