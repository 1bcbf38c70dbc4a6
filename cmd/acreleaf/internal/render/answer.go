package render

import "bytes"

// answers writes the results, underlined twice, the sentence that stands in for them while the sheet has none, and
// the one live line of the worksheet: a screen reader hears the answers once, after the typing stops.
func (r *Renderer) answers(w *bytes.Buffer, s *Worksheet, anchor string) {
	w.WriteString(`<div class="answer">`)
	element(w, "h3", "", r.words.Worksheet.Answer)
	w.WriteString("\n<dl>\n")
	for i := range s.Answers {
		a := &s.Answers[i]
		w.WriteString("<div><dt>")
		text(w, a.Label)
		w.WriteString("</dt><dd>")
		r.result(w, a)
		for j := range a.Also {
			r.also(w, a, &a.Also[j])
		}
		w.WriteString("</dd></div>\n")
	}
	w.WriteString("</dl>\n<p class=\"waiting\"")
	numbered(w, "data-void-for", s.Index)
	w.WriteString(" hidden>")
	text(w, r.words.Worksheet.Waiting)
	w.WriteString("</p>\n<p class=\"unseen\" role=\"status\"")
	attribute(w, "data-speak", anchor+"-said")
	w.WriteString("></p>\n<p hidden")
	attribute(w, "id", anchor+"-said")
	w.WriteByte('>')
	for i := range s.Answers {
		r.said(w, &s.Answers[i])
	}
	w.WriteString("</p></div>\n")
}

// result writes the number and its unit, which stand over the two lines of a total.
func (r *Renderer) result(w *bytes.Buffer, a *Answer) {
	w.WriteString(`<span class="total">`)
	r.value(w, a)
	w.WriteByte(' ')
	element(w, "span", "unit", a.Unit)
	w.WriteString("</span>")
}

func (r *Renderer) value(w *bytes.Buffer, a *Answer) {
	shown(w, "b", a.Sheet, Piece{Text: a.Text, Cell: a.Cell})
	if a.Upper != nil {
		w.WriteByte(' ')
		text(w, r.words.Worksheet.To)
		w.WriteByte(' ')
		shown(w, "b", a.Sheet, Piece{Text: a.Upper.Text, Cell: a.Upper.Cell})
	}
}

// also writes the answer once more in another unit.
func (r *Renderer) also(w *bytes.Buffer, a *Answer, c *Conversion) {
	w.WriteString(` <span class="also">`)
	shown(w, "span", a.Sheet, Piece{Text: c.Text, Cell: a.Cell, By: c.By})
	if a.Upper != nil {
		w.WriteByte(' ')
		text(w, r.words.Worksheet.To)
		w.WriteByte(' ')
		shown(w, "span", a.Sheet, Piece{Text: c.Upper, Cell: a.Upper.Cell, By: c.By})
	}
	w.WriteByte(' ')
	text(w, c.Unit)
	w.WriteString("</span>")
}

// said writes the sentence that is spoken for an answer.
func (r *Renderer) said(w *bytes.Buffer, a *Answer) {
	r.words.Worksheet.Said.write(w, func(blank string) {
		switch blank {
		case "label":
			text(w, a.Label)
		case "value":
			r.value(w, a)
		case "unit":
			text(w, a.Unit)
		}
	})
	w.WriteByte(' ')
}
