package calc_test

import (
	"errors"
	"fmt"
	"testing"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
)

// Every option of every choice of the catalogue, chosen with what belonged to another one set aside: there are answers,
// or a sentence says what to change and one change brings them. No answer is worked with a figure of the other option.
func TestEveryOptionHasAWayOn(t *testing.T) {
	options := 0
	for _, s := range calc.Standard().All() {
		for _, choice := range s.Givens {
			for option := range choice.Choices {
				for _, from := range starts(s) {
					options++
					from[choice.Name] = single(float64(option))
					setAside(s, from, choice)
					walkOn(t, s, from, fmt.Sprintf("%s with %s", s.Name, choice.Choices[option].Name))
				}
			}
		}
	}
	if options < 300 {
		t.Errorf("only %d options were walked", options)
	}
}

func single(value float64) sheet.Entry { return sheet.Entry{Value: value, High: value} }

// starts are the typical numbers of a sheet, with all that may be left out and without any of it.
func starts(s *sheet.Sheet) []map[string]sheet.Entry {
	all, least := map[string]sheet.Entry{}, map[string]sheet.Entry{}
	for _, g := range s.Givens {
		all[g.Name] = single(g.Typical)
		if !g.Optional {
			least[g.Name] = single(g.Typical)
		}
	}
	return []map[string]sheet.Entry{all, least}
}

// setAside leaves out what belongs to a choice. What must be filled in is typed anew.
func setAside(s *sheet.Sheet, entries map[string]sheet.Entry, choice *sheet.Given) {
	for _, g := range s.Givens {
		for _, owner := range g.For {
			if owner == choice && g.Optional {
				delete(entries, g.Name)
			}
		}
	}
}

// walkOn wants answers, or a refusal that one change of one given ends.
func walkOn(t *testing.T, s *sheet.Sheet, entries map[string]sheet.Entry, where string) {
	t.Helper()
	_, err := sheet.NewBench(s).Work(entries)
	var refused *sheet.Refused
	if err == nil {
		return
	}
	if !errors.As(err, &refused) {
		t.Errorf("%s: %v", where, err)
		return
	}
	for _, g := range s.Givens {
		before, there := entries[g.Name]
		for _, change := range changes(g) {
			entries[g.Name] = change
			if _, err := sheet.NewBench(s).Work(entries); err == nil {
				return
			}
		}
		delete(entries, g.Name)
		if g.Optional {
			if _, err := sheet.NewBench(s).Work(entries); err == nil {
				return
			}
		}
		if there {
			entries[g.Name] = before
		}
	}
	t.Errorf("%s: no one change ends this: %v", where, err)
}

// changes are what else may be given: another option, the typical value, the ends, and a little of it.
func changes(g *sheet.Given) []sheet.Entry {
	if len(g.Choices) > 0 {
		var all []sheet.Entry
		for i := range g.Choices {
			all = append(all, single(float64(i)))
		}
		return all
	}
	return []sheet.Entry{single(g.Typical), single(g.Low), single(g.High), single(g.Low + (g.High-g.Low)/100)}
}
