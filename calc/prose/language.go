package prose

import (
	"iter"
	"strings"

	"acreleaf/calc/unit"
)

// A Language reads sentences with the words of one lexicon. It holds the lexicon's words as the grammar looks them up.
type Language struct {
	lexicon lexicon

	numbers, scales, fractions wordTable[float64]
	units, bases               wordTable[*symbol]
	measures, longer, one      wordTable[*symbol]
	substances                 wordTable[string]
	fillers                    wordTable[bool]
	per                        wordTable[perClass]
	onlyBefore                 map[string]wordSet
	nouns                      map[*symbol]string // those of one
	months                     map[string]int     // by name, and by its first letters

	halves, articles, ones, counting, to, adjectives, of, as, pointing, hedges, rows, joining, forEach, often,
	lasting, named, things, doses, away, offers, people, thePeople wordSet

	starts  filter  // words that an amount may begin with
	nexts   filter  // words of follows
	heads   filter  // words that what a number is of may begin with: a unit, or a rate that leaves it out
	follows wordSet // words that may be after the first word or the digits of an amount
	goesOn  wordSet // words that a unit may go on with
	counted wordSet // words that an article may make an amount of
	dated   filter  // words of months
}

// A perClass is what the words before the base of a rate say of it.
type perClass uint8

const (
	perAny   perClass = 1 << iota // any unit may follow
	perEach                       // of each one: a number may follow
	perAgain                      // of a place, which the rate may have been for already: 2 gal/tree on each tree
	perBare                       // a rate that leaves its unit out may begin so
	perOne                        // one word, before one thing: each, a
)

// languages are the languages whose words are known. A figure is read in the language of its text first, and then in
// these in their order.
var languages = []*Language{newLanguage(english), newLanguage(spanish)}

// symbolsOnly knows symbols and digits, in a text of any other language.
var symbolsOnly = newLanguage(lexicon{per: english.per, plural: english.plural})

// For gives the language of a code. For a language whose words are not known here it knows symbols and digits.
func For(code string) *Language {
	for _, l := range languages {
		if l.lexicon.code == code {
			return l
		}
	}
	return symbolsOnly
}

// HasWords says whether the language knows more than symbols and digits.
func (l *Language) HasWords() bool { return l.lexicon.code != "" }

// first gives the language itself and then the others.
func (l *Language) first() iter.Seq[*Language] {
	return func(yield func(*Language) bool) {
		if !yield(l) {
			return
		}
		for _, other := range languages {
			if other != l && !yield(other) {
				return
			}
		}
	}
}

// PointDecimals writes the decimal commas of a text as points where the language has them: 12,5 is 12.5. Each character
// keeps its place.
func (l *Language) PointDecimals(text string) string {
	if !l.lexicon.comma {
		return text
	}
	return unit.PointDecimals(text)
}

// MisplacesComma says whether a text has a decimal comma, and its language none.
func (l *Language) MisplacesComma(text string) bool {
	return !l.lexicon.comma && unit.HasDecimalComma(text)
}

// IsUnitOrNumber says whether a word is a number, a unit or a form of a nutrient, so that it does not tell what an
// amount is of. The name of a material does.
func (l *Language) IsUnitOrNumber(word string) bool {
	if l.units[word] != nil || l.bases[word] != nil || l.per[word] != 0 {
		return true
	}
	if s := l.substances[word]; s != "" && !materialSubstances[s] {
		return true
	}
	return l.numbers[word] > 0 || l.fractions[word] > 0
}

// singular is a word in small letters, without the ending of the plural.
func (l *Language) singular(t token) string { return strings.TrimSuffix(t.lower(), l.lexicon.plural) }
