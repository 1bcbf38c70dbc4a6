package worksheet

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

// E32: Farm Progress, Match fertilizer rates in young orchards to growing needs: about a quarter of a pound of
// nitrogen a
// tree in a walnut's first year, with what soil and water bring.
const firstLeafNeed = 4.0 // oz N/tree

// Through need, budget and feed no guide gives a first-leaf tree more in a season than the rate that its need rests on,
// nor than what is published for such a tree. The chain of each guide is printed.
func TestNoChainFeedsMoreThanTheRateItRestsOn(t *testing.T) {
	names, err := filepath.Glob("../../../../content/guides/*.md")
	if err != nil || len(names) < 10 {
		t.Fatalf("%d guides, %v", len(names), err)
	}
	chains, schedules := 0, 0
	for _, name := range names {
		page := bindGuide(t, name)
		rate := map[*sheet.Use]float64{} // by the use that answers pounds an acre: the ounces a tree that they rest on
		for _, b := range page.Sheets {
			if b.Kind == construct.Reckoner {
				continue
			}
			o := sheet.Outcome{Use: b.Use, Cells: page.Cells, High: page.High}
			from := func(given string) (*sheet.Use, bool) {
				link, linked := b.Use.Links[given]
				return page.Graph.Find(link.Use), linked
			}
			high := func(of string) float64 { return o.Range(of).High }
			switch b.Sheet.Name {
			case "tree-rate":
				rate[b.Use] = high("rate")
				t.Logf("%s: %s: the need is %s a tree, %s", filepath.Base(name), b.Use.Name, o.Text("rate"), o.Text("nitrogen"))
			case "season-budget":
				if need, linked := from("need"); linked && rate[need] > 0 {
					rate[b.Use] = rate[need]
				}
				t.Logf("%s: %s: need %s, credits %s, to apply %s", filepath.Base(name), b.Use.Name, o.Text("need"),
					o.Text("credits"), o.Text("apply"))
			case "acre-rate", "feed-schedule":
				season := "rate"
				if b.Sheet.Name == "feed-schedule" {
					season = "season"
				}
				budget, linked := from("nitrogen")
				if linked && rate[budget] > 0 {
					chains++
					t.Logf("%s: %s: fed %s in the season, beside %.4g oz a tree that it rests on", filepath.Base(name), b.Use.Name,
						o.Text(season), rate[budget])
					if high(season) > rate[budget]*(1+1e-12) {
						t.Errorf("%s: %s feeds %s, and its need rests on %v oz", name, b.Use.Name, o.Text(season), rate[budget])
					}
				}
				if b.Sheet.Name == "feed-schedule" && high("leaf") == 1 {
					schedules++
					if high(season) > firstLeafNeed {
						t.Errorf("%s: %s feeds %s in first leaf, over %v", name, b.Use.Name, o.Text(season), firstLeafNeed)
					}
				}
			}
		}
	}
	if chains < 2 || schedules < 2 {
		t.Errorf("there are %d chains and %d schedules of first leaf", chains, schedules)
	}
}

func bindGuide(t *testing.T, name string) *Page {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	body := bytes.Index(text, []byte("\n---\n")) + len("\n---\n")
	doc, _ := markdown.Parse(&message.Source{Name: name, Text: text}, body)
	language := "en"
	if bytes.Contains(text[:body], []byte("\nlanguage: es\n")) {
		language = "es"
	}
	page, messages := Bind(doc, calc.Standard(), language)
	if len(messages) > 0 {
		t.Fatalf("%s: %v", name, messages)
	}
	return page
}
