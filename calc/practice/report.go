package practice

import "hash/fnv"

// A Piece is a part of a text of a card: words, or the number of a given.
type Piece struct {
	Text       string
	Use, Given string // of the number; "" for words
}

// A Line is one of the report that a card shows: a given, or what is not asked about, which differs from card to card
// as well.
type Line struct {
	Name   string // what its values follow from, with the seed of the exercise
	Label  string
	Given  Piece    // the zero Piece for a line that is not asked about
	Values []string // all that such a line may say, with its unit
}

// LineDeal is how the values of a line that is not asked about are dealt. Its start and its stride follow from the
// name of the line, so that few lines go up and down together.
func (e *Exercise) LineDeal(l Line) Deal {
	hash := fnv.New32a()
	hash.Write([]byte(e.Seed + " report " + l.Name))
	of := len(l.Values)
	return dealt(int(hash.Sum32()), 1+int(hash.Sum32()>>8)%of, []int{of})
}

// LineText is what a line of the report says on the card.
func (c *Card) LineText(l Line) string {
	if l.Given.Given != "" {
		return c.Given(l.Given.Use, l.Given.Given)
	}
	return l.Values[c.set.LineDeal(l).Picks(c.Number)[0]]
}
