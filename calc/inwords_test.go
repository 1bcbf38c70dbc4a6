package calc_test

import (
	"errors"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
)

// Whatever is given, exactly one sentence says what a calculation comes to, and it has no blank and no amount below
// nothing in it. Every given is tried at its ends with every option, and then all of them at random ends and values.
func TestOneSentenceSaysTheAnswer(t *testing.T) {
	for _, s := range calc.Standard().All() {
		if s.Headline == nil {
			t.Errorf("%s does not say in words what it comes to", s.Name)
			continue
		}
		t.Run(s.Name, func(t *testing.T) {
			w := &wordsCheck{t: t, sheet: s, bench: sheet.NewBench(s), said: map[int]int{}, told: map[int]int{}}
			w.walk()
			for i, c := range s.Headline.Cases {
				if w.said[i] == 0 {
					t.Errorf("no numbers were found for which this is said: %q", c.Text)
				}
			}
			for i, r := range s.Remarks {
				if w.told[i] == 0 && r.Signal != sheet.Refusal {
					t.Errorf("no numbers were found that bring this remark: %q", r.Text)
				}
			}
		})
	}
}

// A wordsCheck works a sheet for many givens and reads what it says.
type wordsCheck struct {
	t      *testing.T
	sheet  *sheet.Sheet
	bench  *sheet.Bench
	said   map[int]int // how often, by case
	told   map[int]int // and by remark
	faults int
}

func (w *wordsCheck) walk() {
	r := rand.New(rand.NewPCG(7, 11))
	const draws = 1500
	for range draws {
		entries := map[string]sheet.Entry{}
		for _, g := range w.sheet.Givens {
			if g.Optional && r.IntN(2) == 0 {
				continue
			}
			entries[g.Name] = drawn(g, r)
		}
		w.look(entries)
		for _, g := range w.sheet.Givens {
			entry, there := entries[g.Name]
			if !there || r.IntN(8) > 0 {
				continue
			}
			for _, end := range ends(g) {
				entries[g.Name] = end
				w.look(entries)
			}
			entries[g.Name] = entry
		}
	}
}

// drawn is an option, or a value of a given: an end, the typical one, or any between.
func drawn(g *sheet.Given, r *rand.Rand) sheet.Entry {
	if g.Else.Unit != "" && r.IntN(2) == 0 {
		value := g.Else.Low + r.Float64()*r.Float64()*(g.Else.High-g.Else.Low)*float64(r.IntN(5))/4
		value = max(value, g.Else.Low)
		return sheet.Entry{Value: value, High: value, Other: true}
	}
	value := g.Typical
	switch at := r.IntN(4); {
	case len(g.Choices) > 0:
		value = float64(r.IntN(len(g.Choices)))
	case at == 0:
		return ends(g)[r.IntN(2)]
	case g.Date && at > 0: // within a season of the typical day
		value = g.Typical + float64(r.IntN(400)-200)
	case at == 1:
		value = g.Low + r.Float64()*r.Float64()*(g.High-g.Low)
	case at == 2:
		value = g.Typical * (0.5 + r.Float64())
	}
	value = min(max(value, g.Low), g.High)
	if g.Unit.String() == "" && g.High <= 100 || g.Date {
		value = float64(int(value))
	}
	return sheet.Entry{Value: value, High: value}
}

// ends are the least and the most that is accepted, or the first and the last option.
func ends(g *sheet.Given) []sheet.Entry {
	return []sheet.Entry{{Value: g.Low, High: g.Low}, {Value: g.High, High: g.High}}
}

// Of a range every sentence that may hold is said, and where there are several each says that it is for a part.
func TestSentencesOfRangesSayWhatMayHold(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	several := 0
	for _, s := range calc.Standard().All() {
		if s.Headline == nil {
			continue
		}
		bench := sheet.NewBench(s)
		for range 100 {
			entries := map[string]sheet.Entry{}
			for _, g := range s.Givens {
				if !g.Optional || r.IntN(2) == 0 {
					entries[g.Name] = drawn(g, r)
				}
			}
			g := s.Givens[r.IntN(len(s.Givens))]
			if entry, there := entries[g.Name]; there && len(g.Choices) == 0 && !entry.Other {
				entry.Value, entry.High = g.Low, max(entry.High, entry.Value)
				entries[g.Name] = entry
			}
			o, err := bench.Work(entries)
			if err != nil {
				continue
			}
			words := o.Words()
			if len(words) == 0 {
				t.Errorf("%s of %v says nothing", s.Name, entries)
			}
			for _, said := range words {
				partly := strings.HasPrefix(said, "For some of these numbers: ")
				if hole.MatchString(said) || len(words) > 1 && !partly {
					t.Errorf("%s of %v says %q", s.Name, entries, words)
					break
				}
			}
			if len(words) > 1 {
				several++
			}
		}
	}
	if several < 50 {
		t.Errorf("only %d ranges have several sentences", several)
	}
}

// hole is what no sentence may have: a number that is not there, an amount below nothing, a name that was not filled
// in.
var hole = regexp.MustCompile(`–|NaN|Inf|[{}]|(^|[\s$])[-−]\$?[\d.]|  |no day`)

func (w *wordsCheck) look(entries map[string]sheet.Entry) {
	o, err := w.bench.Work(entries)
	var refused *sheet.Refused
	if errors.As(err, &refused) || w.faults > 5 {
		return
	}
	if err != nil {
		return // an answer beyond what a number can hold
	}
	words := o.Words()
	if len(words) != 1 || hole.MatchString(words[0]) {
		w.faults++
		w.t.Errorf("%v: %q", entries, words)
	}
	for i := range w.sheet.Remarks {
		if cell := o.Use.RemarkCell(i); cell < 0 || o.Cells[cell] != 0 {
			w.told[i]++
		}
	}
	for i := range w.sheet.Headline.Cases {
		if cell := o.Use.CaseCell(i); cell < 0 || o.Cells[cell] != 0 {
			w.said[i]++
		}
	}
}
