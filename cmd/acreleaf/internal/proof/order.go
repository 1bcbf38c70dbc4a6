package proof

import (
	"regexp"

	"acreleaf/calc/prose"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
)

// puttingOn finds a sentence that tells the reader to put something on. "We put on" tells what was done.
var puttingOn = regexp.MustCompile(`(?i)^\W*(?:(?:then|now|so|next|luego|ahora|entonces)\s+)?` +
	`(?:put|apply|spread|feed|give|inject|aplique|ponga|eche|abone|inyecte|esparza|dé)(?:[^\p{L}]|$)`)

// toPutOn are the words of an answer that is there to be put on.
var toPutOn = topic{stem("apply"): true, stem("feed"): true, stem("feeds"): true, stem("put"): true}

// ordered advises on a number of the author's own records that a sentence tells the reader to put on, where the page
// has another number for the answer to that: a record tells what was, and the answer what to do.
func (c *figureCheck) ordered(p *markdown.Prose, f markdown.ProseFigure, a prose.Amount) bool {
	if f.Scheme != construct.Recorded || !p.Running ||
		!puttingOn.MatchString(sentenceAt(p.Text, f.At, f.At+len(markdown.Stand))) {
		return false
	}
	var answer *candidate
	all := c.candidates()
	for i := range all {
		n := &all[i]
		low, high, ok := inUnitOf(a, n.value)
		switch {
		case !ok || !n.main || n.own.shared(toPutOn) == 0:
		case a.AgreesClosely(low, high):
			return false
		case answer == nil:
			answer = n
		}
	}
	if answer != nil {
		c.differs(f.TextSpan, f.Text, answer, answer.text, "")
	}
	return answer != nil
}
