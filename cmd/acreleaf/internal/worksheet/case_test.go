package worksheet

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"acreleaf/calc"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

var update = flag.Bool("update", false, "write what the cases in testdata give into them; then read it")

// TestCases runs every case of testdata: the page input.md, what it is bound to, and its messages.
func TestCases(t *testing.T) {
	names, err := filepath.Glob("testdata/*.txtar")
	if err != nil || len(names) < 10 {
		t.Fatalf("%d cases, %v", len(names), err)
	}
	for _, name := range names {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) {
			archive, err := txtar.ParseFile(name)
			if err != nil || len(archive.Files) == 0 || archive.Files[0].Name != "input.md" {
				t.Fatalf("the first file of a case is input.md; %v", err)
			}
			page, messages := bind(t, string(archive.Files[0].Data))
			var said bytes.Buffer
			message.Sort(messages)
			message.Printer{}.Print(&said, messages)
			want := string(txtar.Format(archive))
			archive.Files = append(archive.Files[:1], txtar.File{Name: "page", Data: dump(page)},
				txtar.File{Name: "messages", Data: said.Bytes()})
			got := string(txtar.Format(archive))
			if *update {
				if err := os.WriteFile(name, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("run go test -update and read what changes (-want +got):\n%s", diff)
			}
		})
	}
}

// bind reads a page. The messages of Markdown come before those of Bind, as in a press.
func bind(tb testing.TB, text string) (*Page, message.List) {
	tb.Helper()
	doc, messages := markdown.Parse(&message.Source{Name: "input.md", Text: []byte(text)}, 0)
	page, more := Bind(doc, calc.Standard(), "en")
	return page, append(messages, more...)
}

// dump writes down what a page was bound to.
func dump(p *Page) []byte {
	var w bytes.Buffer
	for i, b := range p.Sheets {
		fmt.Fprintf(&w, "%d %s: %s, after %v\n", i, b.name, b.Sheet.Name, b.Use.After)
		o := p.Example(b)
		for _, name := range b.Sheet.Names() {
			note := ""
			if link, linked := b.From(name); linked {
				note = ", from " + link.Use + "." + link.Name
			} else if given := b.Sheet.FindGiven(name); given != nil && !o.Stated(name) {
				note = ", not stated"
			} else if given != nil && len(given.Choices) > 0 {
				note = ", " + given.Choices[int(o.Value(name).Value)].Name
			}
			fmt.Fprintf(&w, "  %s = %s%s\n", name, o.Text(name), note)
		}
		if b.Kind == construct.Reckoner {
			dumpTable(&w, p, b)
		}
	}
	for i := range len(p.figures) {
		if f := p.figures[i]; f != nil {
			fmt.Fprintf(&w, "figure %q %q %q: %s.%s, by %s\n", f.Before, f.Number, f.After, f.Bound.name, f.Name, f.By.Text())
		}
	}
	return w.Bytes()
}

func dumpTable(w *bytes.Buffer, p *Page, b *Bound) {
	t := b.Table
	fmt.Fprintf(w, "  %s by %s and %s", t.Show, t.Down.Given, t.Across.Given)
	if t.Mark != nil {
		fmt.Fprintf(w, ", mark %v to %v", t.Mark.Low, t.Mark.High)
	}
	if down, across, ok := p.Followed(b); ok {
		fmt.Fprintf(w, ", near row %d and column %d", t.Down.Nearest(p.Cells[down]), t.Across.Nearest(p.Cells[across]))
	}
	fmt.Fprintf(w, "\n  %8s", "")
	for j := range t.Across.Values {
		fmt.Fprintf(w, "%18s", t.Across.At(j))
	}
	for i := range t.Values {
		fmt.Fprintf(w, "\n  %8s", t.Down.At(i))
		for j := range t.Values[i] {
			mark := ""
			if t.Marked(i, j) {
				mark = "*"
			}
			fmt.Fprintf(w, "%18s", unit.Range{Low: t.Values[i][j], High: t.High[i][j]}.Numbers()+mark)
		}
	}
	w.WriteByte('\n')
}
