package practice

import (
	"fmt"
	"slices"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// A Set is an exercise that is ready to be dealt: alone in a graph of its own.
type Set struct {
	*Placed
	graph *sheet.Graph
}

// NewSet makes an exercise ready. The error says what is wrong with its links, or is that of the units.
func NewSet(e *Exercise, language string) (*Set, error) {
	g := &sheet.Graph{Language: language, Slips: true}
	placed, err := e.Place(g, "")
	if err != nil {
		return nil, err
	}
	for _, u := range placed.uses {
		u.at.Unsaid = false // whether there is an answer is asked here
	}
	if err := g.Close(); err != nil {
		return nil, err
	}
	return &Set{Placed: placed, graph: g}, nil
}

// A Card is one set of numbers of an exercise, worked.
type Card struct {
	Number int // from 1 on

	set   *Set
	cells []float64
}

// Card deals a card. The error says why a calculation has no answer for its numbers.
func (s *Set) Card(number int) (*Card, error) {
	c := &Card{Number: number, set: s, cells: make([]float64, s.graph.Program.Cells)}
	s.Enter(c.cells, number)
	s.graph.Program.Run(c.cells)
	for _, u := range s.uses {
		if err := (sheet.Outcome{Use: u.at, Cells: c.cells}).Err(); err != nil {
			return nil, fmt.Errorf("card %d, %s: %w", number, u.Name, err)
		}
	}
	for _, p := range s.Parts {
		if p.Choice == nil && !c.outcome(p).There(p.Result) {
			return nil, fmt.Errorf("card %d: %s has no answer %s for its numbers", number, p.Use, p.Result)
		}
	}
	return c, nil
}

// Enter fills in the givens of a card.
func (e *Placed) Enter(cells []float64, card int) {
	for _, u := range e.uses {
		for name := range u.Fixed {
			u.enter(cells, name, u.Fixed[name])
		}
	}
	picks := e.deal.Picks(card)
	for _, u := range e.uses {
		for _, v := range u.Varied {
			u.enter(cells, v.Given, v.Values[picks[0]])
			picks = picks[1:]
		}
	}
}

func (u *placedUse) enter(cells []float64, given string, entry sheet.Entry) {
	for _, at := range u.all() {
		at.Set(cells, given, entry.Value)
		at.SetKind(cells, given, entry)
	}
}

// Outcome is a calculation of the card, worked, by its place among the uses.
func (c *Card) Outcome(use int) sheet.Outcome {
	return sheet.Outcome{Use: c.set.uses[use].at, Cells: c.cells}
}

func (c *Card) outcome(p *Part) sheet.Outcome { return sheet.Outcome{Use: p.use.at, Cells: c.cells} }

// Parts are what is asked of the card.
func (c *Card) Parts() []*Part { return c.set.Parts }

// CardText is a given as a card tells it: what is chosen by its label, a number with its unit.
func CardText(given *sheet.Given, e sheet.Entry) string {
	if len(given.Choices) > 0 {
		return given.Choices[int(e.Value)].Label
	}
	return given.Text(e)
}

// Given is what the card tells of a given; "" for one that is left out or taken from another use.
func (c *Card) Given(use, given string) string {
	u := c.set.find(use)
	if entry, ok := u.Fixed[given]; ok {
		return CardText(u.Sheet.FindGiven(given), entry)
	}
	i, picks := 0, c.set.deal.Picks(c.Number)
	for _, other := range c.set.uses {
		for _, v := range other.Varied {
			if other == u && v.Given == given {
				return CardText(u.Sheet.FindGiven(given), v.Values[picks[i]])
			}
			i++
		}
	}
	return ""
}

// Answer is the right answer to a part, with all of its digits.
func (c *Card) Answer(p *Part) unit.Quantity {
	if p.Choice != nil {
		return unit.Quantity{Value: c.cells[p.RightCell()]}
	}
	return c.outcome(p).Value(p.Result)
}

// Key is the right answer as it is asked for: to its digits, with its unit; or the right option, or the items in order.
func (c *Card) Key(p *Part) string {
	a := c.Answer(p)
	if p.Choice != nil {
		return p.Choice.Key(a.Value, c.Texts(p.Choice))
	}
	return a.Unit.Label(unit.Digits(a.Value, p.Digits, 0))
}

// SlipKey is what a slip gives, to the digits that are asked for.
type SlipKey struct {
	Slip *sheet.Slip
	Text string // the number, without a unit
}

// slips are those of a part that somebody can make on the card.
func (c *Card) slips(p *Part) []*sheet.Slip {
	if p.Choice != nil {
		return nil
	}
	return slices.DeleteFunc(c.outcome(p).Slips(), func(slip *sheet.Slip) bool { return slip.Answer != p.Result })
}

// SlipKeys is what each slip of a part gives on the card, but for those that come to the right answer.
func (c *Card) SlipKeys(p *Part) []SlipKey {
	var list []SlipKey
	for _, slip := range c.slips(p) {
		if value := c.outcome(p).Slip(slip); !within(value, c.Answer(p).Value, p.Digits) {
			list = append(list, SlipKey{slip, unit.Digits(value, p.Digits, 0)})
		}
	}
	return list
}

// Swallowed are the slips that differ from the right answer on the card, and would be marked as right.
func (c *Card) Swallowed(p *Part) []*sheet.Slip {
	right := c.Answer(p).Value
	return slices.DeleteFunc(c.slips(p), func(slip *sheet.Slip) bool {
		value := c.outcome(p).Slip(slip)
		return unit.Digits(value, exactDigits, 0) == unit.Digits(right, exactDigits, 0) || !within(value, right, p.Digits)
	})
}

// exactDigits tell whether two numbers are the same but for the last bits of the machine.
const exactDigits = 12
