package sheet

import (
	"slices"
	"strings"
)

// A Headline is the answer that a calculation is for, and what it comes to in a sentence, by case.
type Headline struct {
	Answer string    // the name of the answer that is said first
	Cases  []*Remark // of which one holds, whatever single numbers are given
}

// A Case is one way that an answer may come out, and its sentence: the id of the text say.ID, or the text itself in a
// sheet without a file of texts.
type Case struct {
	when Value // nil: no case before it holds
	said string
}

// When is a case for which a question is answered yes.
func When(question Value, said string) Case { return Case{question, said} }

// Otherwise is the case that is left when no other holds.
func Otherwise(said string) Case { return Case{nil, said} }

// InWords names the answer that the calculation is for, and says in a sentence what it comes to: that of the first case
// whose question is answered yes. The last case has no question. {name} stands for a number with its unit in words, and
// {name bare} for the number alone.
func (s *Sheet) InWords(answer string, cases ...Case) {
	if s.Headline != nil {
		s.fault("it has two answers in words, %q and %q", s.Headline.Answer, answer)
	}
	if r := s.FindResult(answer); r == nil || !r.Answer {
		s.fault("%q is said in words and is no answer", answer)
	}
	s.Headline = &Headline{Answer: answer}
	var none Term // whether no case so far holds
	for i, c := range cases {
		if last := i == len(cases)-1; last != (c.when == nil) {
			s.fault("the last case of %q, and no other, has no question", answer)
			return
		}
		holds := none
		if c.when != nil {
			question := c.when.term()
			question.needTruth("a case")
			holds, none = question.after(none), question.Not().after(none)
		}
		text := s.text("say."+c.said, c.said)
		s.Headline.Cases = append(s.Headline.Cases,
			&Remark{Text: text, Words: true, when: holds.n, pieces: Split(text)})
	}
}

// after joins a question to the one whether no case before it holds, if there is a case before it.
func (t Term) after(none Term) Term {
	if none.n == nil {
		return t
	}
	return none.And(t)
}

// spoken lists the remarks and, after them, the cases of the headline.
func (s *Sheet) spoken() []*Remark {
	if s.Headline == nil {
		return s.Remarks
	}
	return append(s.Remarks[:len(s.Remarks):len(s.Remarks)], s.Headline.Cases...)
}

// Words says what the headline answer comes to: one sentence, or for ranges one for each case that was found among
// them. A case that is in doubt is left out, since another says what was found. It is empty for a sheet that has none.
func (o Outcome) Words() []string {
	words := []string{}
	if o.Use.Sheet.Headline == nil {
		return words
	}
	before := len(o.Use.Sheet.Remarks)
	for i, r := range o.Use.Sheet.Headline.Cases {
		if cell := o.Use.remarks[before+i]; cell < 0 || o.holds(cell) && o.high(cell) != Doubt {
			words = append(words, o.spoken(before+i, r))
		}
	}
	return words
}

// CaseCell is the cell that says whether the i-th case of the headline holds (1) or not (0); -1 for the only one.
func (u *Use) CaseCell(i int) int { return u.remarks[len(u.Sheet.Remarks)+i] }

// A part in braces is a name, and perhaps how it is written.
const bare = " bare"

// readBraces splits what is between braces.
func readBraces(text string) Piece {
	name, alone := strings.CutSuffix(text, bare)
	return Piece{Name: name, Bare: alone}
}

// checkBare reports a number without its unit, which may be shown in a second unit, in a sentence where no other number
// names that unit. This one is fine: "put on 14 lb an acre, the soil brings the other 20".
func (s *Sheet) checkBare(r *Remark) {
	pieces := r.Pieces()
	for _, p := range pieces {
		result := s.FindResult(p.Name)
		if !r.Words || !p.Bare || result == nil || result.Also == "" {
			continue
		}
		named := slices.ContainsFunc(pieces, func(other Piece) bool {
			o := s.FindResult(other.Name)
			return !other.Bare && o != nil && o.Also == result.Also && o.Unit.Same(result.Unit)
		})
		if !named {
			s.fault("the sentence %q has {%s bare}, and no other number in its unit and in %s", r.Text, p.Name, result.Also)
		}
	}
}
