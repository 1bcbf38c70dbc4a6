package render

import "bytes"

// Index writes a page that lists the pages of a folder.
func (r *Renderer) Index(w *bytes.Buffer, i *Index) {
	r.write(w, &filling{page: &i.Page, course: i.Course != nil, main: func(w *bytes.Buffer) {
		head(w, &i.Page, nil)
		if i.Course != nil {
			r.course(w, i.Course)
			r.record(w, i.Course)
			return
		}
		w.WriteString("<div class=\"season\">\n<ol>\n")
		for j := range i.Entries {
			r.entry(w, &i.Entries[j])
		}
		w.WriteString("</ol>\n</div>\n")
	}})
}

// more writes the ways from the home page to what it does not list itself.
func (r *Renderer) more(w *bytes.Buffer, list []Link) {
	if len(list) == 0 {
		return
	}
	w.WriteString(`<nav class="more"`)
	attribute(w, "aria-label", r.words.Home.More)
	w.WriteString(">\n")
	element(w, "h2", "", r.words.Home.More)
	w.WriteByte('\n')
	links(w, list)
	w.WriteString("</nav>\n")
}

// links writes a list of ways.
func links(w *bytes.Buffer, list []Link) {
	w.WriteString("<ul>\n")
	for _, one := range list {
		w.WriteString("<li>")
		link(w, "", one.Href, one.Text)
		w.WriteString("</li>\n")
	}
	w.WriteString("</ul>\n")
}
