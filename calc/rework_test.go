package calc_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// TestACalculatorConfirmsTheWork re-works every printed line of every calculation: at the typical values, with and
// without what is optional, and at random givens as a person may type them, in any unit that is offered, ranges among
// them.
func TestACalculatorConfirmsTheWork(t *testing.T) {
	const sets = 50
	r := rand.New(rand.NewPCG(4, 1))
	lines, bare := 0, 0
	for _, s := range calc.Standard().All() {
		bench := sheet.NewBench(s)
		own := 0
		for done, tries := 0, 0; done < sets+2 && tries < 40*sets; tries++ {
			entries := map[string]sheet.Entry{}
			for _, g := range s.Givens {
				if g.Optional && (done == 0 || done > 1 && r.IntN(2) == 0) {
					continue
				}
				if entry, ok := typedEntry(g, r, done < 2); ok {
					entries[g.Name] = entry
				}
			}
			o, err := bench.Work(entries)
			var refused *sheet.Refused
			if errors.As(err, &refused) && done < 2 {
				done++
			}
			if err != nil {
				continue
			}
			done++
			for _, line := range o.Lines(nil) {
				if !line.Taken {
					continue
				}
				for _, keyed := range keyedLines(line.Words()) {
					own++
					if wrong := keyed.check(); wrong != "" {
						t.Errorf("%s: %s\n%s = %s: %s", s.Name, line.Words(), keyed.formula, keyed.result, wrong)
					}
				}
				if line.Bare {
					bare++
				}
			}
		}
		if own < sets {
			t.Logf("%s: %d lines with a formula in numbers", s.Name, own)
		}
		lines += own
	}
	t.Logf("%d printed lines re-worked; %d more have names and a range alone", lines, bare)
	if lines < 4000 {
		t.Errorf("only %d lines were re-worked", lines)
	}
}

// typedEntry is what a person may type for a given: the typical value, or a number of one to five digits in one of the
// units, or two of them.
func typedEntry(g *sheet.Given, r *rand.Rand, typical bool) (sheet.Entry, bool) {
	if typical {
		entry, err := g.Read(g.Example())
		return entry, err == nil
	}
	if len(g.Choices) > 0 {
		return drawn(g, r), true
	}
	u := g.Unit
	low, high := g.Low, g.High
	switch at := r.IntN(3); {
	case at == 0 && len(g.Units) > 0:
		u = unit.MustParse(g.Units[r.IntN(len(g.Units))])
	case at == 1 && g.Else.Unit != "":
		u, low, high = unit.MustParse(g.Else.Unit), g.Else.Low, g.Else.High
	}
	draw := func() string { return drawText(g, u, low, high, r) }
	text := draw()
	if r.IntN(8) == 0 && !g.Date {
		text += " to " + draw()
	}
	if g.Date {
		entry, err := g.Read(text)
		return entry, err == nil
	}
	entry, err := g.Read(u.Label(text))
	return entry, err == nil
}

func drawText(g *sheet.Given, u unit.Unit, low, high float64, r *rand.Rand) string {
	if g.Date {
		return sheet.ISODate(math.Round(g.Typical) + float64(r.IntN(90)))
	}
	value := low + math.Pow(r.Float64(), 3)*(high-low)
	if r.IntN(2) == 0 && u.Same(g.Unit) {
		value = g.Typical * (0.5 + r.Float64())
	}
	if factor, err := g.Unit.To(u); err == nil {
		value = factor.Apply(value)
	}
	digits := 1 + r.IntN(5)
	if g.Unit.String() == "" && g.High <= 100 && r.IntN(4) > 0 {
		return strconv.Itoa(int(max(1, value)))
	}
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(value, 'e', digits-1, 64), 64)
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}
