package render

import (
	"bytes"
	"cmp"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/wire"
)

// The signal words, the gravest first.
var signalRank = []string{"DANGER", "WARNING", "CAUTION", "NOTICE"}

// signalsOf gives the notes that have a signal word, the gravest first.
func signalsOf(notes []Note) []Note {
	signals := slices.DeleteFunc(slices.Clone(notes), func(n Note) bool { return n.Signal == "" })
	slices.SortStableFunc(signals, func(a, b Note) int {
		return cmp.Compare(slices.Index(signalRank, a.Signal), slices.Index(signalRank, b.Signal))
	})
	return signals
}

// remarks writes the sentences below the answer: all that have no signal word.
func (r *Renderer) remarks(w *bytes.Buffer, s *Worksheet) {
	r.notes(w, "remarks", slices.DeleteFunc(slices.Clone(s.Notes), func(n Note) bool { return n.Signal != "" }))
}

func (r *Renderer) notes(w *bytes.Buffer, class string, notes []Note) {
	if len(notes) == 0 {
		return
	}
	w.WriteString("<div")
	attribute(w, "class", class)
	w.WriteString(">\n")
	for i := range notes {
		r.note(w, &notes[i])
	}
	w.WriteString("</div>\n")
}

func (r *Renderer) note(w *bytes.Buffer, n *Note) {
	w.WriteString(`<p class="`)
	if n.Signal != "" {
		w.WriteString("signal ")
		text(w, strings.ToLower(n.Signal))
	} else {
		w.WriteString("remark")
	}
	w.WriteByte('"')
	when(w, n.When, n.Shown)
	if n.When < 0 && slices.ContainsFunc(n.Pieces, func(p Piece) bool { return p.Shown != nil }) {
		flag(w, wire.When) // it always holds, but has no numbers while the sheet has no answer
	}
	language(w, n.Lang)
	if n.Refusal {
		flag(w, wire.Refusal)
	}
	w.WriteByte('>')
	if n.Signal != "" {
		element(w, "strong", "", r.words.Signals.word(n.Signal))
		w.WriteByte(' ')
	}
	r.partly(w, n.Partly, n.Perhaps)
	pieces(w, n.Pieces)
	w.WriteString("</p>\n")
}

// sheetNotes writes sentences of a worksheet that is elsewhere.
func (r *Renderer) sheetNotes(w *bytes.Buffer, class string, s *SheetNotes) {
	w.WriteString("<div")
	attribute(w, "class", class)
	numbered(w, wire.Sheet, s.Sheet)
	if s.Fact != "" {
		attribute(w, wire.Untested, s.Fact)
	}
	w.WriteString(">\n")
	for i := range s.Notes {
		r.note(w, &s.Notes[i])
	}
	w.WriteString("</div>\n")
	if s.Fact != "" {
		w.WriteString("<div class=\"signals\" hidden>\n")
		r.note(w, &Note{Signal: "CAUTION", When: -1, Pieces: []Piece{{Text: s.Untested}}})
		w.WriteString("</div>\n")
	}
}

// inLanguage writes a text in an element, marked where it is not in the language of the page.
func inLanguage(w *bytes.Buffer, tag, lang, s string) {
	w.WriteByte('<')
	w.WriteString(tag)
	language(w, lang)
	w.WriteByte('>')
	text(w, s)
	w.WriteString("</")
	w.WriteString(tag)
	w.WriteByte('>')
}

// said writes a text in a line with others, marked where it is not in the language of the page.
func said(w *bytes.Buffer, lang, s string) {
	if lang == "" || s == "" {
		text(w, s)
		return
	}
	inLanguage(w, "span", lang, s)
}

// saidSentence writes a sentence so, with its full stop.
func saidSentence(w *bytes.Buffer, lang, s string) {
	if lang == "" || s == "" {
		sentence(w, s)
		return
	}
	w.WriteString("<span")
	language(w, lang)
	w.WriteByte('>')
	sentence(w, s)
	w.WriteString("</span>")
}

// language marks a text that is not in the language of the page.
func language(w *bytes.Buffer, lang string) {
	if lang != "" {
		attribute(w, "lang", lang)
	}
}

// Passage writes a passage, with all that it may say; text writes what its i-th case says. The script shows the cases
// that hold for the reader's numbers.
func (r *Renderer) Passage(w *bytes.Buffer, p *Passage, text func(i int)) {
	w.WriteString(`<div class="passage"`)
	numbered(w, wire.Sheet, p.Index)
	w.WriteString(">\n")
	for i, c := range p.Cases {
		w.WriteString("<p")
		when(w, c.When, c.Shown)
		w.WriteByte('>')
		r.partly(w, c.Partly, c.Perhaps)
		text(i)
		w.WriteString("</p>\n")
	}
	waiting(w, p.Index)
	w.WriteString("</div>\n")
}

// waiting writes the place of the sentence that the script shows where there is no answer.
func waiting(w *bytes.Buffer, sheet int) {
	w.WriteString(`<p class="waiting"`)
	numbered(w, wire.VoidFor, sheet)
	w.WriteString(" hidden></p>\n")
}

// partly writes how a sentence begins that does not hold for all of the example's numbers. The script
// writes it for a reader's.
func (r *Renderer) partly(w *bytes.Buffer, partly, perhaps bool) {
	if !partly {
		return
	}
	w.WriteString("<span")
	flag(w, wire.Partly)
	w.WriteByte('>')
	if perhaps {
		text(w, r.general.Perhaps)
	} else {
		text(w, r.general.Partly)
	}
	w.WriteString(" </span>")
}

// when writes the attributes of an element that shows only while a cell of the sheet is not 0.
func when(w *bytes.Buffer, cell int, holds bool) {
	if cell < 0 {
		return
	}
	numbered(w, wire.When, cell)
	if !holds {
		w.WriteString(" hidden")
	}
}
