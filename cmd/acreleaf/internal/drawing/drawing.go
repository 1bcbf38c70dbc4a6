// Package drawing has what pictures of calculations look like: for each calculation that can be drawn, a rule that
// leads from its numbers to shapes.
//
// A rule is data: plain steps of arithmetic, and shapes that are placed by their results. The press works it for the
// example's numbers, and the script of a page for a reader's, from the same rule. The package must not know of pages,
// words or HTML.
package drawing

import "slices"

// A Place is where a number is in the list that a rule works: first those that are taken from the calculation, then the
// result of each step.
type Place int

// Always is the condition of a shape that has none.
const Always Place = -1

// A Rule is what the picture of a calculation looks like.
type Rule struct {
	Of            string // the calculation
	Width, Height int
	Takes         []string          // its values that are drawn; each takes the places of a Span
	Also          map[string]string // the second unit of those that are givens, by name: answers have their own
	Steps         []Step
	Fixed         []Shape // what is there without numbers, too: the empty frame
	Shapes        []Shape // what follows the numbers
	Labels        []Label
	Groups        []string // the parts of the picture that are of like things, by how the names of their values begin
	Rows          []string // the values of the table, without that beginning
}

// What a rule makes of its numbers may not depend on their units: where a reader chooses metric units, all that it
// takes is in these.

// A Span is the places of a value: its least, its most, and 1 where it is there for all numbers of the ranges. Both
// ends of a value that is left out are no number.
type Span struct{ Low, High, Sure Place }

const inSpan = 3

// A Step is one operation on what is in earlier places.
type Step struct {
	Op    Op
	Takes []Place
	Value float64 // of a Literal
}

// A Shape is an element of the picture. It is drawn while all of its numbers are there and its condition is over 0.
type Shape struct {
	Tag   string // rect, line, circle, polygon or text
	Look  Look
	Moves []Move
	When  Place
	Text  Place  // of a text: the number or the month that it shows; Always for none
	Month bool   // it is the month of a day
	Word  string // of a text: the key of the word after it; empty for none
}

// A Move is an attribute and the places of its numbers.
type Move struct {
	Name string
	At   []Place
}

// A Label is a word of the theme, or a value with its unit, at a place of the picture that never moves.
type Label struct {
	X, Y  int
	Word  string // its key in the words of the picture; empty for none
	Value string // the value after it; empty for none
	End   bool   // it ends there, and does not begin
	Look  Look
	Group int // of a value of a group: which, from 1
}

// Look is how a shape is filled or ruled. Each can be told from the others without colour.
type Look string

// The looks.
const (
	Ink    Look = "ink"    // filled with ink
	Spot   Look = "spot"   // filled with the spot colour, and edged
	Dots   Look = "dots"   // dotted
	Level  Look = "level"  // ruled across
	Slant  Look = "slant"  // ruled one way
	Back   Look = "back"   // ruled the other way
	Cross  Look = "cross"  // ruled both ways
	Band   Look = "band"   // finely ruled: from the least to the most
	Ring   Look = "ring"   // the same for the edge of a circle, between the two
	Edge   Look = "edge"   // an outline
	Maybe  Look = "maybe"  // a broken outline
	Ruled  Look = "rule"   // a line of the ledger
	Limit  Look = "limit"  // a line that nothing should go over
	Strong Look = "strong" // a heavy line, or a heavy text
	Small  Look = "small"  // a small text
	Middle Look = "middle" // the same, around its place
	Named  Look = "small strong"
	Ends   Look = "ends" // the same, up to its place
)

// Of gives the rule for a calculation; nil for one that is not drawn.
func Of(calculation string) *Rule {
	if i := slices.Index(Calculations(), calculation); i >= 0 {
		return rules[i]
	}
	return nil
}

// Calculations lists those that can be drawn.
func Calculations() []string {
	names := make([]string, len(rules))
	for i, r := range rules {
		names[i] = r.Of
	}
	return names
}

var rules = []*Rule{budget(), calendar(), roots(), water(), forms()}
