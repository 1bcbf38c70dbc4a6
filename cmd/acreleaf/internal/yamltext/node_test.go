package yamltext

import (
	"testing"

	"acreleaf/cmd/acreleaf/internal/message"
)

// The lines of an entry go to the last of its value, and no further: what is written between two entries stays.
func TestLines(t *testing.T) {
	src := &message.Source{Name: "page.md", Text: []byte("---\n\"title\": A\n# of the title\n\n" +
		"summary: >\n  Two\n\n  lines.\n" + "glance:\n- a.b\n- c.d\ncrop: x\n# the end\n---\n")}
	root, _, err := Cut(src, message.Span{Start: 4, End: len(src.Text) - 4}).Parse()
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"\"title\": A\n", "summary: >\n  Two\n\n  lines.\n", "glance:\n- a.b\n- c.d\n", "crop: x\n"}
	for i, e := range root.Entries {
		at := root.Lines(i)
		if got := string(src.Text[at.Start:at.End]); got != want[i] {
			t.Errorf("the lines of %s are %q, want %q", e.Key.Value, got, want[i])
		}
	}
}
