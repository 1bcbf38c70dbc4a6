package render

import (
	"bytes"
	"strings"
)

// remarks writes the sentences beside the answer.
func (r *Renderer) remarks(w *bytes.Buffer, s *Worksheet) {
	if len(s.Notes) == 0 {
		return
	}
	w.WriteString("<div class=\"remarks\">\n")
	for i := range s.Notes {
		r.note(w, &s.Notes[i])
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
	if n.Refusal {
		w.WriteString(" data-refusal")
	}
	w.WriteByte('>')
	if n.Signal != "" {
		element(w, "strong", "", r.words.Signals.word(n.Signal))
		w.WriteByte(' ')
	}
	if n.Partly {
		r.partly(w)
	}
	pieces(w, n.Pieces)
	w.WriteString("</p>\n")
}

// partly writes how a sentence begins that holds for some of the example's numbers and not for others. The script
// writes it for a reader's.
func (r *Renderer) partly(w *bytes.Buffer) {
	w.WriteString("<span data-partly>")
	text(w, r.words.Worksheet.Partly)
	w.WriteString(" </span>")
}

// when writes the attributes of an element that shows only while a cell of the sheet is not 0.
func when(w *bytes.Buffer, cell int, holds bool) {
	if cell < 0 {
		return
	}
	numbered(w, "data-when", cell)
	if !holds {
		w.WriteString(" hidden")
	}
}
