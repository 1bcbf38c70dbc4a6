package render

import (
	"bytes"
	"cmp"
	"strconv"
)

// Home writes the home page: the guides in the order of the season's work. Without a summary it has the tagline. The
// office's own text comes after them: most who come here look for a guide.
func (r *Renderer) Home(w *bytes.Buffer, h *Home) {
	page := h.Page
	page.Summary = cmp.Or(page.Summary, r.site.Tagline)
	r.write(w, &filling{page: &page, script: true, main: func(w *bytes.Buffer) {
		head(w, page.Title, page.Summary, nil)
		r.season(w, h.Seasons)
		r.unitSystem(w, h.Module)
		r.withoutScript(w, h.Module)
		if h.Intro != "" {
			w.WriteString("<article>\n")
			w.WriteString(string(h.Intro))
			r.references(w, h.Cited)
			w.WriteString("</article>\n")
		}
		r.more(w, h.More)
		r.module(w, h.Module, h.Intro)
	}})
}

// Missing writes the page for an address that does not exist. A title or summary left empty is ours.
func (r *Renderer) Missing(w *bytes.Buffer, m *Missing) {
	page := m.Page
	page.Title = cmp.Or(page.Title, r.words.Missing.Title)
	page.Summary = cmp.Or(page.Summary, r.words.Missing.Summary)
	r.write(w, &filling{page: &page, main: func(w *bytes.Buffer) {
		head(w, page.Title, page.Summary, nil)
		element(w, "p", "", r.words.Missing.Next)
		links(w, m.Ways)
	}})
}

// season writes the strip of the season: a stretch of the year beside the guides whose work falls in it.
func (r *Renderer) season(w *bytes.Buffer, seasons []Season) {
	w.WriteString(`<section class="season"`)
	attribute(w, "aria-label", r.words.Home.Order)
	w.WriteString(">\n")
	for i := range seasons {
		s := &seasons[i]
		name := s.Name
		if name == "" {
			name = r.words.Home.AnySeason
		}
		w.WriteString("<div>\n")
		element(w, "h2", "", name)
		w.WriteString("\n<ol>\n")
		for j := range s.Guides {
			r.entry(w, &s.Guides[j])
		}
		w.WriteString("</ol>\n</div>\n")
	}
	w.WriteString("</section>\n")
}

func (r *Renderer) entry(w *bytes.Buffer, e *Entry) {
	w.WriteString("<li>")
	if e.Number > 0 {
		element(w, "span", "number", strconv.Itoa(e.Number))
		w.WriteByte(' ')
	}
	w.WriteString("<div>")
	link(w, "", e.Href, e.Title)
	w.WriteByte(' ')
	element(w, "p", "", e.Summary)
	w.WriteString("</div>")
	if e.Answer != "" {
		w.WriteByte(' ')
		element(w, "span", "total", e.Answer)
	}
	w.WriteString("</li>\n")
}
