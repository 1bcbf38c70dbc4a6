package markdown

import (
	"strconv"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/message"
)

// A paragraph of comments without an end is told of once, however many begin in it.
func TestOpenCommentsOfAParagraph(t *testing.T) {
	for text, want := range map[string]string{
		"a <!-- b <!-- c\nand <!-- d\n":   "2",
		"a <!-- b <!-- c\n\nd *<!-- e*\n": "2 20",
		"a <!-- b --> c <!-- d\n":         "15",
		"a <!-- b --> c\n":                "",
	} {
		_, said := Parse(&message.Source{Name: "a.md", Text: []byte(text)}, 0)
		var at []string
		for _, m := range said {
			if m.ID != "comment-open" || text[m.Span.Start:m.Span.End] != "<!--" {
				t.Errorf("%q: %s: %s", text, m.ID, m.Text)
			}
			at = append(at, strconv.Itoa(m.Span.Start))
		}
		if got := strings.Join(at, " "); got != want {
			t.Errorf("%q: told at %s, want %s", text, got, want)
		}
	}
}
