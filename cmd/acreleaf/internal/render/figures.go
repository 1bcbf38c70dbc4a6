package render

import "bytes"

// figures writes a table of what a calculation looks up, in a box that scrolls by itself.
func (r *Renderer) figures(w *bytes.Buffer, f *Figures) {
	w.WriteString(`<figure class="reckoner"><figcaption`)
	attribute(w, "id", f.ID)
	w.WriteByte('>')
	said(w, f.Caption.Lang, f.Caption.Text)
	w.WriteString(`</figcaption><div class="scroll" role="group" tabindex="0"`)
	attribute(w, "aria-labelledby", f.ID)
	w.WriteString("><table")
	attribute(w, "aria-labelledby", f.ID)
	w.WriteString(">\n<thead><tr><td></td>")
	for _, column := range f.Columns {
		w.WriteString(`<th scope="col">`)
		said(w, column.Lang, column.Text)
		w.WriteString("</th>")
	}
	w.WriteString("</tr></thead>\n<tbody>\n")
	for i := range f.Rows {
		figureRow(w, &f.Rows[i])
	}
	w.WriteString("</tbody></table></div>\n")
	figureNotes(w, f.Rows)
	w.WriteString("</figure>\n")
}

func figureRow(w *bytes.Buffer, row *FigureRow) {
	w.WriteString(`<tr><th scope="row">`)
	said(w, row.Label.Lang, row.Label.Text)
	w.WriteString("</th>")
	for i := range row.Cells {
		w.WriteString("<td>")
		text(w, row.Cells[i].Text)
		sourceNumbers(w, row.Cells[i].Sources)
		w.WriteString("</td>")
	}
	w.WriteString("</tr>\n")
}

// sourceNumbers writes the numbers of sources, each with the way to its entry in the page's list.
func sourceNumbers(w *bytes.Buffer, numbers []int) {
	for _, number := range numbers {
		w.WriteString(" <a")
		attribute(w, "href", "#"+sourceID(number))
		w.WriteByte('>')
		marked(w, number)
		w.WriteString("</a>")
	}
}

// figureNotes writes what there is to say of single rows.
func figureNotes(w *bytes.Buffer, rows []FigureRow) {
	for i := range rows {
		if note := rows[i].Note; note.Text != "" {
			w.WriteString("<p>")
			element(w, "b", "", rows[i].Name)
			w.WriteString(". ")
			said(w, note.Lang, note.Text)
			sourceNumbers(w, rows[i].Sources)
			w.WriteString("</p>\n")
		}
	}
}
