package markdown

import (
	"bytes"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/message"
)

// readCalculations reads a page that stands behind other text, and gives its calculations and what was said.
func readCalculations(t *testing.T, page string) (*Document, []string) {
	t.Helper()
	const before = "---\ntitle: É\n---\n"
	doc, messages := Parse(&message.Source{Name: "page.md", Text: []byte(before + page)}, len(before))
	var said []string
	for _, m := range messages {
		said = append(said, m.ID+" at "+string(doc.Source.Text[m.Span.Start:m.Span.End]))
	}
	return doc, said
}

func TestCalculationsKeepTheirText(t *testing.T) {
	for _, c := range []struct{ page, name, body, said string }{
		{"```calculation spray\ntitle: T\nwork:\n  - a = b\n```\n", "spray", "title: T\nwork:\n  - a = b\n", ""},
		{"text\r\n\r\n~~~~ calculation spray\r\ntitle: T\r\n~~~~\r\n", "spray", "title: T\r\n", ""},
		{"```calculation spray\n```\n", "spray", "", ""},
		{"```calculation\ntitle: T\n```\n", "", "title: T\n", "block-name-missing at ```calculation"},
		{"```calculation Spray\ntitle: T\n```\n", "Spray", "title: T\n", "block-name at Spray"},
		{"```calculation spray rate\ntitle: T\n```\n", "spray", "title: T\n", "block-name at rate"},
		{"```calculation spray\ntitle: T\n", "spray", "", "block-open at ```calculation spray"},
		{" ```calculation spray\n title: T\n ```\n", "spray", "", "calculation-indented at ```calculation spray"},
		{"- ```calculation spray\n  title: T\n  ```\n", "spray", "", "calculation-indented at ```calculation spray"},
		{"> ```calculation spray\n> title: T\n> ```\n", "spray", "", "calculation-indented at ```calculation spray"},
		{"```calculation spray\n" + strings.Repeat("#\n", bodyLimit) + "```\n", "spray", "",
			"block-too-long at ```calculation spray"},
	} {
		doc, said := readCalculations(t, c.page)
		if len(doc.Calculations) != 1 || len(doc.Blocks) != 0 {
			t.Errorf("%.60q: %d calculations and %d blocks", c.page, len(doc.Calculations), len(doc.Blocks))
			continue
		}
		b := doc.Calculations[0]
		if body := string(doc.Source.Text[b.Body.Start:b.Body.End]); b.Name != c.name || body != c.body {
			t.Errorf("%.60q: %q with %q, want %q with %q", c.page, b.Name, body, c.name, c.body)
		}
		if got := strings.Join(said, "; "); got != c.said {
			t.Errorf("%.60q: %s, want %s", c.page, got, c.said)
		}
	}
}

// A calculation is in its page as the author typed it, with an id that no heading takes.
func TestCalculationIsPrintedAsAListing(t *testing.T) {
	doc, _ := readCalculations(t, "# Calculation spray\n\n```calculation spray\ntitle: A & B\n```\n")
	var w bytes.Buffer
	if err := doc.HTML(&w, &plainFragments{}, &testWords); err != nil {
		t.Fatal(err)
	}
	html := w.String()
	for _, want := range []string{`<div id="calculation-spray">`, "```calculation spray", `A &amp; B`} {
		if !strings.Contains(html, want) {
			t.Errorf("no %s in %s", want, html)
		}
	}
	if n := strings.Count(html, `id="calculation-spray"`); n != 1 {
		t.Errorf("%d parts have the id:\n%s", n, html)
	}
}
