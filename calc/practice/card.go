package practice

import (
	"fmt"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// A Set is an exercise that is ready to be dealt: alone in a graph of its own.
type Set struct {
	*Exercise
	Graph *sheet.Graph
	deal  Deal
}

// NewSet makes an exercise ready. The error says what is wrong with its links, or is that of the units.
func NewSet(e *Exercise, language string) (*Set, error) {
	g := &sheet.Graph{Language: language, Slips: true}
	if err := e.Place(g, ""); err != nil {
		return nil, err
	}
	if err := g.Close(); err != nil {
		return nil, err
	}
	return &Set{Exercise: e, Graph: g, deal: e.Deal()}, nil
}

// A Card is one set of numbers of an exercise, worked.
type Card struct {
	Number int // from 1 on

	set   *Set
	cells []float64
}

// Card deals a card. The error says why a calculation has no answer for its numbers.
func (s *Set) Card(number int) (*Card, error) {
	c := &Card{Number: number, set: s, cells: make([]float64, s.Graph.Program.Cells)}
	s.Enter(c.cells, s.deal.Picks(number))
	s.Graph.Program.Run(c.cells)
	for _, u := range s.Uses {
		if err := c.Outcome(u).Err(); err != nil {
			return nil, fmt.Errorf("card %d, %s: %w", number, u.Name, err)
		}
	}
	for _, p := range s.Parts {
		if !c.Outcome(p.use).There(p.Result) {
			return nil, fmt.Errorf("card %d: %s has no answer %s for its numbers", number, p.Use, p.Result)
		}
	}
	return c, nil
}

// Enter fills in the givens of the exercise: those that are the same on every card, and the picks.
func (e *Exercise) Enter(cells []float64, picks []int) {
	for _, u := range e.Uses {
		for given, entry := range u.Fixed {
			u.enter(cells, given, entry)
		}
		for _, v := range u.Varied {
			u.enter(cells, v.Given, v.Values[picks[0]])
			picks = picks[1:]
		}
	}
}

func (u *Use) enter(cells []float64, given string, entry sheet.Entry) {
	for _, at := range []*sheet.Use{u.at, u.twin} {
		if at != nil {
			at.Set(cells, given, entry.Value)
			at.SetKind(cells, given, entry)
		}
	}
}

// Outcome is a calculation of the card, worked.
func (c *Card) Outcome(u *Use) sheet.Outcome { return sheet.Outcome{Use: u.at, Cells: c.cells} }

// Given is what a card says of a given of a use that is not linked; false for one that is left out.
func (c *Card) Given(u *Use, given string) (sheet.Entry, bool) {
	if entry, ok := u.Fixed[given]; ok {
		return entry, true
	}
	i := 0
	for _, other := range c.set.Uses {
		for _, v := range other.Varied {
			if other == u && v.Given == given {
				return v.Values[c.set.deal.Picks(c.Number)[i]], true
			}
			i++
		}
	}
	return sheet.Entry{}, false
}

// Answer is the right answer to a part, with all of its digits.
func (c *Card) Answer(p *Part) unit.Quantity { return c.Outcome(p.use).Value(p.Result) }

// Key is the right answer as it is asked for: to its digits, with its unit.
func (c *Card) Key(p *Part) string {
	a := c.Answer(p)
	return a.Unit.Label(unit.Digits(a.Value, p.Digits, 0))
}

// SlipKey is what a slip gives, to the digits that are asked for.
type SlipKey struct {
	Slip *sheet.Slip
	Text string // the number, without a unit
}

// SlipKeys is what each slip of a part gives on the card, but for those that come to the right answer.
func (c *Card) SlipKeys(p *Part) []SlipKey {
	var list []SlipKey
	for _, s := range p.slips {
		text := unit.Digits(c.Outcome(p.use).Slip(s.slip), p.Digits, 0)
		if text != unit.Digits(c.Answer(p).Value, p.Digits, 0) {
			list = append(list, SlipKey{s.slip, text})
		}
	}
	return list
}
