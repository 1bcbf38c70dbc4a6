package reading

import (
	_ "embed"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
)

// english words with their syllables, counted from the vowels of the CMU Pronouncing Dictionary (Carnegie Mellon
// University, 0.7b, its first pronunciation): the words of the demo guides that it has.
//
//go:embed testdata/english.txt
var englishWords string

// Spelling does not tell every syllable of English, so the count is an estimate: right for most words, and over a text
// the faults even out.
func TestEnglishSyllables(t *testing.T) {
	words, right, counted, heard := 0, 0, 0, 0
	var wrong []string
	for line := range strings.Lines(englishWords) {
		var word string
		var syllables int
		if _, err := fmt.Sscan(line, &word, &syllables); err != nil {
			t.Fatal(line, err)
		}
		words++
		n := EnglishSyllables(word)
		counted, heard = counted+n, heard+syllables
		if n == syllables {
			right++
		} else {
			wrong = append(wrong, fmt.Sprintf("%s %d, not %d", word, n, syllables))
		}
	}
	if words < 900 || right*100 < words*95 {
		t.Errorf("%d of %d words: %s", right, words, strings.Join(wrong, "; "))
	}
	if math.Abs(float64(counted-heard)) > 0.01*float64(heard) {
		t.Errorf("%d syllables, not %d", counted, heard)
	}
}

// The syllables of these words are parted by the rules of the Ortografía de la lengua española (2010), by hand.
func TestSpanishSyllables(t *testing.T) {
	for _, parted := range strings.Fields(`a-gua sue-lo ni-tró-ge-no ni-tra-to rie-go go-te-o a-ma-rrar
		huer-to no-gal al-men-dro
		pie-dra lim-piáis re-ír pa-ís o-í-do ca-er le-er a-ho-ra a-é-re-o ciu-dad rui-do muy ley rey re-yes que que-so gue-rra
		guí-a pin-güi-no ver-güen-za hie-lo hue-so bú-ho al-co-hol qui-tar a-quí li-bras por a-cre on-zas ár-bol a-ño
		po-zo me-di-ción pre-cau-ción a-mo-nia-co a-mo-ní-a-co á-ci-do ca-da sa-ú-co rí-o frí-o te-ní-ais u-ru-guay
		cons-tru-ye y la fer-ti-li-zan-te fe-rre-te-rí-a dí-a`) {
		word := strings.ReplaceAll(parted, "-", "")
		if n := SpanishSyllables(word); n != strings.Count(parted, "-")+1 {
			t.Errorf("%s has %d syllables, not %s", word, n, parted)
		}
	}
}

func TestSentences(t *testing.T) {
	for text, want := range map[string][]string{
		"One. Two! Three?":                     {"One.", "Two!", "Three?"},
		"The well has 2.5 ppm. Ask.":           {"The well has 2.5 ppm.", "Ask."},
		"Ask Dr. Vale of St. Elm. Then wait":   {"Ask Dr. Vale of St. Elm.", "Then wait"},
		"It said “stop.” Then it went":         {"It said “stop.”", "Then it went"},
		"¿Cuánto? Mida a las 3 p. m. y anote.": {"¿Cuánto?", "Mida a las 3 p. m. y anote."},
		"Two things: a pump and a meter.":      {"Two things: a pump and a meter."},
		"Remember: Never mix them.":            {"Remember:", "Never mix them."},
		"a\nline goes on.\nNext":               {"a\nline goes on.", "Next"},
		"  ":                                   nil,
	} {
		var got []string
		for _, s := range Sentences(text) {
			got = append(got, text[s.Start:s.End])
		}
		if !slices.Equal(got, want) {
			t.Errorf("%q: %q", text, got)
		}
	}
}

func TestWords(t *testing.T) {
	got := slices.Collect(Words("The UAN-32, a well-kept tree's 12 ppm (of NO3-N) – and “so” on"))
	want := []string{"The", "a", "well-kept", "tree's", "ppm", "of", "and", "so", "on"}
	if !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}

// The scores of these texts are worked by hand from the counts beside them.
func TestScore(t *testing.T) {
	for _, c := range []struct {
		language, text string
		count          Count
		score          float64
	}{
		{"en", "The cat sat on the mat.", Count{1, 6, 6}, 0.39*6 + 11.8 - 15.59},
		{"en", "Water the trees. Measure the nitrogen in the water.", Count{2, 9, 14}, 0.39*4.5 + 11.8*14/9 - 15.59},
		{"es", "El agua del pozo tiene nitrato. Mida.", Count{2, 7, 13}, 206.835 - 62.3*13/7 - 3.5},
	} {
		m := For(c.language)
		var count Count
		count.Add(c.text, m.Syllables)
		if count != c.count || math.Abs(m.Score(count)-c.score) > 1e-9 {
			t.Errorf("%s: %+v, %g and not %g", c.text, count, m.Score(count), c.score)
		}
	}
	if For("fr") != nil {
		t.Error("no measure is known for French")
	}
}

// Longer sentences and longer words make a text harder, in both languages.
func TestHarder(t *testing.T) {
	for _, language := range []string{"en", "es"} {
		m := For(language)
		easy, long, heavy := m.Score(Count{10, 100, 150}), m.Score(Count{5, 100, 150}), m.Score(Count{10, 100, 200})
		if !m.TooHard(long, easy) || !m.TooHard(heavy, easy) || m.TooHard(easy, easy) {
			t.Errorf("%s: %g, %g, %g", language, easy, long, heavy)
		}
	}
}
