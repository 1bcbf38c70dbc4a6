package proof

import (
	"strings"
	"testing"
	"time"
)

func TestText(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"headings that step down and up", "## A\n\n### B\n\n## C\n\n### D\n\n#### E", ""},
		{"a jump after a jump", "## A\n\n#### B\n\n##### C", "heading-jump"},
		{"a title in the text", "# A\n\n## B", "heading-title"},
		{"the same words below other headings", "## A\n\n### Why\n\n## B\n\n### Why", ""},
		{"the same words of another level", "## Why\n\n### Why", ""},
		{"the same words in other letters", "## A\n\n### Why?\n\n### *why?*", "heading-twice"},
		{"a picture of this site", "![A row of trees](../a.svg)", ""},
		{"a picture with the name of another", "![old.JPG](../a.svg)", "image-name"},
		{"a picture named as it is", "![Trees](../trees.svg)", ""},
		{"a picture with the stem of its file", "![row-2](../row-2.svg)", "image-name"},
		{"a picture of elsewhere", "![A row](HTTPS://example.org/a.svg)", "image-elsewhere"},
		{"a link of elsewhere", "[The law](https://example.org/a)", ""},
		{"a text that says nothing", "[Here.](a.md) and [**click here**](a.md)", "link-empty-words link-empty-words"},
		{"a text that says something", "[more on depth](a.md) and [here in the valley](b.md)", ""},
	} {
		if got := alone(t, "guides/a.md", c.text); got != c.want {
			t.Errorf("%s: %q and not %q", c.name, got, c.want)
		}
	}
}

// Advice is not looked for where it is not asked for.
func TestAdviceIsLeftOut(t *testing.T) {
	text := "---\ntitle: A\nsummary: " + strings.Repeat("b ", 100) + "\n---\n\n## A\n\n## A\n\n[here](a.md)"
	p := read(t, "guides/a.md", text)
	if got := ids(Alone(p, twoLanguages, Rules{})); got != "" {
		t.Error(got)
	}
	if got := ids(Alone(p, twoLanguages, thorough)); got != "heading-twice link-empty-words review-missing summary-long" {
		t.Error(got)
	}
}

func TestReviews(t *testing.T) {
	for _, c := range []struct{ name, file, dates, today, want string }{
		{"the last day", "guides/a.md", "reviewed: 2025-11-02\nreview-every: 12 months", "2026-11-02", ""},
		{"the day after", "guides/a.md", "reviewed: 2025-11-02\nreview-every: 12 months", "2026-11-03", "review-overdue"},
		{"today", "guides/a.md", "reviewed: 2026-11-02", "2026-11-02", ""},
		{"tomorrow", "guides/a.md", "reviewed: 2026-11-03", "2026-11-02", "review-future"},
		{"no rule for the next", "guides/a.md", "reviewed: 1999-11-03", "2026-11-02", ""},
		{"no review", "guides/a.md", "order: 1", "2026-11-02", "review-missing"},
		{"no review of the manual", "manual/a.md", "order: 1", "2026-11-02", ""},
	} {
		today, err := time.Parse(time.DateOnly, c.today)
		if err != nil {
			t.Fatal(err)
		}
		p := read(t, c.file, "---\ntitle: A\nsummary: B.\n"+c.dates+"\n---\n\nText.")
		if got := ids(Alone(p, twoLanguages, Rules{Advice: true, Today: today})); got != c.want {
			t.Errorf("%s: %q and not %q", c.name, got, c.want)
		}
		if got := ids(Alone(p, twoLanguages, Rules{})); got != "" {
			t.Errorf("%s: a press, which reads no clock, says %q", c.name, got)
		}
	}
}

func TestChanges(t *testing.T) {
	const reviewed = "reviewed: 2026-09-14\nchanges:\n"
	for _, c := range []struct{ name, file, dates, want string }{
		{"the newest first", "guides/a.md", reviewed + "  2026-09-14: B.\n  2025-03-02: A.", ""},
		{"one alone", "guides/a.md", reviewed + "  2025-03-02: A.", ""},
		{"the oldest first", "guides/a.md", reviewed + "  2025-03-02: A.\n  2026-09-14: B.", "changes-order"},
		{"one of three not in its place", "guides/a.md",
			reviewed + "  2026-09-14: C.\n  2024-03-02: A.\n  2025-03-02: B.", "changes-order"},
		{"after the review", "guides/a.md", reviewed + "  2026-09-15: A.", "changes-late"},
		{"on a page that was not reviewed", "guides/a.md", "changes:\n  2026-09-15: A.", "review-missing"},
		{"on the home page", "home.md", reviewed + "  2026-09-14: A.", "changes-elsewhere"},
		{"to be written", "guides/a.md", reviewed + "  2026-09-14: TO WRITE – what.", "text-unwritten"},
	} {
		p := read(t, c.file, "---\ntitle: A\nsummary: B.\n"+c.dates+"\n---\n\nText.")
		if got := ids(Alone(p, twoLanguages, thorough)); got != c.want {
			t.Errorf("%s: %q and not %q", c.name, got, c.want)
		}
	}
}
