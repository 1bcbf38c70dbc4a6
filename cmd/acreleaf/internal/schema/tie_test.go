package schema

import (
	"runtime/debug"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"go.yaml.in/yaml/v3"
)

// tried are the values that take the place of each value of an example, as YAML writes them.
var tried = []string{
	"", `""`, `" "`, "null", "{}", "{a: b}", "[]", "[a, b]", "[en, en]", "[{a: b}]", "[[a]]", `["", a]`,
	"[null]", "true", "yes", `"Yes"`, "maybe", "words that mean nothing", "Two Words", "12", "0", "-1", "1.5",
	"99", "1e1", `"12"`, `"99"`, ".5", "12 to 14", "14 to 12", "2026-02-31", "2026-02-29", "2024-02-29",
	"1900-02-29", "2000-02-29", "2026-9-14", "2026-11-31", `" 2027-04-15 "`, "2027-04-15 to 2027-05-01",
	"0 months", "0000 days", "0012 days", "2  years", "1 month", "12345 days", "2 fortnights", "en", "EN",
	`" en "`, "fr", "engl", "HTTPS://x", "https://a.example:80/b", "http://[::1]/", "ftp://a.example",
	"https://", "https://a.example/b c", "https://me@a.example/", "https://a.example/?",
	`"https://a.example/#"`, "https://a.example/%zz", "https://a.example:http/", "Caution", "memory",
	`" memory "`, "Handbook", "12 in", "12 inn", "five in", "$5", "< 5 ppm NO3-N", "from soil.nitrogen",
	"from soil", "from  soil.depth", "From soil.depth", "depth = 6", "strip = ground_speed * width", "a-b = 2",
	"a == 2", "rate =", "min = 2", "2 > 1", "gal/ac", "12 gal/ac", "acre-rat", "soil", "a--b",
}

// badNames take the place of each name that an author may choose.
var badNames = []string{"Two Words", "a--b", "2a", "title", "down", "a_b", "depht", "fr", "min", "round-up"}

// held is one run of texts against the schemas and their readers.
type held struct {
	t       *testing.T
	schemas map[string]*jsonschema.Schema
	used    map[int]bool // the exceptions, by their index
	count   int
}

// agree compares the verdict of a schema with that of a reader.
func (h *held) agree(name, at, what string, root *yaml.Node) {
	h.t.Helper()
	h.count++
	text, err := yaml.Marshal(root)
	if err != nil {
		h.t.Fatal(err)
	}
	ids := refused(name, string(text))
	err = h.schemas[name].Validate(plain(root))
	if (ids == "") == (err == nil) {
		return
	}
	for i, e := range exceptions {
		if name == e.schema && e.at.MatchString(at) && e.ids.MatchString(ids) && (err != nil) == e.stricter {
			h.used[i] = true
			return
		}
	}
	h.t.Errorf("%s, %s: %s: the reader finds %q, the schema finds %v in\n%s", name, at, what, ids, err, text)
}

// A schema refuses what the reader refuses, and nothing else: with each key of an example left out, with each value
// in the place of every other and of the whole, and with bad names.
func TestSchemasAgreeWithReaders(t *testing.T) {
	// Thirty thousand short texts leave so much behind that collecting it took a third of the test.
	defer debug.SetGCPercent(debug.SetGCPercent(400))
	h := &held{t: t, schemas: compiled(t), used: map[int]bool{}}
	for name, text := range files {
		h.tryAll(name, "", text)
	}
	for _, name := range []string{"worksheet.json", "reckoner.json"} {
		for calculation, texts := range blocks(t, name) {
			for _, text := range texts {
				h.tryAll(name, calculation+" > ", text)
			}
		}
	}
	for name := range readers {
		for _, value := range tried {
			h.agree(name, "", "all of it "+value, parsed(t, value))
		}
	}
	for i, e := range exceptions {
		if !h.used[i] {
			t.Errorf("nothing needs the exception of %s at %s: %s", e.schema, e.at, e.why)
		}
	}
	t.Log(h.count, "texts were tried on their readers")
}

// tryAll tries an example and what can be made of it. Of is what comes before its places, in messages and exceptions.
func (h *held) tryAll(name, of, text string) {
	h.t.Helper()
	h.agree(name, of, "the example", parsed(h.t, text))
	for _, at := range places(h.t, text) {
		where := of + strings.Join(at, " > ")
		root := parsed(h.t, text)
		in, i := entryAt(root, at)
		in.Content = slices.Delete(in.Content, i, i+2)
		h.agree(name, where, "it left out", root)
		root = parsed(h.t, text)
		in, i = entryAt(root, at)
		for _, key := range badNames {
			if indexOf(in, key) < 0 {
				in.Content[i].Value = key
				h.agree(name, where, "the name "+key, root)
			}
		}
		in.Content[i].Value = at[len(at)-1]
		for _, value := range tried {
			in.Content[i+1] = parsed(h.t, value)
			h.agree(name, where, value, root)
		}
	}
}

// places are the ways to each key of a text, from the outermost.
func places(t *testing.T, text string) [][]string {
	t.Helper()
	var all [][]string
	var walk func(n *yaml.Node, before []string)
	walk = func(n *yaml.Node, before []string) {
		for i := 0; i+1 < len(n.Content) && n.Kind == yaml.MappingNode; i += 2 {
			at := append(slices.Clip(before), n.Content[i].Value)
			all = append(all, at)
			walk(n.Content[i+1], at)
		}
	}
	walk(parsed(t, text), nil)
	return all
}

// entryAt finds the mapping that holds a place, and where its last key is there.
func entryAt(root *yaml.Node, at []string) (in *yaml.Node, index int) {
	for in = root; len(at) > 1; at = at[1:] {
		in = in.Content[indexOf(in, at[0])+1]
	}
	return in, indexOf(in, at[0])
}

// indexOf is where a key is in a mapping, -1 for nowhere.
func indexOf(n *yaml.Node, key string) int {
	for i := 0; i < len(n.Content); i += 2 {
		if n.Content[i].Value == key {
			return i
		}
	}
	return -1
}
