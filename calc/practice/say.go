package practice

import (
	"acreleaf/calc/words"
)

// Sentences are those of the verdicts. A slip has a sentence of its own.
func Sentences(w *words.Practice) [Unknown + 1]string {
	return [...]string{Right: w.Right, UnitMissing: w.UnitMissing, UnitWrong: w.UnitWrong, Carried: w.Carried,
		Slipped: w.Either, Shifted: w.Shifted, Rounded: w.Rounded, Unknown: w.Unknown}
}

// Sentence is that of a verdict on the card, in a language. For a slipped answer it comes before several slips.
func (c *Card) Sentence(p *Part, v Verdict, language string) string {
	return words.Fill(Sentences(words.OfPractice(language))[v], "answer", c.Key(p))
}

// Say tells a mark in a sentence or more, in a language.
func (c *Card) Say(p *Part, m Mark, language string) []string {
	if m.Verdict != Slipped {
		return []string{c.Sentence(p, m.Verdict, language)}
	}
	var said []string
	if len(m.Slips) > 1 {
		said = append(said, c.Sentence(p, Slipped, language))
	}
	w := words.OfPractice(language)
	text := w.Slip
	if m.Carried {
		text = w.SlipAgain
	}
	for _, slip := range m.Slips {
		said = append(said, words.Fill(text, "slip", slip.Text))
	}
	return said
}
