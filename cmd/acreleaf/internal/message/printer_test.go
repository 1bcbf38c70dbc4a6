package message

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"
)

var update = flag.Bool("update", false, "write what is printed into the files of testdata")

// marked takes the spans out of a text: each is the text between ‹ and ›.
func marked(t *testing.T, text string) (string, []Span) {
	t.Helper()
	var clean strings.Builder
	var spans []Span
	for {
		before, rest, ok := strings.Cut(text, "‹")
		clean.WriteString(before)
		if !ok {
			return clean.String(), spans
		}
		inside, after, ok := strings.Cut(rest, "›")
		if !ok {
			t.Fatal("a mark is not closed")
		}
		start := clean.Len()
		clean.WriteString(inside)
		spans = append(spans, Span{start, clean.Len()})
		text = after
	}
}

func printed(l List) string {
	var b bytes.Buffer
	Printer{}.Print(&b, l)
	return b.String()
}

func TestPrintFiles(t *testing.T) {
	names, err := filepath.Glob("testdata/print/*.txtar")
	if err != nil || len(names) == 0 {
		t.Fatal("no files", err)
	}
	for _, name := range names {
		t.Run(filepath.Base(name), func(t *testing.T) {
			archive, err := txtar.ParseFile(name)
			if err != nil {
				t.Fatal(err)
			}
			clean, spans := marked(t, string(archive.Files[0].Data))
			src := &Source{Name: "content/guides/soil.md", Text: []byte(clean)}
			var l List
			for _, s := range spans {
				l = append(l, Message{ID: "figure-differs", Source: src, Span: s,
					Text: "the prose says 46 lb/ac, the worksheet answers 48 lb N/ac",
					Note: `write 48, or change the givens of worksheet "soil" on line 9`})
			}
			got := printed(l)
			if *update {
				archive.Files[1].Data = []byte(got)
				if err := os.WriteFile(name, txtar.Format(archive), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			if diff := cmp.Diff(string(archive.Files[1].Data), got); diff != "" {
				t.Errorf("printed (-want +got):\n%s", diff)
			}
		})
	}
}

func TestPrintTheExactForm(t *testing.T) {
	src := &Source{Name: "content/guides/soil.md", Text: []byte(strings.Repeat("\n", 17) +
		"the top foot is [46 lb/ac](worked:soil.nitrogen) of nitrogen\n")}
	l := List{
		{ID: "figure-differs", Source: src, Span: Span{17 + 16, 17 + 26},
			Text: "the prose says 46 lb/ac, the worksheet answers 48 lb N/ac",
			Note: `write 48, or change the givens of worksheet "soil" on line 9`},
		{Level: Advice, ID: "old", Text: "no place", Note: "first\nsecond"},
	}
	want := "content/guides/soil.md:18:17: error: the prose says 46 lb/ac, " +
		`the worksheet answers 48 lb N/ac [figure-differs]
   18 | the top foot is [46 lb/ac](worked:soil.nitrogen) of nitrogen
      |                 ^~~~~~~~~~
   note: write 48, or change the givens of worksheet "soil" on line 9
advice: no place [old]
   note: first
         second
1 error, 1 piece of advice
`
	if diff := cmp.Diff(want, printed(l)); diff != "" {
		t.Errorf("printed (-want +got):\n%s", diff)
	}
	if got := printed(nil); got != "" {
		t.Errorf("an empty list prints %q", got)
	}
}

// A part of a file reads like the whole of it, and one message of many has no count behind it.
func TestPrintOneOfALongFile(t *testing.T) {
	const above, row = 41, "North,12 gal\nSouth"
	part := &Source{Name: "blocks.csv", Text: []byte(row), Above: above}
	whole := &Source{Name: "blocks.csv", Text: []byte(strings.Repeat("x\n", above) + row)}
	m := Message{ID: "cell-unfit", Source: part, Span: Span{6, 12}, Text: "gal is a volume", Note: "write 12 in"}
	var one strings.Builder
	Printer{}.PrintOne(&one, m)
	m.Source, m.Span = whole, Span{2*above + 6, 2*above + 12}
	if diff := cmp.Diff(printed(List{m}), one.String()+"1 error\n"); diff != "" {
		t.Errorf("printed (-whole +part):\n%s", diff)
	}
	if line, column := part.Position(6); line != above+1 || column != 7 {
		t.Errorf("%d:%d", line, column)
	}
	if !strings.HasPrefix(one.String(), "blocks.csv:42:7: error: ") {
		t.Errorf("printed %s", &one)
	}
}

func TestPrintWindowsFiles(t *testing.T) {
	src := &Source{Name: "a.md", Text: []byte("\uFEFFtitle: x\r\nsummary: y\r\n")}
	want := `a.md:1:1: error: b
    1 | title: x
      | ^~~~~
a.md:1:9: error: c
    1 | title: x
      |         ^
a.md:2:1: error: d
    2 | summary: y
      | ^~~~~~~~~~
3 errors
`
	got := printed(List{{Source: src, Span: Span{0, 8}, Text: "b"}, {Source: src, Span: Span{11, 13}, Text: "c"},
		{Source: src, Span: Span{13, 30}, Text: "d"}})
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("printed (-want +got):\n%s", diff)
	}
}

func TestPrintColor(t *testing.T) {
	var b bytes.Buffer
	src := &Source{Name: "a.md", Text: []byte("title")}
	Printer{Color: true}.Print(&b, List{{Source: src, Span: Span{0, 5}, Text: "t", ID: "i"}, {Level: Advice, Text: "a"}})
	want := "\x1b[1ma.md:1:1:\x1b[0m \x1b[1;31merror:\x1b[0m t \x1b[2m[i]\x1b[0m\n" +
		"\x1b[2m    1 |\x1b[0m title\n\x1b[2m      |\x1b[0m \x1b[1;31m^~~~~\x1b[0m\n" +
		"\x1b[1;34madvice:\x1b[0m a\n1 error, 1 piece of advice\n"
	if diff := cmp.Diff(want, b.String()); diff != "" {
		t.Errorf("printed (-want +got):\n%s", diff)
	}
}

// Every control character there is, marks that turn text around and bytes that are no text: in the source, the file's
// name, the words and the note. None may reach the terminal.
func TestPrintKeepsControlCharactersFromTheTerminal(t *testing.T) {
	var hostile strings.Builder
	for r := range rune(0xA0) {
		if r != '\n' {
			hostile.WriteRune(r)
		}
	}
	hostile.WriteString("\u202Eabc\u2066\u2028\u2029\u200E\u061C\uFEFF\xff\xc0\xed\xa0\x80\U000E0041")
	text := hostile.String()
	for at := range len(text) {
		src := &Source{Name: "a" + text + ".md", Text: []byte(text)}
		got := printed(List{{ID: "x", Source: src, Span: Span{at, at + 1}, Text: text, Note: text}})
		for _, r := range got {
			if r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || r == '\u2028' || r == '\u2029') {
				t.Fatalf("%U is printed for a message at %d:\n%q", r, at, got)
			}
		}
	}
	src := &Source{Name: "a.md", Text: []byte("a\x1b[31mb")}
	got := printed(List{{Source: src, Span: Span{1, 2}, Text: "x\x1b]0;title\x07"}})
	if !strings.Contains(got, "a␛[31mb\n      |  ^\n") || !strings.Contains(got, "x␛]0;title␇") {
		t.Errorf("printed:\n%s", got)
	}
}

// The excerpt fits a window whatever the line, and the caret is below the marked characters.
func TestExcerptFitsTheWindow(t *testing.T) {
	for _, unit := range []string{"a", "\t", "窒", "e\u0301", "🌱", "\u0301", "\xff", "a\t窒"} {
		for _, before := range []int{0, 1, 30, 95, 96, 97, 200, 5000} {
			for _, mark := range []int{0, 1, 63, 64, 65, 96, 97, 5000} {
				for _, after := range []int{0, 1, 31, 33, 96, 97, 5000} {
					text := strings.Repeat(unit, before+mark+after)
					span := Span{len(unit) * before, len(unit) * (before + mark)}
					e := Place(List{{Source: &Source{Text: []byte(text)}, Span: span}})[0].Excerpt
					total := cells(e.Before) + cells(e.Marked) + cells(e.After)
					if total > windowCells || cells(e.Marked) > markedCells || len(text) > 5000 && total == 0 && unit != "\u0301" {
						t.Fatalf("%q %d %d %d: %d cells, %d marked", unit, before, mark, after, total, cells(e.Marked))
					}
					if mark > 0 && e.Marked == "" {
						t.Fatalf("%q %d %d %d: the mark is lost", unit, before, mark, after)
					}
				}
			}
		}
	}
}

func TestSummary(t *testing.T) {
	fault, advice := Message{}, Message{Level: Advice}
	for want, l := range map[string]List{
		"":                            nil,
		"1 error":                     {fault},
		"2 errors":                    {fault, fault},
		"1 piece of advice":           {advice},
		"2 errors, 1 piece of advice": {fault, advice, fault},
		"1 error, 2 pieces of advice": {fault, advice, advice},
	} {
		if got := Summary(l); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}
