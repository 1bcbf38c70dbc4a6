package worksheet

import "acreleaf/calc/practice"

// CardCount is how many cards an exercise has, and how well they tell slips apart.
type CardCount struct {
	Name            string // of the exercise
	Cards, Distinct int    // that are asked for, and that there are
	practice.Doubt
}

// CountCards looks at every card that an exercise asks for.
func (e *Exercise) CountCards(language string) CardCount {
	c := CardCount{Name: e.Block.Name, Cards: e.Cards, Distinct: e.Practice.Distinct()}
	if set, err := practice.NewSet(e.Practice, language); err == nil {
		c.Doubt, _ = set.Doubt(e.Cards) // a card without an answer was a fault, and such an exercise is not bound
	}
	return c
}
