package prose

import (
	"iter"
	"maps"
	"strconv"
	"strings"
)

// A wordTable gives what words stand for. The starts of entries of several words are in it with nothing for a value, so
// that match knows where to go on.
type wordTable[V comparable] map[string]V

// A wordSet is the words of a list.
type wordSet map[string]bool

// A filter passes over most words with one look. Of a word that it does not have, none of its words has the letters.
type filter [4096]bool

func (f *filter) has(w string) bool { return f[mark(w)] }

func (f *filter) add(words wordSet) {
	for w := range words {
		f[mark(w)] = true
	}
}

// mark is a number that few words share, whatever the case of their letters.
func mark(w string) int {
	if len(w) < 2 {
		return 0
	}
	return (int(w[0]|0x20)*131 + int(w[1]|0x20)*31 + int(w[len(w)-1]|0x20)*517 + len(w)*1021) & 4095
}

// newLanguage makes the tables of a lexicon.
func newLanguage(x lexicon) *Language {
	fold := folder(x.plain)
	l := &Language{lexicon: x,
		numbers: table(x.numbers, number64, fold), scales: table(x.scales, number64, fold),
		fractions: table(x.fractions, number64, fold),
		units:     table(commonUnits+"|"+x.units, symbolOf, fold),
		bases:     table(commonBases+"|"+x.bases, symbolOf, fold),
		measures:  table(commonMeasures+"|"+x.measures, symbolOf, fold),
		longer:    table(x.longer, symbolOf, fold), one: table(x.one, symbolOf, fold),
		substances: table(commonSubstances+"|"+x.substances, func(name string) string { return name }, fold),
		fillers:    table(rowOf(x.fillers), func(string) bool { return true }, fold),
		per:        perWords(x, fold), onlyBefore: map[string]wordSet{}, nouns: map[*symbol]string{},
		halves: set(x.halves), articles: set(x.articles), ones: set(x.ones), counting: set(x.counting), to: set(x.to),
		adjectives: set(x.adjectives), of: set(x.of), as: set(x.as), pointing: set(x.pointing), hedges: set(x.hedges),
		rows: set(x.rows), joining: set(x.joining), forEach: set(x.forEach), often: set(x.often),
		lasting: set(x.lasting), named: set(x.named), things: set(x.things), doses: set(x.doses), away: set(x.away),
		offers: set(x.offers), people: set(x.people), thePeople: set(x.thePeople),
	}
	for w, followers := range rows(x.onlyBefore) {
		l.onlyBefore[w] = set(followers)
	}
	for name, noun := range rows(x.one) {
		l.nouns[symbolOf(name)] = noun
	}
	l.indexMonths()
	l.indexStarts()
	l.indexFollows()
	return l
}

// rows gives the rows of a table: what its words stand for, and the words.
func rows(text string) iter.Seq2[string, string] {
	return func(yield func(name, words string) bool) {
		for row := range strings.SplitSeq(text, "|") {
			if name, words, _ := strings.Cut(row, " "); name != "" && !yield(name, words) {
				return
			}
		}
	}
}

// table reads the rows of a table: what its words stand for, and the words, also as they are typed without accents.
func table[V comparable](text string, read func(string) V, fold *strings.Replacer) wordTable[V] {
	index := wordTable[V]{}
	for name, words := range rows(text) {
		for w := range set(words) {
			index[w], index[fold.Replace(w)] = read(name), read(name)
		}
	}
	for w := range maps.Clone(index) {
		for at := strings.LastIndexByte(w, ' '); at > 0; at = strings.LastIndexByte(w[:at], ' ') {
			if _, known := index[w[:at]]; !known {
				var nothing V
				index[w[:at]] = nothing
			}
		}
	}
	return index
}

// set reads the words of a list. An underline is a space.
func set(words string) wordSet {
	index := wordSet{}
	for w := range strings.FieldsSeq(words) {
		index[strings.ReplaceAll(w, "_", " ")] = true
	}
	return index
}

// rowOf makes a list the only row of a table.
func rowOf(words string) string { return "- " + words }

func number64(text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(err)
	}
	return v
}

// folder replaces letters by those that are often typed for them.
func folder(pairs string) *strings.Replacer {
	var all []string
	for pair := range strings.FieldsSeq(pairs) {
		letters := strings.SplitN(pair, "", 2)
		all = append(all, letters...)
	}
	return strings.NewReplacer(all...)
}

// perWords are the words before what a rate is for.
func perWords(x lexicon, fold *strings.Replacer) wordTable[perClass] {
	index := wordTable[perClass]{}
	for _, list := range []struct {
		words string
		class perClass
	}{
		{x.per, perAny | perBare}, {x.each, perOne}, {x.perEach, perEach | perAgain}, {x.perPlace, perAgain},
		{x.perBare, perBare},
	} {
		for w, c := range table(rowOf(list.words), func(string) perClass { return list.class }, fold) {
			index[w] |= c
		}
	}
	return index
}

// indexMonths gathers the names of the months, and what they are cut short to.
func (l *Language) indexMonths() {
	l.months = map[string]int{}
	for i, m := range strings.Fields(l.lexicon.months) {
		letters := []rune(m)
		for _, name := range []string{m, string(letters[:3]), string(letters[:min(4, len(letters))])} {
			if l.months[name] == 0 {
				l.months[name] = i + 1
			}
			l.dated[mark(name)] = true
		}
	}
}

// indexStarts gathers the words that an amount may begin with.
func (l *Language) indexStarts() {
	l.starts.add(firsts(l.numbers))
	l.starts.add(firsts(l.fractions))
	if l.lexicon.bareHalf {
		l.starts.add(firsts(l.units)) // "libra y media"
	}
}

// indexFollows gathers the words that go on with a number or a unit.
func (l *Language) indexFollows() {
	l.goesOn = wordSet{}
	for _, words := range []wordSet{firsts(l.units), firsts(l.bases), firsts(l.substances)} {
		maps.Copy(l.goesOn, words)
	}
	l.follows = maps.Clone(l.goesOn)
	for _, words := range []wordSet{firsts(l.numbers), firsts(l.fractions), firsts(l.scales), firsts(l.fillers),
		l.to, l.of, l.articles, set(l.lexicon.and), set(l.lexicon.per)} {
		maps.Copy(l.follows, words)
	}
	l.nexts.add(l.follows)
	bare := maps.Clone(l.per)
	maps.DeleteFunc(bare, func(_ string, class perClass) bool { return class&perBare == 0 })
	for _, words := range []wordSet{firsts(l.units), firsts(l.fillers), firsts(bare)} {
		l.heads.add(words)
	}
	l.counted = wordSet{}
	for _, words := range []wordSet{firsts(l.units), firsts(l.fractions), firsts(l.scales)} {
		maps.Copy(l.counted, words)
	}
	for w := range set(l.lexicon.uncounted) {
		delete(l.counted, w)
	}
}

// firsts gives the first words of a table's entries.
func firsts[V comparable](table wordTable[V]) wordSet {
	words := make(wordSet, len(table))
	for entry := range table {
		first, _, _ := strings.Cut(entry, " ")
		words[first] = true
	}
	return words
}
