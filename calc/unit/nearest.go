package unit

import (
	"slices"
	"strings"
)

// nearest gives the known word that a mistyped one was most likely meant to be, and "" when none is near. A substance
// written out (nitrogen) is near to its symbol.
func nearest(word string) string {
	for i := range substances {
		if strings.EqualFold(substances[i].words, word) {
			return substances[i].symbol
		}
	}
	return Nearest(word, words)
}

// Nearest gives the one of the known words that a mistyped one was most likely meant to be, and "" when none is near.
// The case of all letters together says nothing: uan32 is as near to UAN-32 as UAN32 is.
func Nearest(word string, known []string) string {
	best, distance := "", 2*(1+len(word)/4)+1
	for _, k := range known {
		d := min(apart(word, k), apart(strings.ToLower(word), strings.ToLower(k)))
		if d < distance {
			best, distance = k, d
		}
	}
	return best
}

// words are all known words, in an order that does not change.
var words = sortedWords()

func sortedWords() []string {
	var all []string
	for word := range spellings {
		all = append(all, word)
	}
	for word := range substanceBySymbol {
		all = append(all, word)
	}
	slices.Sort(all)
	return all
}

// apart counts the slips between two words: two for a letter more, less, changed or swapped with its neighbour, one
// for a sign that looks the same (0 for O, l for 1, a capital for a small letter).
func apart(a, b string) int {
	if strings.EqualFold(a, b) {
		return 1
	}
	before, row := make([]int, len(b)+1), make([]int, len(b)+1)
	last := make([]int, len(b)+1)
	for j := range row {
		row[j] = 2 * j
	}
	for i := range len(a) {
		before, row, last = row, last, before
		row[0] = 2 * (i + 1)
		for j := range len(b) {
			row[j+1] = min(before[j]+changed(a[i], b[j]), before[j+1]+2, row[j]+2)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], last[j-1]+2)
			}
		}
	}
	return row[len(b)]
}

// changed is the cost of writing one letter for another.
func changed(a, b byte) int {
	switch {
	case a == b:
		return 0
	case looks(a) == looks(b):
		return 1
	}
	return 2
}

// looks folds signs that look alike into one.
func looks(c byte) byte {
	switch c {
	case 'O', 'o':
		return '0'
	case 'l', 'I', 'L', 'i':
		return '1'
	}
	if 'A' <= c && c <= 'Z' {
		return c + 'a' - 'A'
	}
	return c
}
