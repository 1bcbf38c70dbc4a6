package render

import (
	"bytes"
	"strings"
)

// notes writes the sentences beside the answer.
func (r *Renderer) notes(w *bytes.Buffer, s *Worksheet) {
	if len(s.Notes) == 0 {
		return
	}
	w.WriteString("<div class=\"notes\">\n")
	for i := range s.Notes {
		note(w, s.Index, &s.Notes[i])
	}
	w.WriteString("</div>\n")
}

func note(w *bytes.Buffer, sheet int, n *Note) {
	w.WriteString(`<p class="`)
	if n.Signal != "" {
		w.WriteString("signal ")
		text(w, strings.ToLower(n.Signal))
	} else {
		w.WriteString("remark")
	}
	w.WriteByte('"')
	if n.When >= 0 {
		numbered(w, "data-when", n.When)
		numbered(w, "data-sheet", sheet)
		if n.Refusal {
			w.WriteString(" data-refusal")
		}
		if !n.Shown {
			w.WriteString(" hidden")
		}
	}
	w.WriteByte('>')
	if n.Signal != "" {
		element(w, "strong", "", n.Signal)
		w.WriteByte(' ')
	}
	pieces(w, sheet, n.Pieces)
	w.WriteString("</p>\n")
}
