package render

import (
	"bytes"
	"strings"

	"acreleaf/cmd/acreleaf/internal/wire"
)

// Reckoner writes a ready-reckoner table in a box of its own that scrolls, so that the page never does.
func (r *Renderer) Reckoner(w *bytes.Buffer, t *Table) {
	w.WriteString(`<figure class="reckoner"`)
	if t.Day {
		flag(w, wire.Day)
	}
	if t.Cents {
		flag(w, wire.Cents)
	}
	w.WriteString(">\n<figcaption")
	r.captionID(w, "id", t)
	w.WriteByte('>')
	said(w, t.CaptionLang, t.Caption)
	w.WriteString("</figcaption>\n<div class=\"scroll\" role=\"group\" tabindex=\"0\"")
	r.captionID(w, "aria-labelledby", t)
	w.WriteString(">\n<table")
	r.captionID(w, "aria-labelledby", t)
	w.WriteString(">\n<thead>\n")
	tableHead(w, t)
	w.WriteString("</thead>\n<tbody>\n")
	for row := range t.Rows {
		r.tableRow(w, t, row)
	}
	w.WriteString("</tbody>\n</table>\n</div>\n")
	r.legend(w, "marking", r.words.Table.Marking, "", t.MarkText)
	r.legend(w, "following", r.words.Table.Following, t.FollowLang, t.FollowText)
	r.rests(w, t.Constants)
	w.WriteString("</figure>\n")
}

// rests names the figures that a table rests on, each with its source.
func (r *Renderer) rests(w *bytes.Buffer, list []Constant) {
	if len(list) == 0 {
		return
	}
	w.WriteString("<p>")
	text(w, r.words.Worksheet.Constants)
	w.WriteByte(':')
	for i := range list {
		if i > 0 {
			w.WriteByte(',')
		}
		w.WriteByte(' ')
		r.restsOn(w, &list[i])
	}
	w.WriteString(".</p>\n")
}

// restsOn writes a figure, and the numbers of its sources.
func (r *Renderer) restsOn(w *bytes.Buffer, c *Constant) {
	said(w, c.TextLang, c.Text)
	for i := range c.Origins {
		if o := &c.Origins[i]; o.Cite.Source != 0 {
			w.WriteByte(' ')
			r.cite(w, o.Cite, o.Text)
		}
	}
}

// legend says what a mark on the table means.
func (r *Renderer) legend(w *bytes.Buffer, class string, s Sentence, lang, what string) {
	if what == "" {
		return
	}
	w.WriteString("<p")
	attribute(w, "class", class)
	w.WriteByte('>')
	s.write(w, func(string) { said(w, lang, what) })
	w.WriteString("</p>\n")
}

func (r *Renderer) captionID(w *bytes.Buffer, name string, t *Table) {
	w.WriteByte(' ')
	w.WriteString(name)
	w.WriteString(`="reckoner-`)
	integer(w, t.Index)
	w.WriteByte('"')
}

func tableHead(w *bytes.Buffer, t *Table) {
	unit := sharedUnit(t.Cols)
	w.WriteString(`<tr><td></td><th scope="colgroup"`)
	numbered(w, "colspan", len(t.Cols))
	w.WriteByte('>')
	said(w, t.ColLang, t.ColLabel)
	afterComma(w, unit)
	w.WriteString("</th></tr>\n<tr><th scope=\"col\">")
	said(w, t.RowLang, t.RowLabel)
	afterComma(w, sharedUnit(t.Rows))
	w.WriteString("</th>")
	for _, c := range t.Cols {
		w.WriteString(`<th scope="col">`)
		text(w, strings.TrimSuffix(c, unit))
		w.WriteString("</th>")
	}
	w.WriteString("</tr>\n")
}

// sharedUnit is what all of "3 ppm NO3-N", "5 ppm NO3-N" have after the number, the space included. It is once in
// the label, so that the columns stay as narrow as their numbers; with none in common it is empty.
func sharedUnit(headings []string) string {
	shared := ""
	for i, h := range headings {
		at := strings.IndexByte(h, ' ')
		if at < 0 || i > 0 && h[at:] != shared {
			return ""
		}
		shared = h[at:]
	}
	return shared
}

func afterComma(w *bytes.Buffer, unit string) {
	if unit != "" {
		w.WriteByte(',')
		text(w, unit)
	}
}

func (r *Renderer) tableRow(w *bytes.Buffer, t *Table, row int) {
	w.WriteString(`<tr><th scope="row">`)
	text(w, strings.TrimSuffix(t.Rows[row], sharedUnit(t.Rows)))
	w.WriteString("</th>")
	for col := range t.Cells[row] {
		r.tableCell(w, t, row, col)
	}
	w.WriteString("</tr>\n")
}

func (r *Renderer) tableCell(w *bytes.Buffer, t *Table, row, col int) {
	cell := &t.Cells[row][col]
	w.WriteString("<td")
	numbered(w, wire.Table, t.Index)
	numbered(w, wire.Row, row)
	numbered(w, wire.Column, col)
	switch {
	case cell.Marked && cell.Near:
		w.WriteString(` class="marked near"`)
	case cell.Marked:
		w.WriteString(` class="marked"`)
	case cell.Near:
		w.WriteString(` class="near"`)
	}
	w.WriteByte('>')
	text(w, cell.Text)
	if t.MarkText != "" {
		cellNote(w, "mark-note", r.words.Table.Marked, cell.Marked)
	}
	if t.FollowText != "" {
		cellNote(w, "near-note", r.words.Table.Near, cell.Near)
	}
	w.WriteString("</td>")
}

func cellNote(w *bytes.Buffer, class, word string, shown bool) {
	w.WriteString("<span")
	attribute(w, "class", class)
	if !shown {
		w.WriteString(" hidden")
	}
	w.WriteString("> ")
	text(w, word)
	w.WriteString("</span>")
}
