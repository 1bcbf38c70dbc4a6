package schema

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/sheet"
)

// blocks are examples that the reader takes: of a worksheet for every calculation with every given, and of a reckoner
// for every calculation that has two numbers to run along its sides.
func blocks(t *testing.T, name string) map[string][]string {
	t.Helper()
	texts := map[string][]string{}
	for _, s := range catalogue().All() {
		if name == "worksheet.json" {
			texts[s.Name] = worksheets(t, s)
		} else if text := reckoner(s); text != "" {
			texts[s.Name] = []string{text}
		}
	}
	if name == "reckoner.json" {
		texts["follow"] = []string{"calculation: soil-nitrogen\ntitle: Near the example\ndown: depth = 6, 12 in\n" +
			"across: bulk-density = 1.2, 1.4 g/cm3\nshow: nitrogen\nmark: at least 20 lb N/ac\nfollow: soil\n"}
	}
	return texts
}

// worksheets have all givens of a calculation between them. Some cannot be beside each other.
func worksheets(t *testing.T, s *sheet.Sheet) []string {
	t.Helper()
	left := map[string]bool{}
	for _, g := range s.Givens {
		left[g.Name] = true
	}
	var texts []string
	for len(left) > 0 {
		before := len(left)
		text := "calculation: " + s.Name + "\ntitle: A title\n"
		var later []*sheet.Given
		for _, g := range s.Givens {
			if g.Optional {
				later = append(later, g)
			} else {
				text += exampleLine(g)
				delete(left, g.Name)
			}
		}
		// those that no worksheet has yet come first
		slices.SortStableFunc(later, func(a, b *sheet.Given) int { return order(left[b.Name]) - order(left[a.Name]) })
		for again := 0; again < 2; again++ { // one may need another that comes after it
			for _, g := range later {
				more := text + exampleLine(g)
				if !strings.Contains(text, "\n"+exampleLine(g)) && refused("worksheet.json", more) == "" {
					text = more
					delete(left, g.Name)
				}
			}
		}
		if len(left) == before && len(texts) > 0 || refused("worksheet.json", text) != "" {
			t.Fatalf("there is no example of %s with %v:\n%s", s.Name, slices.Collect(maps.Keys(left)), text)
		}
		texts = append(texts, text)
	}
	return texts
}

func order(first bool) int {
	if first {
		return 1
	}
	return 0
}

func exampleLine(g *sheet.Given) string { return g.Name + ": " + g.Example() + "\n" }

// reckoner is one that the reader takes, "" where the calculation has no two numbers that can run along it.
func reckoner(s *sheet.Sheet) string {
	for i, down := range s.Givens {
		for _, across := range s.Givens[i+1:] {
			for _, answer := range s.Answers() {
				text := "calculation: " + s.Name + "\ndown: " + axis(down) + "\nacross: " + axis(across) + "\nshow: " +
					answer.Name + "\n"
				for _, g := range s.Givens {
					if g != down && g != across && !g.Optional {
						text += exampleLine(g)
					}
				}
				if refused("reckoner.json", text) == "" {
					return text
				}
			}
		}
	}
	return ""
}

func axis(g *sheet.Given) string { return g.Name + " = " + g.Example() }
