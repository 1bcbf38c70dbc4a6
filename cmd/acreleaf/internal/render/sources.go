package render

import (
	"bytes"
	"cmp"
)

// Sources writes the bibliography. A title or summary left empty is ours.
func (r *Renderer) Sources(w *bytes.Buffer, s *Sources) {
	page := s.Page
	page.Title = cmp.Or(page.Title, r.words.Sources.Title)
	page.Summary = cmp.Or(page.Summary, r.words.Sources.Summary)
	r.write(w, &filling{page: &page, main: func(w *bytes.Buffer) {
		head(w, &page, nil)
		w.WriteString("<ul class=\"sources\">\n")
		for i := range s.Entries {
			r.source(w, &s.Entries[i])
		}
		w.WriteString("</ul>\n")
	}})
}

func (r *Renderer) source(w *bytes.Buffer, s *Source) {
	w.WriteString("<li")
	attribute(w, "id", s.ID)
	w.WriteString(">\n<p>")
	r.citation(w, s, "")
	w.WriteString("</p>\n")
	element(w, "p", "kind", r.words.Kinds.name(s.Kind))
	if s.Note != "" {
		w.WriteString(`<p class="hint"`)
		language(w, s.NoteLang)
		w.WriteByte('>')
		text(w, s.Note)
		w.WriteString("</p>")
	}
	r.figured(w, s)
	r.cited(w, s.Cited)
	w.WriteString("</li>\n")
}

// citation writes the whole citation of a source. Its title leads to href, if there is one: to the entry in the
// bibliography, which has the address of the work.
func (r *Renderer) citation(w *bytes.Buffer, s *Source, href string) {
	sentence(w, s.Authors)
	sentence(w, s.Year)
	w.WriteString("<cite")
	language(w, s.TitleLang)
	w.WriteByte('>')
	if href == "" {
		text(w, s.Title)
	} else {
		link(w, "", href, s.Title)
	}
	w.WriteString("</cite>")
	if !ended(s.Title) {
		w.WriteByte('.')
	}
	if s.Publisher != "" && s.Publisher != s.Authors {
		w.WriteByte(' ')
		text(w, s.Publisher)
		w.WriteByte('.')
	}
	if s.Number != "" {
		w.WriteByte(' ')
		text(w, s.Number)
		w.WriteByte('.')
	}
	if s.Address != "" && href == "" {
		w.WriteByte(' ')
		link(w, "", s.Address, r.words.Sources.Visit)
	}
}

// figured lists the figures that a source gives.
func (r *Renderer) figured(w *bytes.Buffer, s *Source) {
	if len(s.Figures) == 0 {
		return
	}
	element(w, "p", "", r.words.Sources.Gives)
	w.WriteString("\n<ul>\n")
	for _, f := range s.Figures {
		w.WriteString("<li>")
		element(w, "b", "", f.Text)
		w.WriteString(": ")
		said(w, f.Lang, f.For)
		w.WriteString("</li>\n")
	}
	w.WriteString("</ul>\n")
}

// listed is how many pages are named in the open. A definition that every worksheet rests on is used in dozens, which
// would be most of the page.
const listed = 4

// cited writes the pages that use a source, folded into one line when there are many.
func (r *Renderer) cited(w *bytes.Buffer, pages []Link) {
	switch {
	case len(pages) == 0:
		element(w, "p", "cited", r.words.Sources.NotCited)
	case len(pages) <= listed:
		w.WriteString(`<p class="cited">`)
		text(w, r.words.Sources.Cited)
		w.WriteByte(' ')
		inLine(w, pages)
		w.WriteString("</p>")
	default:
		w.WriteString("<details class=\"cited\"><summary>")
		text(w, r.words.Sources.Cited)
		w.WriteString(" <small>")
		integer(w, len(pages))
		w.WriteString("</small></summary>\n<p>")
		inLine(w, pages)
		w.WriteString("</p></details>")
	}
	w.WriteByte('\n')
}

// inLine writes links in one line of text.
func inLine(w *bytes.Buffer, list []Link) {
	for i, l := range list {
		if i > 0 {
			w.WriteString(", ")
		}
		link(w, "", l.Href, l.Text)
	}
}
