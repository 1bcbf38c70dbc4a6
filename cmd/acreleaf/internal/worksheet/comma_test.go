package worksheet

import (
	"strings"
	"testing"

	"acreleaf/calc"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A comma comes before decimals on a page in Spanish, in a given, in a figure and in a ready table. On a page in
// English each of them is a fault that says to write a point.
func TestADecimalCommaIsOfTheLanguage(t *testing.T) {
	const text = "```worksheet soil\ncalculation: soil-nitrogen\nnitrate: 12,3 ppm NO3-N\ndepth: 12 in\n```\n\n" +
		"Hay [49,2 lb N/ac](worked:soil.nitrogen).\n\n" +
		"```reckoner\ncalculation: soil-nitrogen\nacross: nitrate = 2,5, 7,5 ppm NO3-N\ndown: depth = 6, 12 in\n" +
		"show: nitrogen\nmark: at least 12,5 lb N/ac present\n```\n"
	doc, faults := markdown.Parse(&message.Source{Name: "a.md", Text: []byte(text)}, 0)
	if len(faults) > 0 {
		t.Fatal(faults[0].Text)
	}
	page, faults := Bind(doc, calc.Standard(), "es")
	for _, f := range faults {
		t.Errorf("on a page in Spanish: %s", f.Text)
	}
	if got := page.Find("soil").Entries["nitrate"].Value; got != 12.3 {
		t.Errorf("12,3 is read as %v", got)
	}
	if got := page.Sheets[1].Table; got.Across.Values[0] != 2.5 || got.Mark.Low != 12.5 {
		t.Errorf("the ready table has %v, marked from %v", got.Across.Values, got.Mark.Low)
	}
	_, faults = Bind(doc, calc.Standard(), "en")
	if len(faults) != 3 {
		t.Errorf("on a page in English: %d faults", len(faults))
	}
	for _, f := range faults {
		if !strings.Contains(f.Note, "write a point") {
			t.Errorf("on a page in English: %s: %s", f.Text, f.Note)
		}
	}
}
