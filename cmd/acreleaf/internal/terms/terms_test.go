package terms_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/terms"
)

func items(texts ...string) []terms.Item {
	var list []terms.Item
	for i, text := range texts {
		word, under, _ := strings.Cut(text, ", ")
		list = append(list, terms.Item{Text: word, Under: under, Place: i})
	}
	return list
}

// written is an index on a line: "A: acid 0 | N: nitrate 1 (in a well 2)".
func written(letters []terms.Letter) string {
	var all []string
	for _, l := range letters {
		for _, e := range l.Entries {
			all = append(all, strings.TrimSpace(l.Head+": "+one(e)))
		}
	}
	return strings.Join(all, " | ")
}

func one(e *terms.Entry) string {
	s := e.Text
	for _, place := range e.Places {
		s += fmt.Sprint(" ", place)
	}
	for _, under := range e.Under {
		s += " (" + one(under) + ")"
	}
	for _, see := range e.See {
		s += " > " + see.Text
	}
	return s
}

// inOrder compares the index of some words in a language with the one that is wanted.
func inOrder(t *testing.T, language string, words []terms.Item, want string) {
	t.Helper()
	if got := written(terms.Make(language, slices.Values(words), nil)); got != want {
		t.Errorf("%s:\n got %s\nwant %s", language, got, want)
	}
}

// The order is that of the Unicode Collation Algorithm with the tailoring of each language in the CLDR: in Spanish ñ is
// a letter of its own after n (Real Academia Española, Ortografía, 2010), in Swedish å, ä and ö come after z, in
// English all are their plain letters.
func TestOrderOfEachLanguage(t *testing.T) {
	words := items("nube", "ñame", "nitrato", "ácido", "acre", "zinc", "Agua", "nuez", "oz", "año", "anual")
	for language, want := range map[string]string{
		"es": "A: ácido 3 | A: acre 4 | A: Agua 6 | A: anual 10 | A: año 9 | N: nitrato 2 | N: nube 0 | N: nuez 7 | " +
			"Ñ: ñame 1 | O: oz 8 | Z: zinc 5",
		"en": "A: ácido 3 | A: acre 4 | A: Agua 6 | A: año 9 | A: anual 10 | N: ñame 1 | N: nitrato 2 | N: nube 0 | " +
			"N: nuez 7 | O: oz 8 | Z: zinc 5",
	} {
		inOrder(t, language, words, want)
	}
	if got, want := written(terms.Make("sv", slices.Values(items("öl", "zink", "åker", "ask")), nil)),
		"A: ask 3 | Z: zink 1 | Å: åker 2 | Ö: öl 0"; got != want {
		t.Errorf("sv:\n got %s\nwant %s", got, want)
	}
}

func TestSameWordIsOneEntry(t *testing.T) {
	words := items("Nitrate", "nitrate", "NITRATE, in a well", "nitrate,  In a well", "nitrates")
	got := written(terms.Make("en", slices.Values(words), nil))
	if want := "N: Nitrate 0 1 (in a well 2 3) | N: nitrates 4"; got != want {
		t.Errorf("\n got %s\nwant %s", got, want)
	}
	// An accent makes another word: "papa" is a potato.
	got = written(terms.Make("es", slices.Values(items("papá", "papa")), nil))
	if want := "P: papa 1 | P: papá 0"; got != want {
		t.Errorf("\n got %s\nwant %s", got, want)
	}
	// The same word written with a letter and a mark.
	got = written(terms.Make("es", slices.Values(items("pa\u0301lido", "p\u00e1lido")), nil))
	if want := "P: pa\u0301lido 0 1"; got != want {
		t.Errorf("\n got %s\nwant %s", got, want)
	}
}

func TestSignsAndDigits(t *testing.T) {
	got := written(terms.Make("en", slices.Values(items("zinc", "\"<5\"", "46-0-0", "<4", "«urea»")), nil))
	if want := `: <4 3 | : 46-0-0 2 | : "<5" 1 | U: «urea» 4 | Z: zinc 0`; got != want {
		t.Errorf("\n got %s\nwant %s", got, want)
	}
	if terms.Make("en", slices.Values([]terms.Item{}), nil) != nil {
		t.Error("an index of nothing has letters")
	}
	terms.Make("", slices.Values(items("", "?", ", x")), []terms.See{{Word: "", To: []string{"", "?"}}}) // nothing fails
}

// A word leads to one that leads on; one that leads nowhere, to itself, or twice to the same, does not.
func TestSee(t *testing.T) {
	got := written(terms.Make("en", slices.Values(items("leaf burn", "nitrate")), []terms.See{
		{Word: "burn", To: []string{"Leaf  burn"}},
		{Word: "burnt", To: []string{"burn", "burn", "nothing", "burnt"}},
		{Word: "nitrate", To: []string{"leaf burn"}},
	}))
	if want := "B: burn > leaf burn | B: burnt > burn | L: leaf burn 0 | N: nitrate 1 > leaf burn"; got != want {
		t.Errorf("\n got %s\nwant %s", got, want)
	}
}

func TestMostPlaces(t *testing.T) {
	var many []terms.Item
	for i := range terms.MostPlaces + 3 {
		many = append(many, terms.Item{Text: "urea", Place: i},
			terms.Item{Text: "urea", Place: min(i, terms.MostPlaces-1)})
	}
	e := terms.Make("en", slices.Values(many), nil)[0].Entries[0]
	if len(e.Places) != terms.MostPlaces || e.More != 3 {
		t.Errorf("%d places and %d more, want %d and 3", len(e.Places), e.More, terms.MostPlaces)
	}
}

func TestKnown(t *testing.T) {
	known := terms.Known(slices.Values(items("Urea", "acid, in a well", "UREA")))
	for _, word := range []string{"urea", "acid"} {
		if !known[terms.Key(word)] {
			t.Errorf("%q is not known", word)
		}
	}
	if known["in a well"] || len(known) != 2 {
		t.Errorf("known: %v", known)
	}
}

// The order does not depend on that in which the words come.
func TestOrderIsOne(t *testing.T) {
	words := items("b", "a", "á", "c, 2", "c, 1")
	want := written(terms.Make("es", slices.Values(words), nil))
	slices.Reverse(words)
	if got := written(terms.Make("es", slices.Values(words), nil)); got != want {
		t.Errorf("\n got %s\nwant %s", got, want)
	}
}

// Printed indexes pass over an article at the beginning (common practice); what is an article, each language says.
func TestArticlesArePassedOver(t *testing.T) {
	words := items("El suelo", "agua", "the season", "Una onza", "a", "la", "las hojas", "an acre", "lo que falta",
		"«El pozo»", "ladera", "A mano")
	for language, want := range map[string]string{
		"es-US": "A: a 4 | A: A mano 11 | A: agua 1 | A: an acre 7 | H: las hojas 6 | L: la 5 | L: ladera 10 | " +
			"L: lo que falta 8 | O: Una onza 3 | P: «El pozo» 9 | S: El suelo 0 | T: the season 2",
		"en": "A: a 4 | A: an acre 7 | A: agua 1 | E: «El pozo» 9 | E: El suelo 0 | L: la 5 | L: ladera 10 | " +
			"L: las hojas 6 | L: lo que falta 8 | M: A mano 11 | S: the season 2 | U: Una onza 3",
	} {
		inOrder(t, language, words, want)
	}
}
