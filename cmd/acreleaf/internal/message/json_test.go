package message

import (
	"bytes"
	"testing"

	"github.com/google/go-cmp/cmp"
)

const wholeJSON = `{
  "pages": 2,
  "worked": 3,
  "sourced": 1,
  "exercises": [
    {
      "file": "content/workshops/well.md",
      "name": "well",
      "distinct": 9,
      "cards": 3,
      "ambiguous": 1,
      "unsure": [
        {
          "slip": "one-inch",
          "other": "",
          "cards": 1
        }
      ]
    }
  ],
  "errors": 2,
  "advice": 1,
  "messages": [
    {
      "level": "error",
      "id": "figure-differs",
      "file": "content/guides/soil.md",
      "line": 2,
      "column": 1,
      "endLine": 2,
      "endColumn": 1,
      "text": "{0} is no number",
      "notes": [
        "one",
        "two"
      ]
    },
    {
      "level": "advice",
      "id": "date",
      "file": "content/50 % plan: é.md",
      "line": 10,
      "column": 1,
      "endLine": 10,
      "endColumn": 1,
      "text": "look again",
      "notes": []
    },
    {
      "level": "error",
      "id": "no-pages",
      "file": "",
      "line": 0,
      "column": 0,
      "endLine": 0,
      "endColumn": 0,
      "text": "there is no page",
      "notes": []
    }
  ]
}
`

// The whole object, key by key: programs that read it depend on each.
func TestJSONWhole(t *testing.T) {
	var b bytes.Buffer
	cards := Cards{File: "content/workshops/well.md", Name: "well", Distinct: 9, Cards: 3, Ambiguous: 1,
		Unsure: []Pair{{Slip: "one-inch", Cards: 1}}}
	if err := JSON(&b, reported()[1:], Counts{Pages: 2, Worked: 3, Sourced: 1, Exercises: []Cards{cards}}); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(wholeJSON, b.String()); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	b.Reset()
	if err := JSON(&b, nil, Counts{}); err != nil || !bytes.Contains(b.Bytes(), []byte(`"messages": []`)) {
		t.Errorf("without a message: %s%v", &b, err)
	}
}
