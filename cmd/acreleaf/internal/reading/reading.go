// Package reading measures how hard a text is to read: the school grade of an English one, the ease of a Spanish one.
//
// It owns the cutting of a text into sentences, words and syllables, and the formulas. It must not know of pages or of
// Markdown, and it does not decide what is too hard.
package reading

import "strings"

// A Count is what the formulas need of a text.
type Count struct{ Sentences, Words, Syllables int }

// Add counts a paragraph of a text. A paragraph ends its last sentence, with a full stop or without.
func (c *Count) Add(paragraph string, syllables func(word string) int) {
	for _, sentence := range Sentences(paragraph) {
		words := 0
		for word := range Words(paragraph[sentence.Start:sentence.End]) {
			words++
			c.Syllables += syllables(word)
		}
		if words > 0 {
			c.Sentences++
			c.Words += words
		}
	}
}

// A Measure is one way to tell how hard a text in a language is.
type Measure struct {
	Name      string // as the field knows it
	Syllables func(word string) int
	Score     func(Count) float64
	Limit     float64 // what a site asks for that sets none
	Most      float64 // the greatest limit that makes sense; the least is above 0
	Ease      bool    // a greater score is an easier text; otherwise it is a school grade
}

// Languages lists the languages that there is a measure for.
func Languages() []string { return []string{"en", "es"} }

// TooHard says whether a score passes a limit.
func (m *Measure) TooHard(score, limit float64) bool {
	if m.Ease {
		return score < limit
	}
	return score > limit
}

// For gives the measure of a language by its code, or nil when there is none.
func For(language string) *Measure {
	switch strings.ToLower(language) {
	case "en":
		return &english
	case "es":
		return &spanish
	}
	return nil
}

// english is the grade of Kincaid, Fishburne, Rogers and Chissom (1975), Derivation of new readability formulas for
// Navy enlisted personnel, Research Branch Report 8-75. A grade of 9 is asked for, one above the eighth grade that
// plain texts for the public commonly aim at (common practice), since the words of the trade are long.
var english = Measure{
	Name: "Flesch-Kincaid grade", Syllables: EnglishSyllables, Limit: 9, Most: 18,
	Score: func(c Count) float64 {
		return 0.39*per(c.Words, c.Sentences) + 11.8*per(c.Syllables, c.Words) - 15.59
	},
}

// spanish is the perspicuity of Szigriszt-Pazos (1993) on the INFLESZ scale of Barrio-Cantalejo and others (2008,
// Anales del Sistema Sanitario de Navarra 31(2)): below 40 very hard, 40 to 55 rather hard, 55 to 65 normal, 65 to 80
// rather easy, above 80 very easy. The lower end of normal is asked for.
var spanish = Measure{
	Name: "INFLESZ scale", Syllables: SpanishSyllables, Limit: 55, Most: 100, Ease: true,
	Score: func(c Count) float64 {
		return 206.835 - 62.3*per(c.Syllables, c.Words) - per(c.Words, c.Sentences)
	},
}

func per(a, b int) float64 {
	if b == 0 {
		return 0
	}
	return float64(a) / float64(b)
}
