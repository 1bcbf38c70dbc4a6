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

// numbered writes a text n times, with the number of each in it, or that before it.
func numbered(n int, text string) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, text, i, i-1)
	}
	return b.String()
}

// chain is worksheets that each take what the last one gives, and more: a number or a range.
func chain(more string) func(n int) string {
	return func(n int) string {
		return "```worksheet w0\ncalculation: load\nbefore: 1 lb/ac\nmore: " + more + "\n```\n\n" +
			strings.ReplaceAll(strings.ReplaceAll(numbered(n, "```worksheet w%d\ncalculation: load\nbefore: from w%d.sum\nmore: "+
				more+"\n```\n\n"), "```worksheet w0\ncalculation: load\nbefore: from w-1.sum\nmore: "+more+"\n```\n\n", ""), "w-1", "w0")
	}
}

// bound are the pages that TestDoubling binds, by what there is twice as much of, up to its limit. Those that begin with
// a construct are of it; TestDoublingHasEverything wants one for each.
var bound = map[string]struct {
	most int
	page func(n int) string
}{
	"worksheet": {mostBlocks, func(n int) string { return numbered(n, "```worksheet w%d\n%.0[2]d"+soil) }},
	"worksheet, ranges": {mostBlocks, func(n int) string {
		return numbered(n, "```worksheet w%d\n%.0[2]dcalculation: soil-nitrogen\nnitrate: 10 to 14 ppm NO3-N\ndepth: 6 to 12 in\n```\n\n")
	}},
	"worksheet, chain":           {mostBlocks, chain("2 lb/ac")},
	"worksheet, chain of ranges": {mostBlocks, chain("1 to 2 lb/ac")},
	"reckoner, cells": {mostCells, func(n int) string {
		return "```reckoner\ncalculation: soil-nitrogen\ndown: nitrate = " + strings.TrimSuffix(strings.Repeat("12, ", n/10), ", ") +
			" ppm NO3-N\nacross: depth = 1, 2, 3, 4, 5, 6, 7, 8, 9, 10 in\nshow: nitrogen\n```\n\n"
	}},
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
	for name, c := range bound {
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
