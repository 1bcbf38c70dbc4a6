package unit

import (
	"slices"
	"strings"
	"unicode"
)

// nearest gives the known word that a mistyped one was most likely meant to be, and "" when none is near.
func nearest(word string) string {
	for _, near := range Near(word) {
		return near
	}
	return ""
}

// Near lists the known units and substances that a mistyped word may be meant to be, the nearest first. A form of
// nitrogen is offered only where nothing but a sign that looks the same differs: NO3 and NO3-N are near to each other
// in letters, and 4.43 times apart.
func Near(word string) []string {
	most := reach(word)
	var near []string
	for _, known := range words {
		if slipsBetween(word, known) < most && (!isForm(known) || looksLike(word, known)) {
			near = append(near, known)
		}
	}
	slices.SortStableFunc(near, func(a, b string) int { return slipsBetween(word, a) - slipsBetween(word, b) })
	return near
}

// isForm says whether a word is a substance that is told both by itself and by the nitrogen in it.
func isForm(word string) bool {
	s := substanceBySymbol[word]
	return s != nil && (withNitrogen[s.base] != "" || plainNitrogen[s.base])
}

// looksLike says whether two words differ in nothing but signs that look alike.
func looksLike(a, b string) bool {
	return len(a) == len(b) && strings.Map(func(r rune) rune { return rune(looks(byte(r))) }, a) ==
		strings.Map(func(r rune) rune { return rune(looks(byte(r))) }, b)
}

// reach is below how many slips a known word counts as near to a mistyped one.
func reach(word string) int { return 2*(1+len(word)/4) + 1 }

// slipsBetween counts the slips between two words. Capitals say nothing: uan32 is as near to UAN-32 as UAN32 is.
func slipsBetween(word, known string) int {
	return apart(strings.ToLower(word), strings.ToLower(known))
}

// Nearest gives the one of the known names that a mistyped one was most likely meant to be, and "" when none is near.
// Numbers in a name are no slips of the pen: 32-0-0 is another material than 34-0-0.
func Nearest(word string, known []string) string {
	best, distance := "", reach(word)
	for _, k := range known {
		d := slipsBetween(word, k)
		if d < distance && (d <= max(2, len(word)/2) || startAlike(word, k)) && figuresOf(word) == figuresOf(k) {
			best, distance = k, d
		}
	}
	return best
}

// startAlike says whether two words start with the same letter. Few people mistype the first: hazelnut is no walnut.
func startAlike(a, b string) bool {
	return a != "" && b != "" && unicode.ToLower(rune(a[0])) == unicode.ToLower(rune(b[0]))
}

// figuresOf gives the numbers of a name: "21 0 0 24" of 21-0-0-24S. A letter O or l by itself is a digit that was
// mistyped.
func figuresOf(name string) string {
	var numbers []string
	for _, part := range strings.FieldsFunc(name, func(r rune) bool { return !unicode.IsLetter(r) && !isDigit(r) }) {
		if part == "O" || part == "o" || part == "l" || part == "I" {
			part = string(rune(looks(part[0])))
		}
		numbers = append(numbers, strings.FieldsFunc(part, func(r rune) bool { return !isDigit(r) })...)
	}
	return strings.Join(numbers, " ")
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
