package render

import (
	"bytes"
	"strings"
)

// Anchor is the id of a worksheet's section in its page.
func Anchor(name string) string { return "worksheet-" + name }

// Worked writes a number in the prose that follows a worksheet.
func (r *Renderer) Worked(w *bytes.Buffer, f *Worked) {
	w.WriteString(`<a class="worked"`)
	place(w, f.Href)
	numbered(w, "data-sheet", f.Sheet)
	w.WriteByte('>')
	pieces(w, f.Sheet, f.Pieces)
	w.WriteString("</a>")
}

// Sourced writes a number in the prose that was taken from a publication.
func (r *Renderer) Sourced(w *bytes.Buffer, f *Sourced) {
	element(w, "b", "sourced", f.Text)
}

// SourceNote writes the note that names the publication of a number. The style sheet sets it in the margin beside the
// paragraph, or beneath it on a narrow screen.
func (r *Renderer) SourceNote(w *bytes.Buffer, f *Sourced) {
	w.WriteString(`<small class="margin" role="note"> `)
	link(w, "", f.Href, f.Source)
	if f.Detail != "" {
		w.WriteString(": ")
		sentence(w, f.Detail)
	} else {
		w.WriteString(". ")
	}
	if kind := r.words.Kinds.name(f.Kind); !strings.EqualFold(kind, f.Source) {
		element(w, "i", "", kind)
	}
	w.WriteString("</small>")
}

// pieces writes runs of text, those with a cell as values of the sheet.
func pieces(w *bytes.Buffer, sheet int, list []Piece) {
	for _, p := range list {
		if p.Cell < 0 {
			text(w, p.Text)
			continue
		}
		shown(w, "span", sheet, p)
	}
}

// shown writes the value of a cell in an element the script keeps current.
func shown(w *bytes.Buffer, tag string, sheet int, p Piece) {
	w.WriteByte('<')
	w.WriteString(tag)
	numbered(w, "data-show", p.Cell)
	numbered(w, "data-sheet", sheet)
	if p.By != "" {
		attribute(w, "data-by", p.By)
	}
	w.WriteByte('>')
	text(w, p.Text)
	w.WriteString("</")
	w.WriteString(tag)
	w.WriteByte('>')
}
