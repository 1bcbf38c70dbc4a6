package unit

import (
	"slices"
	"strings"
)

// A Listed is a unit or a substance with all that may be written for it, for a page that lists them.
type Listed struct {
	Name  string
	Worth string   // in units listed before it: "12 in"; "" for one that the others are made of, and for a substance
	Words []string // other words for it, in the order of the alphabet
}

// A Group is the units that measure one kind of thing.
type Group struct {
	Measures string
	Units    []Listed
}

// groups name the kinds of symbols in the order of a list.
var groups = []struct {
	measures string
	kinds    []kind
}{
	{"Lengths", []kind{lengthKind}},
	{"Areas", []kind{areaKind}},
	{"Volumes", []kind{volumeKind}},
	{"Masses", []kind{massKind}},
	{"Shares", []kind{ratio}},
	{"Shares by molecules in water, with a substance", []kind{molarKind}},
	{"Times", []kind{timeKind}},
	{"Flow, speed, power, salt", []kind{flowKind}},
	{"Money", []kind{moneyKind}},
	{"Counts", []kind{countKind}},
	{"Accounts of nitrogen", []kind{accountKind}},
}

// Groups lists every unit that Parse knows.
func Groups() []Group {
	var list []Group
	for _, g := range groups {
		group := Group{Measures: g.measures}
		for _, name := range symbolNames() {
			if slices.Contains(g.kinds, spellings[name].symbol.kind) {
				group.Units = append(group.Units, Listed{Name: name, Worth: worthOf(name), Words: wordsFor(name)})
			}
		}
		list = append(list, group)
	}
	return list
}

// symbolNames are the names of the symbols in the order in which they are defined.
func symbolNames() []string {
	var names []string
	for _, s := range roots {
		names = append(names, s.name)
	}
	for _, d := range definitions {
		names = append(names, d.name)
	}
	for _, s := range derived {
		names = append(names, s.name)
	}
	return names
}

// worthOf is what a unit is worth in others. What a count of molecules is worth, its substance tells.
func worthOf(name string) string {
	for _, d := range definitions {
		if d.name == name && d.kind != molarKind {
			return strings.TrimSpace(d.amount + " " + d.of)
		}
	}
	return ""
}

// wordsFor are the other words for a symbol.
func wordsFor(name string) []string {
	var found []string
	for word, s := range spellings {
		if word != name && s.symbol == spellings[name].symbol {
			found = append(found, word)
		}
	}
	for words, symbol := range wordsOfSeveral {
		if words != name && spellings[symbol].symbol == spellings[name].symbol {
			found = append(found, words)
		}
	}
	slices.Sort(found)
	return found
}

// ListedSubstances lists every substance that may be written after a unit, each base once.
func ListedSubstances() []Listed {
	var list []Listed
	for _, s := range substances {
		if substanceOf(s.base).symbol == s.symbol {
			list = append(list, Listed{Name: s.symbol, Words: wordsOfBase(s)})
		}
	}
	return list
}

// wordsOfBase are the other words for a substance. Capitals count in none of them.
func wordsOfBase(s substance) []string {
	words := map[string]bool{}
	for _, other := range substances {
		if other.base == s.base {
			words[other.symbol] = true
		}
	}
	for word, other := range substanceNames {
		if other.base == s.base {
			words[word] = true
		}
	}
	for _, told := range withNitrogenWords(s.symbol) {
		words[told] = true
	}
	var found []string
	for word := range words {
		twice := slices.ContainsFunc(substances, func(o substance) bool {
			return o.symbol != word && strings.EqualFold(o.symbol, word)
		})
		if word != s.symbol && !twice {
			found = append(found, word)
		}
	}
	slices.Sort(found)
	return found
}

// withNitrogenWords are the ways to say a compound by its nitrogen: nitrate as N for NO3-N.
func withNitrogenWords(symbol string) []string {
	for compound, told := range withNitrogen {
		if told == symbol {
			words := substanceOf(compound).words
			return []string{words + " as N", words + " nitrogen"}
		}
	}
	return nil
}
