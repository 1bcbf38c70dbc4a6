package practice

import (
	"slices"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// Doubt says how well the cards of an exercise tell slips apart.
type Doubt struct {
	Cards  int    // of those that were looked at, on which a slip gives the right answer or what another slip gives
	Unsure []Pair // in the order in which they are found
}

// A Pair is a slip and what it cannot be told from on some cards.
type Pair struct {
	Slip  *sheet.Slip
	Other *sheet.Slip // nil for the right answer
	Cards int         // on which it is so
}

// Doubt looks at the cards from the first on, to the digits that are asked for. The error is that of a card without an
// answer.
func (s *Set) Doubt(cards int) (Doubt, error) {
	var d Doubt
	for number := 1; number <= cards; number++ {
		c, err := s.Card(number)
		if err != nil {
			return d, err
		}
		unsure := false
		for _, p := range s.Parts {
			unsure = c.doubt(p, &d) || unsure
		}
		if unsure {
			d.Cards++
		}
	}
	return d, nil
}

// doubt adds what one part of a card leaves in doubt, and says whether there is any.
func (c *Card) doubt(p *Part, d *Doubt) (any bool) {
	slips := c.slips(p)
	text := func(slip *sheet.Slip) string { return unit.Digits(c.outcome(p).Slip(slip), p.Digits, 0) }
	for i, slip := range slips {
		if within(c.outcome(p).Slip(slip), c.Answer(p).Value, p.Digits) {
			d.add(slip, nil)
			any = true
			continue
		}
		for _, other := range slips[:i] {
			if text(slip) == text(other) {
				d.add(other, slip)
				any = true
			}
		}
	}
	return any
}

func (d *Doubt) add(slip, other *sheet.Slip) {
	i := slices.IndexFunc(d.Unsure, func(pair Pair) bool { return pair.Slip == slip && pair.Other == other })
	if i < 0 {
		i = len(d.Unsure)
		d.Unsure = append(d.Unsure, Pair{Slip: slip, Other: other})
	}
	d.Unsure[i].Cards++
}
