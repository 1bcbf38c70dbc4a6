// Package construct lists what an author can write beyond Markdown: fenced blocks and links of ours, a row each.
//
// It owns what tells them apart: the word, whether a block has a name, which of its lines are texts for readers. It
// must not know how one is read, bound or printed: the packages that do so have a table by Kind, or by Scheme, and a
// test that names what the table lacks. So a construct that is added here fails in each place that has nothing for it.
package construct

import (
	"iter"
	"path"
	"slices"
	"strings"
)

// Kind is what sort of fenced block a block is. The zero Kind is a listing.
type Kind uint8

// The kinds of blocks, in the order of their words.
const (
	Listing Kind = iota
	Calculation
	Drawing
	Exercise
	Passage
	Reckoner
	Reference
	Worksheet
	Kinds // how many there are, for tables by kind
)

// Naming says whether the word after the fence has a name after it.
type Naming uint8

// The ways to name a block.
const (
	Nameless Naming = iota
	MayBeNamed
	Named
)

// Row is what is true of a kind of block.
type Row struct {
	Word    string // after the fence
	Naming  Naming
	Numbers bool     // figures and links of the page take numbers from it by its name
	Tables  []string // its keys that have a table: in the list of its lines each line there has the key before its own
	Filled  []string // those of its texts whose numbers are the block's own, in braces
	Texts   []string // its keys whose values are for readers, with * for any name: they are translated and proofread
	Manual  string   // the page of the manual that explains it
}

var rows = [Kinds]Row{
	Listing:     {},
	Calculation: {Word: "calculation", Naming: Named, Manual: "own-calculations"},
	Drawing:     {Word: "drawing", Texts: []string{"title"}, Manual: "drawings"},
	Exercise: {Word: "exercise", Naming: Named, Tables: []string{"report", "options", "items"},
		Texts: []string{"title", "story", "hint", "report.*", "choose", "options.*.say", "options.*.because", "order",
			"items.*"},
		Filled: []string{"story", "report.*"}, Manual: "exercises"},
	Passage:   {Word: "passage", Manual: "passages"},
	Reckoner:  {Word: "reckoner", Naming: MayBeNamed, Texts: []string{"title"}, Manual: "reckoners"},
	Reference: {Word: "reference", Texts: []string{"title"}, Manual: "references"},
	Worksheet: {Word: "worksheet", Naming: Named, Numbers: true, Texts: []string{"title"}, Manual: "worksheets"},
}

// Row gives what is true of a kind.
func (k Kind) Row() Row { return rows[k] }

// Anchor is the fragment by which a link leads to a block that numbers are taken from, and its id in the page.
func Anchor(name string) string { return Worksheet.String() + "-" + name }

func (k Kind) String() string { return rows[k].Word }

// One is a block of the kind in a message: "a worksheet", "an exercise".
func (k Kind) One() string {
	if strings.ContainsAny(rows[k].Word[:1], "aeiou") {
		return "an " + rows[k].Word
	}
	return "a " + rows[k].Word
}

// HasText says whether the value of a key is a text for readers.
func (k Kind) HasText(key string) bool { return matches(rows[k].Texts, key) }

// IsFilled says whether the numbers in the value of a key are the block's own.
func (k Kind) IsFilled(key string) bool { return matches(rows[k].Filled, key) }

func matches(patterns []string, key string) bool {
	return slices.ContainsFunc(patterns, func(pattern string) bool {
		is, _ := path.Match(pattern, key) // the patterns are those above
		return is
	})
}

// HasTable says whether a key, or the one before its first point, has a table.
func (k Kind) HasTable(key string) bool {
	first, _, _ := strings.Cut(key, ".")
	return slices.Contains(rows[k].Tables, first)
}

// All gives every kind of block of ours, in order.
func All() iter.Seq[Kind] {
	return func(yield func(Kind) bool) {
		for k := Listing + 1; k < Kinds && yield(k); k++ {
		}
	}
}

// Of gives the kind of block that a word after a fence begins; false for a listing.
func Of(word string) (Kind, bool) {
	for k := range All() {
		if rows[k].Word == word {
			return k, true
		}
	}
	return Listing, false
}

// Words lists the words after a fence, in order.
func Words() []string {
	var words []string
	for k := range All() {
		words = append(words, rows[k].Word)
	}
	return words
}
