package prose

import (
	"maps"
	"slices"
	"strings"
)

// ready makes the tables that let a reader pass over most words with one look.
func (l *Language) ready() *Language {
	l.perWords = map[string]string{}
	for _, w := range l.per {
		l.perWords[w] = w
	}
	for _, words := range []map[string]float64{l.numbers, l.scales, l.fractions} {
		withPlain(words)
	}
	for _, words := range []map[string]string{l.units, l.below, l.substance, l.longer, l.measures, l.fillers, l.perWords} {
		withPlain(words)
		withStarts(words)
	}
	withStarts(l.scales)
	l.readyStarts()
	l.readyFollows()
	l.readyCounted()
	return l
}

// readyStarts marks the words that an amount may begin with.
func (l *Language) readyStarts() {
	for _, words := range []map[string]float64{l.numbers, l.fractions} {
		for w := range words {
			l.starts[mark(w)] = true
		}
	}
	if l.bareHalf {
		for w := range firsts(l.units) {
			l.starts[mark(w)] = true // "libra y media"
		}
	}
}

// readyFollows gathers the words that go on with a number or a unit.
func (l *Language) readyFollows() {
	l.goesOn = map[string]bool{}
	for _, words := range []map[string]string{l.units, l.below, l.substance} {
		maps.Copy(l.goesOn, firsts(words))
	}
	l.follows = maps.Clone(l.goesOn)
	for _, words := range []map[string]float64{l.numbers, l.fractions, l.scales} {
		maps.Copy(l.follows, firsts(words))
	}
	maps.Copy(l.follows, firsts(l.fillers))
	for _, w := range slices.Concat(l.to, l.of, l.articles, []string{l.and, l.per[0]}) {
		l.follows[w] = true
	}
	for w := range l.follows {
		l.nexts[mark(w)] = true
	}
}

// readyCounted gathers the words that an article may make an amount of.
func (l *Language) readyCounted() {
	l.counted = firsts(l.units)
	maps.Copy(l.counted, firsts(l.fractions))
	maps.Copy(l.counted, firsts(l.scales))
	for _, w := range []string{"tree", "acre", "unit"} {
		delete(l.counted, w) // what an amount is for: "48 lb an acre"
	}
}

// firsts gives the first words of a table's entries.
func firsts[V any](table map[string]V) map[string]bool {
	words := make(map[string]bool, len(table))
	for entry := range table {
		first, _, _ := strings.Cut(entry, " ")
		words[first] = true
	}
	return words
}

// mark is a number that few words share, whatever the case of their letters.
func mark(w string) int {
	if len(w) < 2 {
		return 0
	}
	return (int(w[0]|0x20)*131 + int(w[1]|0x20)*31 + int(w[len(w)-1]|0x20)*517 + len(w)*1021) & 4095
}

var plain = strings.NewReplacer("á", "a", "é", "e", "í", "i", "ó", "o", "ú", "u")

// withPlain adds the words of a table without their accents, as they are often typed.
func withPlain[V any](table map[string]V) {
	for w, value := range maps.Clone(table) {
		table[plain.Replace(w)] = value
	}
}
