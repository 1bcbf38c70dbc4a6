package render

import (
	"bytes"
	"strings"

	"acreleaf/cmd/acreleaf/internal/wire"
)

// answers writes the results, underlined twice: first the one that the calculation is for, with what it comes to in
// words and the signals directly below it, or answers that are compared, in a table; then the rest. Also the sentence
// that takes their place while the sheet has none, and the one live line of the worksheet: a screen reader hears the
// answer once, after the typing stops.
func (r *Renderer) answers(w *bytes.Buffer, s *Worksheet) {
	w.WriteString(`<div class="answer">`)
	element(w, "h3", "", r.words.Worksheet.Answer)
	w.WriteByte('\n')
	first := min(1, len(s.Answers))
	if s.Compared != nil {
		first = 0
	}
	rows(w, s.Answers[:first])
	waiting(w, s.Index)
	r.inWords(w, s.Words)
	r.notes(w, "signals", signalsOf(s.Notes))
	compared(w, s.Compared)
	rows(w, s.Answers[first:])
	w.WriteString("<p class=\"unseen\" role=\"status\"></p></div>\n")
}

// rows writes results, each with its label.
func rows(w *bytes.Buffer, answers []Answer) {
	if len(answers) == 0 {
		return
	}
	w.WriteString("<dl>\n")
	for i := range answers {
		a := &answers[i]
		w.WriteString("<div")
		when(w, a.There, !a.Out)
		if a.Fact != "" {
			attribute(w, wire.Fact, a.Fact)
		}
		w.WriteString("><dt")
		language(w, a.Lang)
		w.WriteByte('>')
		text(w, a.Label)
		w.WriteString("</dt><dd>")
		result(w, a)
		w.WriteString("</dd></div>\n")
	}
	w.WriteString("</dl>\n")
}

// inWords writes what the headline answer comes to: the sentence of each case, of which one shows.
func (r *Renderer) inWords(w *bytes.Buffer, cases []Note) {
	if len(cases) == 0 {
		return
	}
	w.WriteString("<div class=\"words\">\n")
	for i := range cases {
		c := &cases[i]
		w.WriteString("<p")
		when(w, c.When, c.Shown)
		language(w, c.Lang)
		w.WriteByte('>')
		r.partly(w, c.Partly, c.Perhaps)
		pieces(w, c.Pieces)
		w.WriteString("</p>\n")
	}
	w.WriteString("</div>\n")
}

// result writes a total, and then the same in a second unit.
func result(w *bytes.Buffer, a *Answer) {
	s := &a.Shown
	total(w, s)
	if s.Also != nil {
		also := *s.Also
		also.Also = s
		w.WriteString(` <span class="also">`)
		quantity(w, &also)
		w.WriteString("</span>")
	}
}

// total writes the number and its unit, which stand over the two lines of a total.
func total(w *bytes.Buffer, s *Shown) {
	second := s
	if s.Also != nil {
		second = s.Also
	}
	w.WriteString(`<span class="total">`)
	totalUnit(w, s.Before, second.Before)
	number(w, "b", "", s)
	totalUnit(w, s.After, second.After)
	w.WriteString("</span>")
}

// totalUnit writes what is on one side of the number of a total, in a box of its own that a line does not break.
// The space before it stays outside.
func totalUnit(w *bytes.Buffer, s, other string) {
	bare, spaced := strings.CutPrefix(s, " ")
	if otherBare, both := strings.CutPrefix(other, " "); spaced && both {
		w.WriteByte(' ')
		s, other = bare, otherBare
	}
	unitPart(w, "span", "unit", s, other)
}
