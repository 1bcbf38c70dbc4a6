package practice

import (
	"hash/fnv"

	"acreleaf/calc/sheet"
)

// An Exercise is a question whose numbers vary.
type Exercise struct {
	Seed string // what its cards follow from
	Uses []*Use // the calculations, each after those that it takes a number from
	Asks []Ask  // what is asked, in order

	Choices []*Choice // what is asked after that
	Report  []Line    // that the card shows; nil for none
}

// A Use is one calculation of an exercise.
type Use struct {
	Name   string
	Sheet  *sheet.Sheet
	Fixed  map[string]sheet.Entry // the givens that are the same on every card
	Links  map[string]sheet.Link  // the givens that take a number from another use
	Varied []Varied               // those that differ from card to card
}

// Varied is a given with all that it may be.
type Varied struct {
	Given  string
	Values []sheet.Entry
}

// An Ask is one thing that is asked: a step or an answer of a use.
type Ask struct {
	Use, Result string
	Digits      int // the significant digits that are asked for, from 1 to 6
}

// MostCards is how many different cards an exercise may have at most.
const MostCards = 1_000_000_000

// Distinct is how many different cards the exercise has. It is never more than MostCards.
func (e *Exercise) Distinct() int { return combinations(e.counts()) }

func combinations(counts []int) int {
	n := 1
	for _, count := range counts {
		if n > MostCards/count {
			return MostCards
		}
		n *= count
	}
	return n
}

// counts are how many values each varied given has, in the order in which cards are dealt.
func (e *Exercise) counts() []int {
	var list []int
	for _, u := range e.Uses {
		for _, v := range u.Varied {
			list = append(list, len(v.Values))
		}
	}
	return list
}

// A Deal says which values a card has: the cards are numbered from 1 on, and card n takes the place
// (Offset + Stride × n) modulo Of in the list of all combinations. Stride and Of have no common divisor, so no card
// comes twice before all have come; Stride is near to 0.618 of Of, so cards that follow each other are far apart.
type Deal struct {
	Offset, Stride, Of int
	Counts             []int // of the values of each varied given, the one that changes first in the list first
}

// Deal is how the cards of the exercise are dealt.
func (e *Exercise) Deal() Deal {
	hash := fnv.New32a()
	hash.Write([]byte(e.Seed))
	const golden = 0.6180339887498949
	return dealt(int(hash.Sum32()), max(1, int(golden*float64(e.Distinct()))), e.counts())
}

// dealt is the deal with the least stride, from one on, that has no divisor in common with the number of combinations.
func dealt(offset, stride int, counts []int) Deal {
	d := Deal{Stride: stride, Of: combinations(counts), Counts: counts}
	d.Offset = offset % d.Of
	for divisor(d.Stride, d.Of) != 1 {
		d.Stride++
	}
	return d
}

// Picks is the place of the value that each varied given has on a card.
func (d Deal) Picks(card int) []int {
	place := (d.Offset + d.Stride*card) % d.Of
	picks := make([]int, len(d.Counts))
	for i, count := range d.Counts {
		picks[i] = place % count
		place /= count
	}
	return picks
}

// divisor is the greatest common divisor, by Euclid's way.
func divisor(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
