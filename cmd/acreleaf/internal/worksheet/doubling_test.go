//go:build !race

package worksheet

import (
	"fmt"
	"strings"
	"testing"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/cputime"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

// load is a sheet of which each use can add to what another works out.
var load = sheet.New("load", func(s *sheet.Sheet) {
	before := s.Given("before", "lb/ac", sheet.Field{Label: "Before", Typical: 1, High: 100_000})
	more := s.Given("more", "lb/ac", sheet.Field{Label: "More", Typical: 1, High: 1000})
	sum := s.Answer("sum", "lb/ac", before.Plus(more), sheet.Says{})
	share := s.Answer("share", "", more.Over(sum), sheet.Says{})
	s.Say(sheet.Note, share.More(s.Number(0.5)), "More than half.")
	s.Say(sheet.Note, sum.More(more), "More than one.")
})

const soil = "calculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\ndepth: 12 in\n```\n\n"

// each writes a text for every number up to n.
func each(n int, text func(i int) string) string {
	var b strings.Builder
	for i := range n {
		b.WriteString(text(i))
	}
	return b.String()
}

// chain is worksheets that each take what the last one gives, and more.
func chain(more string) func(n int) string {
	return func(n int) string {
		return each(n, func(i int) string {
			before := fmt.Sprintf("from w%d.sum", i-1)
			if i == 0 {
				before = "1 lb/ac"
			}
			return fmt.Sprintf("```worksheet w%d\ncalculation: load\nbefore: %s\nmore: %s\n```\n\n", i, before, more)
		})
	}
}

// crowds are the pages that TestDoubling binds, by what there is twice as much of, up to its limit.
var crowds = map[string]struct {
	most int
	page func(n int) string
}{
	"worksheet": {mostBlocks, func(n int) string {
		return each(n, func(i int) string { return fmt.Sprintf("```worksheet w%d\n", i) + soil })
	}},
	"worksheet, ranges": {mostBlocks, func(n int) string {
		return each(n, func(i int) string {
			return fmt.Sprintf("```worksheet w%d\n", i) + strings.Replace(soil, "12", "6 to 12", 2)
		})
	}},
	"worksheet, chain": {mostBlocks, chain("2 lb/ac")},
	// Each range is looked for through all worksheets before it, so that from 50 of them on it is 2.6 times.
	"worksheet, chain of ranges": {mostBlocks / 2, chain("1 to 2 lb/ac")},
	"reckoner": {mostCells, func(n int) string {
		return "```reckoner\ncalculation: soil-nitrogen\ndown: nitrate = " + strings.Repeat("12, ", n/10-1) +
			"12 ppm NO3-N\nacross: depth = 1, 2, 3, 4, 5, 6, 7, 8, 9, 10 in\nshow: nitrogen\n```\n\n"
	}},
	"reference": {mostBlocks, func(n int) string { return strings.Repeat("```reference\ntable: material\n```\n\n", n) }},
	"passage": {mostBlocks, func(n int) string {
		return "```worksheet soil\n" + soil + strings.Repeat("```passage\n- when: soil.nitrogen > \"20 lb N/ac\"\n"+
			"  say: Much.\n- otherwise: Little.\n```\n\n", n)
	}},
	"figures": {2000, func(n int) string {
		return "```worksheet soil\n" + soil + strings.Repeat("[48 lb/ac](worked:soil.nitrogen)\n\n", n)
	}},
}

// TestDoubling binds pages of which one thing is twice as much each time, up to its limit.
func TestDoubling(t *testing.T) {
	catalogue := calc.New(append(calc.Standard().All(), load))
	for name, c := range crowds {
		t.Run(name, func(t *testing.T) {
			growth := cputime.Doubling(c.most, func(size int) func() {
				source := &message.Source{Name: "page.md", Text: []byte(c.page(size))}
				work := func() message.List {
					doc, messages := markdown.Parse(source, 0)
					_, more := Bind(doc, catalogue, "en")
					return append(messages, more...)
				}
				for _, m := range work() {
					t.Fatalf("the page has a message: %s", m.Text)
				}
				return func() { work() }
			})
			if t.Log(growth); growth.TooFast() {
				t.Error("twice as much takes too much")
			}
		})
	}
}

// A calculation is no block that is bound: see Define. Not here are exercises: each deals its cards, so that a hundred
// of them take seconds.
func TestDoublingHasEverything(t *testing.T) {
	for k := range construct.All() {
		if _, has := crowds[k.String()]; !has && k != construct.Calculation && k != construct.Exercise {
			t.Errorf("no page has many of %s", k.One())
		}
	}
}
