package unit

import (
	"strings"
	"unicode/utf8"
)

// lookUp finds a symbol with the power written at its end. A spelling in other capitals counts where none is as it is
// written: PPM and Lb, but not Mg. Of single letters it never does.
func lookUp(word string) (spelling, int, bool) {
	if found, power, ok := lookUpAsWritten(word); ok || utf8.RuneCountInString(word) < 2 {
		return found, power, ok
	}
	return lookUpAsWritten(strings.ToLower(word))
}

// wordsOfSeveral are the units that are written in several words, with the symbol of each.
var wordsOfSeveral = map[string]string{
	"taken up": takenUpWord, "fl oz": "floz", "fluid ounce": "floz", "fluid ounces": "floz", "short ton": "ton",
	"short tons": "tons", "metric ton": "t", "metric tons": "t", "parts per million": "ppm", "parts per billion": "ppb",
}

// severalWords reads a unit of two or three words, and gives how many words it has; 0 when it is none.
func (p *parser) severalWords() (spelling, int) {
	text := p.peek(0).text
	for size := 2; size <= 3 && p.peek(size-1).kind == wordToken; size++ {
		text += " " + p.peek(size-1).text
		if symbol, ok := wordsOfSeveral[strings.ToLower(text)]; ok {
			return spellings[symbol], size
		}
	}
	return spelling{}, 0
}

// powerWords are the words before a length that make an area or a volume of it.
var powerWords = map[string]int{"square": 2, "sq": 2, "cubic": 3, "cu": 3}

// raisedLength reads "cubic yards" or "sq ft". False when that is not what is there.
func (p *parser) raisedLength() (spelling, int, bool) {
	power := powerWords[strings.ToLower(p.peek(0).text)]
	found, own, ok := lookUp(p.peek(1).text)
	if power == 0 || !ok || own != 1 || found.symbol.kind != lengthKind {
		return spelling{}, 0, false
	}
	return found, power, true
}

// divisionWords are the words that divide, as in 3 tons an acre.
var divisionWords = map[string]bool{"per": true, "a": true, "an": true, "each": true, "every": true}

// substanceNames are other words for a substance, without regard to capitals, for the spellings of laboratories.
var substanceNames = indexSubstanceNames()

func indexSubstanceNames() map[string]*substance {
	names := map[string]*substance{}
	for i, s := range substances {
		if len(s.symbol) > 1 || s.symbol == "N" {
			names[strings.ToLower(s.symbol)] = &substances[i]
		}
		if first := substanceOf(s.base); !strings.Contains(s.words, " ") {
			names[s.words] = first
		}
	}
	for _, name := range []string{"tn", "total-n", "n-total"} {
		names[name] = substanceBySymbol["total N"]
	}
	for element, words := range map[string]string{
		"NO3": "nitrate", "NO2": "nitrite", "NH4": "ammonium", "NH3": "ammonia",
	} {
		symbol := strings.ToLower(element)
		for _, name := range []string{symbol + "n", symbol + "-n", "n-" + symbol, words + "-n", "n-" + words} {
			names[name] = substanceBySymbol[element+"-N"]
		}
	}
	return names
}

// plainSigns takes the raised and lowered signs out of a formula: NO₃-N, NO3⁻.
var plainSigns = strings.NewReplacer("₀", "0", "₁", "1", "₂", "2", "₃", "3", "₄", "4", "₅", "5", "₆", "6", "₇", "7",
	"₈", "8", "₉", "9", "⁻", "", "⁺", "", "_", "-", "‑", "-", "–", "-")

// substanceNamed finds a substance by any of its spellings; nil when a word is none.
func substanceNamed(word string) *substance {
	if s := substanceBySymbol[word]; s != nil {
		return s
	}
	word = plainSigns.Replace(word)
	if s := substanceBySymbol[word]; s != nil {
		return s
	}
	return substanceNames[strings.ToLower(strings.TrimRight(word, "-"))]
}

// totalAt says whether "total N" or "nitrogen total" stands some tokens ahead. Laboratories write the nitrogen of all
// forms together so, where N alone would do.
func (p *parser) totalAt(ahead int) bool {
	first, second := p.peek(ahead).text, p.peek(ahead+1).text
	if strings.EqualFold(second, "total") {
		first, second = second, first
	}
	s := substanceNamed(second)
	return strings.EqualFold(first, "total") && s != nil && s.base == nitrogen && s.symbol == "N"
}

// withNitrogen are the forms that a compound is told in by its nitrogen: nitrate as N is NO3-N.
var withNitrogen = map[base]string{
	nitrate: "NO3-N", nitrite: "NO2-N", ammonium: "NH4-N", ammonia: "NH3-N", urea: "urea-N",
}

// substanceAt reads the substance that stands some tokens ahead, and gives how many tokens it has: "NO3-N", "nitrate
// nitrogen", "nitrate as N".
func (p *parser) substanceAt(ahead int) (*substance, int) {
	t := p.peek(ahead)
	if t.kind != wordToken {
		return nil, 0
	}
	if p.totalAt(ahead) {
		return substanceBySymbol["total N"], 2
	}
	s := substanceNamed(t.text)
	if s == nil {
		return nil, 0
	}
	size, next := 1, p.peek(ahead+1)
	if next.kind == wordToken && strings.EqualFold(next.text, "as") {
		size, next = 2, p.peek(ahead+2)
	}
	told := (*substance)(nil)
	if next.kind == wordToken {
		told = substanceNamed(next.text)
	}
	switch symbol := withNitrogen[s.base]; {
	case told == nil:
		return s, 1
	case symbol != "" && told.base == nitrogen:
		return substanceBySymbol[symbol], size + 1
	case size == 2 && told.base == s.base:
		return s, size + 1
	}
	return s, 1
}
