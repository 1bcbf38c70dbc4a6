package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/proof"
)

// tiePage proofs a page of many worksheets with a text below them, and of the worksheets of more files if there are
// any.
func tiePage(t *testing.T, text string, more ...string) message.List {
	t.Helper()
	content := fstest.MapFS{}
	for file, text := range faultGround {
		content[file] = &fstest.MapFile{Data: []byte(text)}
	}
	for to, from := range map[string]string{"guides/page.md": "page.md", "sources.yaml": "sources.yaml"} {
		data, err := os.ReadFile(filepath.Join("testdata", "tie", from))
		if err != nil {
			t.Fatal(err)
		}
		content[to] = &fstest.MapFile{Data: data}
	}
	for _, name := range more {
		data, err := os.ReadFile(filepath.Join("testdata", "tie", name))
		if err != nil {
			t.Fatal(err)
		}
		content["guides/page.md"].Data = append(content["guides/page.md"].Data, data...)
	}
	content["guides/page.md"].Data = append(content["guides/page.md"].Data, text...)
	checked := book.Check(book.Options{Content: content, Name: "content"}, site.New,
		proof.Rules{Advice: true, Today: faultDay})
	var figures message.List
	for _, m := range checked.Messages {
		if strings.HasPrefix(m.ID, "figure-") {
			figures = append(figures, m)
		} else if m.Level == message.Fault {
			t.Fatalf("%s: %s", m.ID, m.Text)
		}
	}
	return figures
}

// A number is offered no tie to what has its value by chance: of another material, another share, another layer.
func TestTiesThatWereWrong(t *testing.T) {
	for _, c := range []struct{ text, not, with string }{
		{"From the compost you may count 9 lb N/ac.", "worked:well", "6.75 lb N/ac"},
		{"A strip of [6 feet](size:) leaves 70% of the acre alone.", "write [70%](worked:mow", "mow.field-efficiency"},
		{"Each week adds 1% of worms.", "write [1%](worked:removal", "removal.removal-rate"},
		{"A foot of water takes up about 3 tons per acre.", "write [3 tons per acre](", ""},
		{"A report of [50 mm](size:) is 2 inches.", "write [2 inches](", ""},
		{"| Shade | Use |\n| - | - |\n| 15% | 30% |", "write [15%](worked:week", ""},
		{"Of poultry litter, keep to 3 tons an acre.", "write [3 tons an acre](worked:manure", "manure.amount"},
		{"New shoots are six inches by May.", "soil-scoop", ""},
		{"Weeds are 6 inches high.", "soil-scoop", ""},
		{"Wait until shoots are 6 inches.", "soil-scoop", ""},
		{"An inch of water with 10 ppm nitrate-nitrogen brings some.", "source:law", ""},
	} {
		found := tiePage(t, c.text)
		if len(found) == 0 {
			t.Errorf("%q: nothing is said", c.text)
		}
		notes := ""
		for _, m := range found {
			notes += m.Note + "\n"
		}
		if strings.Contains(notes, c.not) || !strings.Contains(notes, c.with) || strings.Contains(notes, "practice") {
			t.Errorf("%q: %s", c.text, notes)
		}
	}
}

// A number that contradicts the page is reported with the answer's name: where it is loose, where it is tied to a
// source or to itself, and where it is a count or a day, which is no figure by itself.
func TestContradictions(t *testing.T) {
	for _, c := range []struct{ text, id, at string }{
		{"The compost brings 9 lb N/ac.", "figure-loose", "compost.nitrogen"},
		{
			"Count [9 lb N/ac](source:practice \"of credit in a year\") for the compost.", "figure-contradicts",
			"compost.nitrogen",
		},
		{"The compost brings a credit of 9 lb N/ac.", "figure-loose", "compost.nitrogen"},
		{"The harvest has taken [15.3 lb/ac](record:2026-09-01 \"our scale\").", "figure-contradicts", "removal.taken"},
		{"The pond is full with [21 ac-ft](size:) of water.", "figure-contradicts", "pond.full"},
		{"That makes 5 feeds, [43 days](worked:plan.every) apart.", "figure-contradicts", "plan.feeds"},
		{"A pond of [12 acre-feet](worked:pond.full) lasts 14 nights.", "figure-contradicts", "pond.nights"},
		{"One night of 71 hours takes [3 acre-feet](worked:pond.night).", "figure-contradicts", "pond.sprinkling"},
		{"The first feed is on April 2.", "figure-contradicts", "plan.first"},
		{"The second feed is on June 1, 2027.", "figure-contradicts", "plan.date-2"},
		{"Trees at this spacing are 46.4 in all.", "figure-contradicts", "spacing.trees"},
		{"Trees at this spacing are 46.4 to the acre.", "figure-contradicts", "spacing.trees"},
		{"There are 46.4 to the acre.", "figure-loose", ""},
		// what the page does give, beside a worked figure
		{"That makes 3 feeds, [43 days](worked:plan.every) apart.", "figure-untied", "plan.feeds"},
		{"A pond of [12 acre-feet](worked:pond.full) lasts 4 nights.", "figure-untied", "pond.nights"},
		{"One night of nine hours takes [3 acre-feet](worked:pond.night).", "figure-untied", "pond.sprinkling"},
		{"The first of [3](worked:plan.feeds) feeds is on April 20.", "figure-untied", "plan.date-1"},
		{"The second of [3](worked:plan.feeds) feeds is on Jun 2, 2027.", "figure-untied", "plan.date-2"},
	} {
		found := tiePage(t, c.text+"\n")
		if len(found) == 0 || found[0].ID != c.id || !strings.Contains(found[0].Note+found[0].Text, c.at) {
			t.Errorf("%q: %v", c.text, found)
		}
	}
}

// Numbers of other things, bounds and days of something else are not compared.
func TestNoContradiction(t *testing.T) {
	for _, text := range []string{
		"Never make more than 6 feeds of [6.03 lb/ac](worked:plan.each-acre).",
		"Make at least 2 feeds.",
		"Six feeds are easier on the roots.",
		"The last frost was on April 28.",
		"No feed before April 1.",
		"We walked 5 rows in 2 hours, and found [4 in](source:practice \"of growth\") of growth on 12 trees.",
		"The compost of our neighbour held [9 lb N/ac](record:2026-08-02 \"the compost of a neighbour, by the lab\").",
		"In row 464 there are 12 trees.",
		"Block 644 is to the north.",
	} {
		if found := tiePage(t, text+"\n"); len(found) > 0 {
			t.Errorf("%q: %v", text, found)
		}
	}
}
