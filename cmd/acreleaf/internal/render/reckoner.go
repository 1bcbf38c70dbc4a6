package render

import "bytes"

// Reckoner writes a ready-reckoner table in a box of its own that scrolls, so that the page never does.
func (r *Renderer) Reckoner(w *bytes.Buffer, t *Table) {
	w.WriteString("<figure class=\"reckoner\">\n<figcaption")
	r.captionID(w, "id", t)
	w.WriteByte('>')
	text(w, t.Caption)
	w.WriteString("</figcaption>\n<div class=\"scroll\" role=\"region\" tabindex=\"0\"")
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
	element(w, "p", "marking", t.MarkText)
	element(w, "p", "following", t.FollowText)
	w.WriteString("</figure>\n")
}

func (r *Renderer) captionID(w *bytes.Buffer, name string, t *Table) {
	w.WriteByte(' ')
	w.WriteString(name)
	w.WriteString(`="reckoner-`)
	integer(w, t.Index)
	w.WriteByte('"')
}

func tableHead(w *bytes.Buffer, t *Table) {
	w.WriteString(`<tr><td></td><th scope="colgroup"`)
	numbered(w, "colspan", len(t.Cols))
	w.WriteByte('>')
	text(w, t.ColLabel)
	w.WriteString("</th></tr>\n<tr>")
	element(w, "th", "corner", t.RowLabel)
	for _, c := range t.Cols {
		w.WriteString(`<th scope="col">`)
		text(w, c)
		w.WriteString("</th>")
	}
	w.WriteString("</tr>\n")
}

func (r *Renderer) tableRow(w *bytes.Buffer, t *Table, row int) {
	w.WriteString(`<tr><th scope="row">`)
	text(w, t.Rows[row])
	w.WriteString("</th>")
	for col := range t.Cells[row] {
		r.tableCell(w, t, row, col)
	}
	w.WriteString("</tr>\n")
}

func (r *Renderer) tableCell(w *bytes.Buffer, t *Table, row, col int) {
	cell := &t.Cells[row][col]
	w.WriteString("<td")
	numbered(w, "data-table", t.Index)
	numbered(w, "data-row", row)
	numbered(w, "data-col", col)
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
