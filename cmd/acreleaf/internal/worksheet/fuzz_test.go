package worksheet

import (
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"acreleaf/cmd/acreleaf/internal/message"
)

// FuzzBind reads pages that nobody would write, with blocks of every kind: messages point into the page, each says what
// to do, and a page without a fault has a module. A binder that panics fails the target.
func FuzzBind(f *testing.F) {
	names, err := filepath.Glob("testdata/*.txtar")
	if err != nil || len(names) == 0 {
		f.Fatal(err)
	}
	for _, name := range names {
		archive, err := txtar.ParseFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(archive.Files[0].Data))
	}
	for _, block := range []string{
		"```exercise soil\ntitle: One layer\ncalculation: soil-nitrogen\nnitrate: 4 to 14 ppm NO3-N, every 1\n" +
			"depth: 7, 9 in\nstory: A report says {nitrate} in {depth}.\nask: nitrogen\ndigits: 3\n" +
			"hint: Slices.\nminutes: 8\n```\n",
		"```exercise line\ntitle: A line\ncalculation: nitrate-basis\nof: soil\nreported: 20 to 80 ppm NO3, every 1\n" +
			"story: \"{of} has these.\"\nreport:\n  ph: pH, 6.8 to 7.8 units, every 0.2\n  nitrate: Nitrate, {reported}\n" +
			"ask: nitrogen\ndigits: 3\nhint: It is smaller.\nminutes: 7\n```\n",
		"```worksheet a\ncalculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\ndepth: 12 in\n```\n\n" +
			"```passage\n- when: a.nitrogen > \"40 lb N/ac\"\n  say: Much.\n- otherwise: Little.\n```\n",
	} {
		f.Add(block)
	}
	f.Fuzz(func(t *testing.T, text string) {
		page, messages := bind(t, text)
		faulty := false
		for _, m := range messages {
			faulty = faulty || m.Level == message.Fault
			if m.ID == "" || m.Text == "" || m.Note == "" || m.Span.Start < 0 || m.Span.End < m.Span.Start ||
				m.Span.End > len(text) {
				t.Errorf("%q: %+v", text, m)
			}
		}
		dump(page)
		if _, err := page.Module(); err != nil && !faulty {
			t.Errorf("%q has no fault, and no module: %v", text, err)
		}
	})
}
