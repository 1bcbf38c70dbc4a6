package unit

import (
	"math/big"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// What is listed is all that can be read, and each word reads as the unit that it is listed for.
func TestTheListHasEveryWord(t *testing.T) {
	listed := map[string]bool{}
	for _, g := range Groups() {
		if len(g.Units) == 0 {
			t.Errorf("there are no %s", g.Measures)
		}
		for _, u := range g.Units {
			listed[u.Name] = true
			for _, word := range u.Words {
				listed[word] = true
				if got, err := Parse(word); err != nil || !got.Same(MustParse(u.Name)) {
					t.Errorf("%q is listed for %s and reads as %v, %v", word, u.Name, got, err)
				}
			}
			if number, of, _ := strings.Cut(u.Worth, " "); number != "" {
				worth := new(big.Rat).Mul(rational(number), MustParse(of).ratio())
				if worth.Cmp(spellings[u.Name].symbol.scale) != 0 {
					t.Errorf("%s is said to be worth %s", u.Name, u.Worth)
				}
			}
		}
	}
	for word := range spellings {
		if !listed[word] {
			t.Errorf("%q is read and not listed", word)
		}
	}
	for words := range wordsOfSeveral {
		if !listed[words] {
			t.Errorf("%q is read and not listed", words)
		}
	}
}

// What a unit is worth is in others that people know; a count of molecules is worth what its substance tells.
func TestTheListSaysWhatAUnitIsWorth(t *testing.T) {
	worth := map[string]string{}
	for _, g := range Groups() {
		for _, u := range g.Units {
			worth[u.Name] = u.Worth
		}
	}
	for name, want := range map[string]string{
		"ft": "12 in", "mi": "5280 ft", "ac": "43560 ft2", "lb": "0.45359237 kg", "ton": "2000 lb", "mmol/L": "", "N": "",
	} {
		if worth[name] != want {
			t.Errorf("%s is worth %q, want %q", name, worth[name], want)
		}
	}
}

// The lowered digits of Unicode are in order from U+2080 on.
func TestLoweredDigitsOfFormulas(t *testing.T) {
	for i := range 10 {
		if got := plainSigns.Replace(string(rune(0x2080 + i))); got != strconv.Itoa(i) {
			t.Errorf("the lowered %d is read as %s", i, got)
		}
	}
	if got := substanceNamed("NO₃⁻"); got == nil || got.symbol != "NO3" {
		t.Errorf("NO₃⁻ is read as %v", got)
	}
}

// A substance is read in small letters too, but for an element of one letter, which would be a word of its own. That of
// nitrogen is what these pages are about.
func TestSubstancesInSmallLetters(t *testing.T) {
	for _, s := range substances {
		small := strings.ToLower(s.symbol)
		got := substanceNamed(small)
		if alone := len(s.symbol) == 1 && s.symbol != "N"; alone && got != nil {
			t.Errorf("%s is read as %s", small, got.symbol)
		} else if !alone && (got == nil || got.base != s.base) {
			t.Errorf("%s is read as %v, want %s", small, got, s.symbol)
		}
	}
}

func TestTheListHasEverySubstance(t *testing.T) {
	listed := map[string]bool{}
	for _, s := range ListedSubstances() {
		want := MustParse("lb " + s.Name)
		for _, word := range append(s.Words, s.Name) {
			listed[word] = true
			if got, err := Parse("lb " + word); err != nil || !got.Same(want) {
				t.Errorf("%q is listed for %s and reads as %v, %v", word, s.Name, got, err)
			}
		}
	}
	for _, symbol := range Substances() {
		if !listed[symbol] {
			t.Errorf("%s is read and not listed", symbol)
		}
	}
	for word, s := range substanceNames {
		symbol := func(o substance) bool { return strings.EqualFold(o.symbol, word) }
		if !listed[word] && !slices.ContainsFunc(substances, symbol) {
			t.Errorf("%q is read as %s and not listed", word, s.symbol)
		}
	}
}
