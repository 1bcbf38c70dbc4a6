package render

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"acreleaf/cmd/acreleaf/internal/wire"
)

// workedFigure is how a figure that follows the reader's numbers begins, and ownNote the note with those numbers.
const (
	workedFigure = `<a class="worked"`
	ownNote      = `<small class="margin own" role="note" hidden>`
)

// unbroken is the most letters of a figure in the prose that stay on one line: some two thirds of the narrowest column.
const unbroken = 16

// classOf gives the class of a figure in the prose, with a second one where its text is too long to stay on one line.
func classOf(class, s string) string {
	if utf8.RuneCountInString(s) > unbroken {
		return class + " phrase"
	}
	return class
}

// Worked writes a number in the prose that is tied to a worksheet, as its author wrote it.
func (r *Renderer) Worked(w *bytes.Buffer, f *Worked) {
	w.WriteString("<a")
	attribute(w, "class", classOf("worked", f.Text))
	place(w, f.Href)
	w.WriteByte('>')
	text(w, f.Text)
	w.WriteString("</a>")
}

// Following writes a number in a passage, which the script keeps current.
func (r *Renderer) Following(w *bytes.Buffer, f *Following) {
	w.WriteString(workedFigure)
	place(w, f.Href)
	numbered(w, wire.Sheet, f.Sheet)
	w.WriteByte('>')
	figure(w, &f.Shown)
	w.WriteString("</a>")
}

// OwnNote writes the note beside a part of the text that was written for the example. The script shows it once the
// numbers are the reader's.
func (r *Renderer) OwnNote(w *bytes.Buffer, list []Own) {
	if len(list) == 0 {
		return
	}
	w.WriteString(ownNote)
	text(w, r.words.Worksheet.Yours)
	for i := range list {
		w.WriteString(" <span")
		numbered(w, wire.Sheet, list[i].Sheet)
		w.WriteByte('>')
		inLanguage(w, "b", list[i].Lang, list[i].Label)
		w.WriteString(": <span>")
		figure(w, &list[i].Shown)
		w.WriteString("</span></span>")
	}
	w.WriteString("</small>")
}

// Sourced writes a number in the prose that was taken from a publication, and the number of that in the page's list.
func (r *Renderer) Sourced(w *bytes.Buffer, f *Sourced) {
	element(w, "b", classOf("sourced", f.Text), f.Text)
	r.cite(w, f.Cite, f.Source)
}

// SourceNote writes the note that says what a number is and who gives it. The style sheet sets it in the margin beside
// the paragraph, or beneath it on a narrow screen.
func (r *Renderer) SourceNote(w *bytes.Buffer, f *Sourced) {
	w.WriteString(`<small class="margin" role="note"> `)
	marked(w, f.Cite.Source)
	w.WriteByte(' ')
	if f.For != "" {
		element(w, "b", "", f.Text)
		w.WriteString(": ")
		sentence(w, f.For)
	}
	sentence(w, f.Source)
	if kind := r.words.Kinds.name(f.Kind); !strings.EqualFold(kind, f.Source) {
		element(w, "i", "", kind)
	}
	w.WriteString("</small>")
}

// Recorded writes a number of the author's own records.
func (r *Renderer) Recorded(w *bytes.Buffer, f *Recorded) {
	element(w, "b", classOf("sourced", f.Text), f.Text)
}

// RecordNote writes the note that says what a record is and of which day.
func (r *Renderer) RecordNote(w *bytes.Buffer, f *Recorded) {
	w.WriteString(`<small class="margin" role="note"> `)
	element(w, "b", "", f.Text)
	w.WriteString(": ")
	sentence(w, f.What)
	w.WriteString("<i>")
	r.words.Date.dated(w, r.words.Sources.Record, f.Day)
	w.WriteString("</i></small>")
}

// Size writes a plain size: its text alone, since it has no source to show.
func (r *Renderer) Size(w *bytes.Buffer, s string) { text(w, s) }

// pieces writes runs of text and the values of the sheet between them.
func pieces(w *bytes.Buffer, list []Piece) {
	for i := range list {
		if list[i].Shown == nil {
			text(w, list[i].Text)
			continue
		}
		figure(w, list[i].Shown)
	}
}

// figure writes a value with its unit, as each of its kinds.
func figure(w *bytes.Buffer, s *Shown) {
	if s.Kind == nil {
		quantity(w, s)
		return
	}
	asKind(w, s.Kind, s, s.Kind.Second)
	asKind(w, s.Kind, s.Kind.Other, !s.Kind.Second)
}

// asKind writes a value as one of its kinds. The script shows the one that the given is of.
func asKind(w *bytes.Buffer, k *Kind, s *Shown, second bool) {
	w.WriteString("<span")
	numbered(w, wire.Kind, k.Cell)
	if second {
		flag(w, wire.Other)
	}
	if second != k.Second {
		w.WriteString(" hidden")
	}
	w.WriteByte('>')
	quantity(w, s)
	w.WriteString("</span>")
}

// quantity writes a number with its unit before and after it.
func quantity(w *bytes.Buffer, s *Shown) {
	second := s
	if s.Also != nil {
		second = s.Also
	}
	unitPart(w, "span", "", s.Before, second.Before)
	number(w, "span", "", s)
	unitPart(w, "span", "", s.After, second.After)
}

// unitPart writes what is on one side of a number. Where a second unit has another text there, the script can put
// that in its place.
func unitPart(w *bytes.Buffer, tag, class, s, other string) {
	if other == s {
		if class == "" || s == "" {
			text(w, s)
			return
		}
		element(w, tag, class, s)
		return
	}
	w.WriteString("<" + tag)
	if class != "" {
		attribute(w, "class", class)
	}
	attribute(w, wire.Unit, other)
	w.WriteByte('>')
	text(w, s)
	w.WriteString("</" + tag + ">")
}

// number writes a number in an element that the script keeps current.
func number(w *bytes.Buffer, tag, class string, s *Shown) {
	w.WriteByte('<')
	w.WriteString(tag)
	if class != "" {
		attribute(w, "class", class)
	}
	numbered(w, wire.Show, s.Cell)
	if s.By != "" {
		attribute(w, wire.By, s.By)
	}
	if s.Also != nil {
		attribute(w, wire.SI, s.Also.By)
	}
	if s.Day {
		flag(w, wire.Day)
	}
	if s.Typed {
		flag(w, wire.Typed)
	}
	if s.List != "" {
		attribute(w, wire.List, s.List)
	}
	if s.Presence > 0 {
		numbered(w, wire.Guard, s.Presence)
	}
	w.WriteByte('>')
	text(w, s.Text)
	w.WriteString("</")
	w.WriteString(tag)
	w.WriteByte('>')
}
