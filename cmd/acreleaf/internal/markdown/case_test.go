package markdown

import (
	"bytes"
	"flag"
	"fmt"
	"html"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/message"
)

var update = flag.Bool("update", false, "write what the cases in testdata give into them")

// TestCases runs every case of testdata: the page input.md, and what it gives. A case is an archive with the files
// input.md, html, messages and finds; all but the first are written by go test -update.
func TestCases(t *testing.T) {
	for _, name := range caseFiles(t) {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) {
			archive, err := txtar.ParseFile(name)
			if err != nil {
				t.Fatal(err)
			}
			input := caseInput(t, archive)
			got := runCase(t, input)
			if *update {
				archive.Files = append(archive.Files[:1], got...)
				if err := os.WriteFile(name, txtar.Format(archive), 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			if diff := cmp.Diff(asMap(archive.Files[1:]), asMap(got)); diff != "" {
				t.Errorf("run go test -update and read what changes (-want +got):\n%s", diff)
			}
		})
	}
}

func caseFiles(tb testing.TB) []string {
	names, err := filepath.Glob("testdata/*.txtar")
	if err != nil || len(names) < 10 {
		tb.Fatalf("%d cases, %v", len(names), err)
	}
	return names
}

// caseInput gives the page of a case. Signs stand for what an archive cannot hold or an eye cannot see: ␍ a carriage
// return, → a tab, ␀ a NUL.
func caseInput(tb testing.TB, archive *txtar.Archive) []byte {
	if len(archive.Files) == 0 || archive.Files[0].Name != "input.md" {
		tb.Fatal("the first file of a case is input.md")
	}
	page := strings.NewReplacer("␍", "\r", "→", "\t", "␀", "\x00").Replace(string(archive.Files[0].Data))
	return []byte(page)
}

func asMap(files []txtar.File) map[string]string {
	m := map[string]string{}
	for _, f := range files {
		m[f.Name] = string(f.Data)
	}
	return m
}

// runCase reads a page that stands behind other text, as metadata does, so that offsets that forget it show.
func runCase(tb testing.TB, input []byte) []txtar.File {
	before := "---\ntitle: É\n---\n"
	src := &message.Source{Name: "page.md", Text: append([]byte(before), input...)}
	doc, messages := Parse(src, len(before))
	var page, said, finds bytes.Buffer
	if err := doc.HTML(&page, &plainFragments{}, &testWords); err != nil {
		tb.Fatal(err)
	}
	message.Sort(messages)
	for _, m := range messages {
		fmt.Fprintf(&said, "%s [%s] %s: %s\n\t%s\n", m.Level, m.ID, slice(tb, src, m.Span), m.Text, m.Note)
	}
	writeFinds(tb, &finds, doc)
	return []txtar.File{
		{Name: "html", Data: visible(page.Bytes())},
		{Name: "messages", Data: visible(said.Bytes())},
		{Name: "finds", Data: visible(finds.Bytes())},
	}
}

func visible(b []byte) []byte { return bytes.ReplaceAll(b, []byte("\r"), []byte("␍")) }

// writeFinds writes what a document holds, every span as its line and the text that it cuts from the source.
func writeFinds(tb testing.TB, w *bytes.Buffer, d *Document) {
	for _, h := range d.Headings {
		fmt.Fprintf(w, "heading %d #%s %q at %s\n", h.Level, h.ID, h.Text, slice(tb, d.Source, h.Span))
	}
	for i, b := range d.Blocks {
		fmt.Fprintf(w, "block %d %s %q at %s, name %s\n", b.Index, b.Construct, b.Name,
			slice(tb, d.Source, b.Span), slice(tb, d.Source, b.NameSpan))
		for _, e := range b.Entries {
			fmt.Fprintf(w, "\t%q = %q at %s, %s\n", e.Key, e.Value,
				slice(tb, d.Source, e.KeySpan), slice(tb, d.Source, e.ValueSpan))
		}
		same(tb, b.Index, i)
	}
	for i, f := range d.Figures {
		fmt.Fprintf(w, "figure %d %s:%s %q %q at %s, text %s, target %s\n", f.Index, f.Scheme, f.Target,
			f.Text, f.Title, slice(tb, d.Source, f.Span), slice(tb, d.Source, f.TextSpan),
			slice(tb, d.Source, f.TargetSpan))
		same(tb, f.Index, i)
	}
	for i, l := range d.Links {
		kind := "link"
		if l.Image {
			kind = "image"
		}
		fmt.Fprintf(w, "%s %d %q to %q at %s, destination %s\n", kind, l.Index, l.Text, l.Destination,
			slice(tb, d.Source, l.Span), slice(tb, d.Source, l.DestinationSpan))
		same(tb, l.Index, i)
	}
}

func same(tb testing.TB, index, place int) {
	if index != place {
		tb.Errorf("index %d at place %d", index, place)
	}
}

// slice shows a span as its line and the text it cuts out.
func slice(tb testing.TB, src *message.Source, s message.Span) string {
	if s.Start < 0 || s.End < s.Start || s.End > len(src.Text) {
		tb.Fatalf("span %v of %d bytes", s, len(src.Text))
	}
	line, _ := src.Position(s.Start)
	return fmt.Sprintf("%d %q", line, src.Text[s.Start:s.End])
}

// plainFragments stands for the packages above: it shows what it was asked for.
type plainFragments struct{ noted []*Figure }

func (*plainFragments) Block(w *bytes.Buffer, b *Block) {
	fmt.Fprintf(w, "<section class=%q>%s</section>\n", b.Construct, html.EscapeString(b.Name))
}

func (*plainFragments) Passage(w *bytes.Buffer, p *Passage, text func(int)) {
	for i, c := range p.Cases {
		fmt.Fprintf(w, "<p title=%q>", html.EscapeString(c.When))
		text(i)
		w.WriteString("</p>\n")
	}
}

func (p *plainFragments) Figure(w *bytes.Buffer, f *Figure) {
	fmt.Fprintf(w, "<b class=%q>%s</b>", f.Scheme, html.EscapeString(f.Text))
	if f.Scheme == construct.Sourced {
		p.noted = append(p.noted, f)
	}
}

func (p *plainFragments) Notes(w *bytes.Buffer) {
	for _, f := range p.noted {
		fmt.Fprintf(w, "<small>%s</small>", html.EscapeString(f.Target))
	}
	p.noted = nil
}

func (*plainFragments) Link(l *Link) string { return l.Destination }

// Size is that of a picture whose name says it.
func (*plainFragments) Size(l *Link) (width, height int) {
	if strings.HasPrefix(l.Destination, "wide") {
		return 640, 480
	}
	return 0, 0
}

var testWords = Words{
	Danger: "PELIGRO", Warning: "ADVERTENCIA", Caution: "PRECAUCIÓN", Notice: "AVISO",
	SelfLink: "Link to this part", Table: "Table", Code: "Code", Notes: "Notes", Note: "Note",
	Example: "Example", Written: "You write", Made: "The page shows",
	BackToText: "Back to the text",
}
