package render

import "bytes"

// contents writes the parts of a page, for those who look one of them up. One part needs no list.
func (r *Renderer) contents(w *bytes.Buffer, parts []Link) {
	if len(parts) < 2 {
		return
	}
	w.WriteString(`<nav class="contents"`)
	attribute(w, "aria-label", r.words.Page.Contents)
	w.WriteString(">\n<ul>\n")
	for _, part := range parts {
		w.WriteString("<li>")
		link(w, "", part.Href, part.Text)
		w.WriteString("</li>\n")
	}
	w.WriteString("</ul>\n</nav>\n")
}
