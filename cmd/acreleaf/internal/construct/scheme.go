package construct

import (
	"iter"
	"strings"
)

// Scheme is what a figure is tied to: the part of its link before the colon. The zero Scheme is no figure.
type Scheme uint8

// The schemes of figures.
const (
	NoFigure Scheme = iota
	Worked          // a number that a worksheet works out
	Sourced         // one that a publication gives
	Recorded        // one of the author's own records and prices
	Sized           // a plain size
	Schemes         // how many there are, for tables by scheme
)

// SchemeRow is what is true of a scheme.
type SchemeRow struct {
	Word    string // before the colon
	Target  bool   // something follows the colon
	Example string // what an author is told to write
}

var schemeRows = [Schemes]SchemeRow{
	NoFigure: {},
	Worked: {Word: "worked", Target: true,
		Example: "write the number and what works it out: [48 lb/ac](worked:soil.nitrogen)"},
	Sourced: {Word: "source", Target: true,
		Example: `write the number and where it is from: [68 lb](source:handbook "what it is of")`},
	Recorded: {Word: "record", Target: true,
		Example: `write the number, its day and what it is: [23.4 lb](record:2026-09-14 "the scale ticket of block 3")`},
	Sized: {Word: "size",
		Example: "write the size and nothing after the colon: [12 in](size:)"},
}

// Row gives what is true of a scheme.
func (s Scheme) Row() SchemeRow { return schemeRows[s] }

func (s Scheme) String() string { return schemeRows[s].Word }

// AllSchemes gives every scheme of figures, in order.
func AllSchemes() iter.Seq[Scheme] {
	return func(yield func(Scheme) bool) {
		for s := NoFigure + 1; s < Schemes && yield(s); s++ {
		}
	}
}

// SchemeOf gives the scheme that a word before a colon is, in capitals or small letters; false for another link.
func SchemeOf(word string) (Scheme, bool) {
	for s := range AllSchemes() {
		if strings.EqualFold(schemeRows[s].Word, word) {
			return s, true
		}
	}
	return NoFigure, false
}

// SchemeWords lists the words of the schemes, in order.
func SchemeWords() []string {
	var words []string
	for s := range AllSchemes() {
		words = append(words, schemeRows[s].Word)
	}
	return words
}
