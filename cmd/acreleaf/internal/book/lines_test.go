package book

import (
	"strings"
	"testing"
	"testing/fstest"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/proof"
)

// A press lets go of the text of a page before it compares pages. What it then says shows the line all the same, as a
// check does that lets go of nothing.
func TestLateMessagesShowTheirLines(t *testing.T) {
	page := func(head, text string) *fstest.MapFile {
		return &fstest.MapFile{Data: []byte("---\ntitle: A page\nsummary: One.\n" + head + "---\n\n" + text + "\n")}
	}
	files := fstest.MapFS{
		"site.yaml":            {Data: []byte("office: Test Row Orchard Office\n")},
		"home.md":              page("", "Text."),
		"courses/trees/one.md": page("order: 1\nafter:\n  - two.md\n", "Text."),
		"courses/trees/two.md": page("order: 2\nafter:\n  - gone.md\n", "Text."),
		"guides/minutes.md":    page("order: 1\nminutes: 20\n", "Text."),
		"guides/questions.md":  page("order: 2\nquestions:\n  guides/minutes.md: How long?\n", "Text."),
		"guides/anchor.md":     page("order: 3\n", "See [it](minutes.md#gone)."),
	}
	o := Options{Content: files, Name: "content"}
	_, made := pressed(o, newPlain)
	checked := Check(o, newPlain, proof.Rules{}).Messages
	printed := func(l message.List) string {
		var b strings.Builder
		message.Printer{}.Print(&b, l)
		return b.String()
	}
	if got, want := printed(made), printed(checked); got != want {
		t.Errorf("a press says\n%s\nand a check\n%s", got, want)
	}
	for _, id := range []string{"after-later", "after-page", "lesson-elsewhere", "questions-elsewhere", "anchor-broken"} {
		if !strings.Contains(printed(made), "["+id+"]") {
			t.Errorf("a press says nothing of %s: %s", id, printed(made))
		}
	}
}
