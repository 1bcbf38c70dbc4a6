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
	"worksheet, chain":           {mostBlocks, chain("2 lb/ac")},
	"worksheet, chain of ranges": {mostBlocks, chain("1 to 2 lb/ac")},
	"exercise": {mostExercises, func(n int) string {
		return each(n, func(i int) string {
			return fmt.Sprintf("```exercise e%d\ncalculation: soil-nitrogen\nnitrate: 4 to 24 ppm NO3-N, every 0.5\n"+
				"depth: 12 in\nstory: The report says {nitrate} in {depth}.\nask: nitrogen\nhint: Work by layers.\n```\n\n", i)
		})
	}},
	"reckoner": {mostCells, func(n int) string {
		return "```reckoner\ncalculation: soil-nitrogen\ndown: nitrate = " + strings.Repeat("12, ", n/10-1) +
			"12 ppm NO3-N\nacross: depth = 1, 2, 3, 4, 5, 6, 7, 8, 9, 10 in\nshow: nitrogen\n```\n\n"
	}},
	"drawing": {mostBlocks - 1, func(n int) string {
		return "```worksheet well\ncalculation: water-nitrogen\nnitrate: 5 to 8 ppm NO3-N\nwater: 12 in\n```\n\n" +
			strings.Repeat("```drawing\nof: well\n```\n\n", n)
	}},
	"reference": {mostBlocks, func(n int) string { return strings.Repeat("```reference\ntable: material\n```\n\n", n) }},
	"passage": {mostPassages, func(n int) string {
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

// A calculation is no block that is bound: see Define.
func TestDoublingHasEverything(t *testing.T) {
	for k := range construct.All() {
		if _, has := crowds[k.String()]; !has && k != construct.Calculation {
			t.Errorf("no page has many of %s", k.One())
		}
	}
}

// formulas are the calculations that TestDoublingFormulas makes: each gives the lines that lead to strip.
var formulas = map[string]struct {
	most int
	work func(n int) string
}{
	"terms of a line": {110, func(n int) string { // of at most 1,000 letters
		return "  - strip = width * (" + strings.Repeat("speed + ", n-1) + "speed)\n"
	}},
	"brackets inside each other": {18, func(n int) string { // of at most 20
		return "  - strip = width * " + strings.Repeat("(speed + ", n) + "speed" + strings.Repeat(")", n) + "\n"
	}},
	"lines": {90, func(n int) string { // of at most 100
		return "  - sum_0 = speed * 1\n" + each(n, func(i int) string {
			return fmt.Sprintf("  - sum_%d = sum_%d + speed\n", i+1, i)
		}) + fmt.Sprintf("  - strip = width * sum_%d\n", n)
	}},
}

// TestDoublingFormulas makes calculations of which one thing is twice as much each time, up to its limit.
func TestDoublingFormulas(t *testing.T) {
	for name, f := range formulas {
		t.Run(name, func(t *testing.T) {
			growth := cputime.Doubling(f.most, func(size int) func() {
				text := strings.NewReplacer("ground-speed", "speed", "ground_speed >", "speed >",
					"  - strip = ground_speed * width\n", f.work(size)).Replace(definition)
				work := func() message.List {
					made.Clear() // what is made is kept
					_, messages := define(text)
					return messages
				}
				for _, m := range work() {
					t.Fatalf("the calculation has a message: %s: %s", m.Text, m.Source.Text[m.Span.Start:m.Span.End])
				}
				return func() { work() }
			})
			if t.Log(growth); growth.TooFast() {
				t.Error("twice as much takes too much")
			}
		})
	}
}
