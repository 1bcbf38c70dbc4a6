package render

import (
	"bytes"
	"cmp"
	"strconv"
)

// Home writes the home page: the questions that people come with, then the guides in the order of the season's work.
// Without a summary it has the tagline. The office's own text comes after them: most who come here look for a guide.
func (r *Renderer) Home(w *bytes.Buffer, h *Home) {
	page := h.Page
	page.Summary = cmp.Or(page.Summary, r.site.Tagline)
	r.write(w, &filling{page: &page, script: true, drawings: hasDrawing(h.Intro), main: func(w *bytes.Buffer) {
		head(w, &page, nil)
		r.questions(w, h.Questions)
		r.season(w, h.Seasons)
		r.state(w, h.Intro)
		r.unitSystem(w, h.Intro)
		if h.Intro != "" {
			w.WriteString("<article>\n")
			w.WriteString(string(h.Intro))
			r.references(w, h.Cited)
			w.WriteString("</article>\n")
		}
		r.more(w, h.More)
		r.module(w, h.Module)
	}})
}

// Missing writes the page for an address that does not exist. A title or summary left empty is ours.
func (r *Renderer) Missing(w *bytes.Buffer, m *Missing) {
	page := m.Page
	page.Title = cmp.Or(page.Title, r.words.Missing.Title)
	page.Summary = cmp.Or(page.Summary, r.words.Missing.Summary)
	r.write(w, &filling{page: &page, main: func(w *bytes.Buffer) {
		head(w, &page, nil)
		element(w, "p", "", r.words.Missing.Next)
		links(w, m.Ways)
		for _, other := range m.Others {
			missingIn(w, &other)
		}
	}})
}

func missingIn(w *bytes.Buffer, m *MissingIn) {
	w.WriteString("<section")
	attribute(w, "lang", m.Lang)
	w.WriteString(">\n")
	element(w, "h2", "", m.Words.Missing.Title)
	element(w, "p", "", m.Words.Missing.Summary)
	element(w, "p", "", m.Words.Missing.Next)
	links(w, m.Ways)
	w.WriteString("</section>\n")
}

// questions writes what people come with, each a way to the page that answers it.
func (r *Renderer) questions(w *bytes.Buffer, list []Question) {
	if len(list) == 0 {
		return
	}
	w.WriteString(`<nav class="questions"`)
	attribute(w, "aria-label", r.words.Home.Questions)
	w.WriteString(">\n")
	for _, q := range list {
		w.WriteString("<a")
		place(w, q.Href)
		w.WriteByte('>')
		element(w, "b", "", q.Text)
		w.WriteByte(' ')
		element(w, "span", "", q.Summary)
		w.WriteString("</a>\n")
	}
	w.WriteString("</nav>\n")
}

// season writes the strip of the season: a stretch of the year beside the guides whose work falls in it.
func (r *Renderer) season(w *bytes.Buffer, seasons []Season) {
	if len(seasons) == 0 {
		return
	}
	w.WriteString("<section class=\"season\" aria-labelledby=\"season_order\">\n<h2 id=\"season_order\">")
	text(w, r.words.Home.Order)
	w.WriteString("</h2>\n")
	for i := range seasons {
		s := &seasons[i]
		w.WriteString("<div>\n")
		element(w, "h3", "", cmp.Or(s.Name, r.words.Home.AnySeason))
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
	w.WriteString("<a")
	place(w, e.Href)
	language(w, e.Lang)
	w.WriteByte('>')
	text(w, e.Title)
	w.WriteString("</a> ")
	if e.Summary != "" {
		inLanguage(w, "p", e.SummaryLang, e.Summary)
	}
	r.example(w, &e.Example)
	w.WriteString("</div></li>\n")
}

// example writes what a guide works out for its own numbers, and that it is an example.
func (r *Renderer) example(w *bytes.Buffer, e *Example) {
	if e.Answer == "" {
		return
	}
	sentence := r.words.Home.Example
	if e.From == "" {
		sentence = r.words.Home.ExampleAlone
	}
	w.WriteString(` <p class="sample">`)
	sentence.write(w, func(blank string) {
		switch blank {
		case "label":
			said(w, e.Lang, e.Label)
		case "answer":
			element(w, "b", "", e.Answer)
		case "from":
			text(w, e.From)
		}
	})
	w.WriteString("</p>")
}
