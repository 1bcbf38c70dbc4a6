package render

import (
	"bytes"

	"acreleaf/cmd/acreleaf/internal/kind"
)

// contents writes the parts of a page, for those who look one of them up. One part needs no list. On the pages of
// growers the list is folded into one line, so that the answers stay near the top.
func (r *Renderer) contents(w *bytes.Buffer, g *Guide) {
	if len(g.Contents) < 2 {
		return
	}
	w.WriteString(`<nav class="contents"`)
	attribute(w, "aria-label", r.words.Page.Contents)
	w.WriteString(">\n")
	folded := g.Kind.Row().Reader == kind.Grower
	if folded {
		w.WriteString("<details>")
		element(w, "summary", "", r.words.Page.Contents)
		w.WriteByte('\n')
	}
	links(w, g.Contents)
	if folded {
		w.WriteString("</details>\n")
	}
	w.WriteString("</nav>\n")
}
