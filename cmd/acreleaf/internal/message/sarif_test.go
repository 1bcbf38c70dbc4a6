package message

import (
	"bytes"
	"encoding/json"
	"net/url"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v6"
)

// reported is a list with all that can be odd about a message: no place, a mark over lines, signs that mean something
// to SARIF, a file name with blanks, and the same id twice.
func reported() List {
	soil := &Source{Name: "content/guides/soil.md", Text: []byte("\ta 46 lb/ac\r\n12 in\r\n")}
	plan := &Source{Name: "content/50 % plan: é.md", Above: 9}
	return List{
		{ID: "figure-differs", Source: soil, Span: Span{3, 11}, Text: "the prose says 46", Note: "write [48](worked:a.b)"},
		{ID: "figure-differs", Source: soil, Span: Span{13, 13}, Text: "{0} is no number", Note: "one\ntwo"},
		{Level: Advice, ID: "date", Source: plan, Text: "look again"},
		{ID: "no-pages", Text: "there is no page"},
	}
}

func sarifOf(t *testing.T, l List) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := SARIF(&b, l); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// The schema is the one that OASIS publishes; testdata/sarif/SOURCE.txt says where.
func TestSARIFFollowsItsSchema(t *testing.T) {
	schema, err := jsonschema.NewCompiler().Compile("testdata/sarif/sarif-schema-2.1.0.json")
	if err != nil {
		t.Fatal(err)
	}
	judge := func(log []byte) error {
		value, err := jsonschema.UnmarshalJSON(bytes.NewReader(log))
		if err != nil {
			t.Fatal(err)
		}
		return schema.Validate(value)
	}
	for _, l := range []List{nil, reported()} {
		if log := sarifOf(t, l); judge(log) != nil {
			t.Errorf("%v\n%s", judge(log), log)
		}
	}
	// The judge can say no.
	for _, broken := range [][2]string{{`"startLine": 1`, `"startLine": 0`}, {`"note"`, `"advice"`},
		{"ruleIndex", "rule-index"}, {`"2.1.0"`, `"2.1"`}} {
		log := bytes.Replace(sarifOf(t, reported()), []byte(broken[0]), []byte(broken[1]), 1)
		if judge(log) == nil {
			t.Errorf("%s is allowed", broken[1])
		}
	}
}

// What the schema cannot say. The numbers are those of the standard's sections.
func TestSARIFWhole(t *testing.T) {
	log := sarifOf(t, reported())
	var whole sarifLog
	if err := json.Unmarshal(log, &whole); err != nil {
		t.Fatal(err)
	}
	run := whole.Runs[0]
	if !strings.HasPrefix(string(log), "{\n  \"version\": \"2.1.0\"") { // 3.13.2
		t.Errorf("the version does not come first: %s", log)
	}
	if diff := cmp.Diff([]sarifRule{{"date"}, {"figure-differs"}, {"no-pages"}}, run.Tool.Driver.Rules); diff != "" {
		t.Errorf("rules (-want +got):\n%s", diff)
	}
	for _, r := range run.Results {
		if run.Tool.Driver.Rules[r.RuleIndex].ID != r.RuleID { // 3.27.6
			t.Errorf("%s has the index of another rule", r.RuleID)
		}
	}
	at := func(uri string, region sarifRegion) []sarifLocation {
		return []sarifLocation{{sarifPhysical{sarifArtifact{uri}, region}}}
	}
	want := []sarifResult{
		{"figure-differs", 1, "error", sarifText{"the prose says 46\nwrite [48\\](worked:a.b)"}, // 3.11.6
			at("content/guides/soil.md", sarifRegion{1, 4, 1, 12})},
		{"figure-differs", 1, "error", sarifText{"{{0}} is no number\none\ntwo"}, // 3.11.5
			at("content/guides/soil.md", sarifRegion{2, 1, 2, 1})},
		{"date", 0, "note", sarifText{"look again"}, // 3.27.10
			at("content/50%20%25%20plan:%20%C3%A9.md", sarifRegion{10, 1, 10, 1})}, // 3.4.3
		{"no-pages", 2, "error", sarifText{"there is no page"}, []sarifLocation{}}, // 3.27.12
	}
	if diff := cmp.Diff(want, run.Results); diff != "" {
		t.Errorf("results (-want +got):\n%s", diff)
	}
}

// A reference is read again as the name that it was made from, and never as one with a scheme or a host.
func TestSARIFReferences(t *testing.T) {
	for _, name := range []string{"content/a.md", "a:b.md", "../c d.md", "x?y#z.md", "caf\xe9.md"} {
		u, err := url.Parse(sarifURI(name))
		if err != nil || u.Scheme != "" || u.Host != "" || strings.TrimPrefix(u.Path, "./") != name {
			t.Errorf("%q: %q, %+v, %v", name, sarifURI(name), u, err)
		}
	}
}
