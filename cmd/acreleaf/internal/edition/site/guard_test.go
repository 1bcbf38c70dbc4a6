package site

import (
	"bytes"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
)

// A panic in a construct is a fault of the page that has one. The other pages keep their own messages, and a desk goes
// on: when the construct is mended, the site is as a press makes it.
func TestAPanicInAConstructNamesThePage(t *testing.T) {
	was := blocks[construct.Reckoner]
	mend := func() { blocks[construct.Reckoner] = was }
	t.Cleanup(mend)
	blocks[construct.Reckoner] = func(*fragments, *bytes.Buffer, *markdown.Block) { panic("planted") }
	const table = "```reckoner\ncalculation: soil-nitrogen\ndown: depth = 6, 12 in\nacross: nitrate = 5, 10 ppm NO3-N\n" +
		"show: nitrogen\n```\n"
	o := book.Options{Name: "content", Content: content(map[string]string{"good": guide("Good", 1, "Text."),
		"other": guide("Other", 2, "[it](gone.md)"), "table": guide("Table", 3, table)})}
	maker := book.NewMaker(o, New)
	said := remade(maker.Make(book.Changes{}))
	if strings.Count(said, "error: ") != 2 || !strings.Contains(said, "content/guides/other.md:7:6: error: ") ||
		!strings.Contains(said, "content/guides/table.md:1:1: error: the program failed on this file: planted (site.") {
		t.Errorf("the maker says\n%s", said)
	}
	mend()
	o.Content = content(map[string]string{"good": guide("Good", 1, "Text."), "other": guide("Other", 2, "Text."),
		"table": guide("Table", 3, table)})
	maker.Look(o.Content)
	got := remade(maker.Make(book.Changes{Names: []string{"guides/other.md"}}))
	if want := pressed(o); got != want || !strings.HasPrefix(want, "4\n") {
		t.Errorf("the maker makes\n%s\nand a press\n%s", got, want)
	}
}
