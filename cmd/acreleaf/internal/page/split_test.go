package page

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/message"
)

var update = flag.Bool("update", false, "write what is printed into the files of testdata")

func printed(l message.List) string {
	var b bytes.Buffer
	message.Sort(l)
	message.Printer{}.Print(&b, l)
	return b.String()
}

// Each file of testdata/split holds a page with faults, what is printed for them, and the text that is taken as body.
func TestSplitFaults(t *testing.T) {
	names, err := filepath.Glob("testdata/split/*.txtar")
	if err != nil || len(names) == 0 {
		t.Fatal("no files", err)
	}
	for _, name := range names {
		t.Run(filepath.Base(name), func(t *testing.T) {
			archive, err := txtar.ParseFile(name)
			if err != nil {
				t.Fatal(err)
			}
			src := &message.Source{Name: "content/guides/soil.md", Text: archive.Files[0].Data}
			_, body, l := Split(src)
			got := []string{printed(l), string(src.Text[body:])}
			for i, text := range got {
				if *update {
					archive.Files[i+1].Data = []byte(text)
				}
				if diff := cmp.Diff(string(archive.Files[i+1].Data), text); diff != "" {
					t.Errorf("%s (-want +got):\n%s", archive.Files[i+1].Name, diff)
				}
			}
			if *update {
				if err := os.WriteFile(name, txtar.Format(archive), 0o644); err != nil {
					t.Fatal(err)
				}
			}
		})
	}
}

const wholePage = `---
title: "Soil: nitrogen in place"
summary: >-
  Turn a soil report
  into pounds an acre.
language: en
reviewed: 2024-02-29
review-every: 24 months
changes:
  2024-02-29: "The depth: a foot."
  2023-01-02: Written.
crop: young walnuts
order: 2.5
season: before bud break
glance: [soil.nitrogen, well.per-inch]
---

Text.

---

More.
`

func TestSplitAWholePage(t *testing.T) {
	for name, text := range map[string]string{
		"as it is":   wholePage,
		"windows":    "\uFEFF" + strings.ReplaceAll(wholePage, "\n", "\r\n"),
		"with space": strings.Replace(wholePage, "---\n\nText", "---  \t\n\nText", 1),
		"with blank": strings.Replace(wholePage, "language:", "\n# the language\n\nlanguage:", 1),
	} {
		t.Run(name, func(t *testing.T) {
			src := &message.Source{Name: "a.md", Text: []byte(text)}
			place := func(words string) message.Span {
				at := strings.Index(text, words)
				return message.Span{Start: at, End: at + len(words)}
			}
			placeLast := func(words string) message.Span {
				at := strings.LastIndex(text, words)
				return message.Span{Start: at, End: at + len(words)}
			}
			want := Metadata{
				Title: "Soil: nitrogen in place", Summary: "Turn a soil report into pounds an acre.", Language: "en",
				Reviewed: time.Date(2024, 2, 29, 0, 0, 0, 0, time.UTC), ReviewEvery: Interval{Months: 24},
				Changes: []Change{
					{time.Date(2024, 2, 29, 0, 0, 0, 0, time.UTC), "The depth: a foot.", placeLast("2024-02-29")},
					{time.Date(2023, 1, 2, 0, 0, 0, 0, time.UTC), "Written.", place("2023-01-02")}},
				Crop: "young walnuts", Order: 2.5, Ordered: true, Season: "before bud break",
				Glance: []config.Value{{Text: "soil.nitrogen", Span: place("soil.nitrogen")},
					{Text: "well.per-inch", Span: place("well.per-inch")}},
				Places: Places{Title: place(`"Soil: nitrogen in place"`), Summary: place(">-"), Language: place("en\n"[:2]),
					Reviewed: place("2024-02-29"), Changes: place("changes"),
					Crop: place("young walnuts"), Season: place("before bud break"),
					Order: place("2.5")},
			}
			const mark = "\uFEFF"
			want.Translates.Span = message.Span{End: len(fence)}
			if strings.HasPrefix(text, mark) {
				const mark = "\uFEFF"
				want.Translates.Span = message.Span{Start: len(mark), End: len(mark) + len(fence)}
			}
			at := strings.Index(text, "language: en") + len("language: ")
			want.Places.Language = message.Span{Start: at, End: at + 2}
			got, body, l := Split(src)
			if diff := cmp.Diff(want, got); diff != "" || len(l) > 0 {
				t.Errorf("(-want +got):\n%s%s", diff, printed(l))
			}
			rest := strings.ReplaceAll(text[body:], "\r", "")
			if rest != "\nText.\n\n---\n\nMore.\n" {
				t.Errorf("the body is %q", rest)
			}
		})
	}
}

func TestSplitWithoutABody(t *testing.T) {
	for _, text := range []string{"---\ntitle: a\nsummary: b\n---", "---\ntitle: a\nsummary: b\n---\n"} {
		_, body, l := Split(&message.Source{Text: []byte(text)})
		if body != len(text) || len(l) > 0 {
			t.Errorf("%q: body at %d, %s", text, body, printed(l))
		}
	}
}

func TestDates(t *testing.T) {
	for text, want := range map[string]string{
		"2026-09-14": "", "2999-12-31": "", "2024-02-29": "", `"2026-09-14"`: "",
		"2026-02-30": "there is no day 2026-02-30 in the calendar",
		"2025-02-29": "there is no day 2025-02-29 in the calendar",
		"2026-13-01": "there is no day 2026-13-01 in the calendar",
		"2026-00-10": "there is no day 2026-00-10 in the calendar",
		"09/14/2026": `"reviewed" needs a date as year-month-day, and this is "09/14/2026"`,
		"2026-9-14":  `"reviewed" needs a date as year-month-day, and this is "2026-9-14"`,
		"yesterday":  `"reviewed" needs a date as year-month-day, and this is "yesterday"`,
		"2026":       `"reviewed" needs a date as year-month-day, and this is "2026"`,
		"2026-09-14T10:00:00Z": `"reviewed" needs a date as year-month-day, ` +
			`and this is "2026-09-14T10:00:00Z"`,
	} {
		m, _, l := Split(&message.Source{Text: []byte("---\ntitle: a\nsummary: b\nreviewed: " + text + "\n---\n")})
		got := ""
		if len(l) > 0 {
			got = l[0].Text
		}
		if got != want || m.Reviewed.IsZero() != (want != "") {
			t.Errorf("%s: %q, want %q; read as %v", text, got, want, m.Reviewed)
		}
	}
}

// Whatever is read, the body begins inside the text, messages point into it, and good metadata has a title.
func FuzzSplit(f *testing.F) {
	names, err := filepath.Glob("testdata/split/*.txtar")
	if err != nil {
		f.Fatal(err)
	}
	for _, name := range names {
		archive, err := txtar.ParseFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(archive.Files[0].Data)
	}
	f.Add([]byte(wholePage))
	f.Fuzz(func(t *testing.T, text []byte) {
		before := bytes.Clone(text)
		src := &message.Source{Name: "a.md", Text: text}
		m, body, l := Split(src)
		if body < 0 || body > len(text) {
			t.Fatalf("the body begins at %d of %d", body, len(text))
		}
		if !message.HasFault(l) && (m.Title == "" || m.Summary == "") {
			t.Errorf("no title or no summary, and no fault: %+v", m)
		}
		if strings.ContainsAny(m.Title+m.Summary+m.Season+m.Crop, "\n\r\x00\x1b") {
			t.Errorf("a text is not one line: %+v", m)
		}
		for _, one := range l {
			if one.Source != src || one.Span.Start < 0 || one.Span.End < one.Span.Start || one.Span.End > len(text) ||
				one.Text == "" || one.Note == "" || one.ID == "" {
				t.Errorf("message %+v", one)
			}
		}
		if !bytes.Equal(text, before) {
			t.Error("the text was changed")
		}
		printed(l)
	})
}

func BenchmarkSplit(b *testing.B) {
	src := &message.Source{Name: "a.md", Text: []byte(wholePage)}
	b.ReportAllocs()
	for b.Loop() {
		if _, _, l := Split(src); len(l) > 0 {
			b.Fatal(printed(l))
		}
	}
}
