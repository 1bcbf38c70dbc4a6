package render

import "bytes"

// compared writes answers that say the same of several things as a table, a column each. What an answer depends on is
// on an element within the cell, so that a cell without one keeps its place.
func compared(w *bytes.Buffer, c *Comparison) {
	if c == nil {
		return
	}
	w.WriteString("<table>\n<thead><tr><td></td>")
	for i := range c.Columns {
		column := &c.Columns[i]
		w.WriteString(`<th scope="col" class="linked"`)
		language(w, column.Lang)
		w.WriteByte('>')
		element(w, "small", "", column.Label)
		w.WriteByte(' ')
		figure(w, &column.Shown)
		w.WriteString("</th>")
	}
	w.WriteString("</tr></thead>\n<tbody>\n")
	for i := range c.Rows {
		comparedRow(w, &c.Rows[i])
	}
	w.WriteString("</tbody></table>\n")
}

func comparedRow(w *bytes.Buffer, row *ComparedRow) {
	w.WriteString(`<tr><th scope="row"`)
	language(w, row.Lang)
	w.WriteByte('>')
	text(w, row.Label)
	w.WriteString("</th>")
	for i := range row.Answers {
		a := &row.Answers[i]
		w.WriteString("<td><span")
		when(w, a.There, !a.Out)
		w.WriteByte('>')
		total(w, &a.Shown)
		w.WriteString("</span></td>")
	}
	w.WriteString("</tr>\n")
}
