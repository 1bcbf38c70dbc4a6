package render

import (
	"bytes"
	"slices"
	"strconv"
	"strings"

	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/wire"
)

// Worksheet writes a worked example with the example's numbers filled in.
func (r *Renderer) Worksheet(w *bytes.Buffer, s *Worksheet) {
	words := &r.words.Worksheet
	anchor := construct.Anchor(s.Name)
	w.WriteString(`<section class="worksheet"`)
	attribute(w, "id", anchor)
	numbered(w, wire.Sheet, s.Index)
	attribute(w, "aria-labelledby", anchor+"-title")
	w.WriteString(">\n<header><h2")
	attribute(w, "id", anchor+"-title")
	w.WriteByte('>')
	element(w, "small", "", words.Kind.with(strconv.Itoa(s.Number)))
	w.WriteByte(' ')
	said(w, s.TitleLang, s.Title)
	w.WriteString("</h2>")
	if s.Summary != "" {
		inLanguage(w, "p", s.SummaryLang, s.Summary)
	}
	w.WriteString("</header>\n")
	r.givens(w, s.Givens)
	r.answers(w, s)
	r.remarks(w, s)
	r.work(w, s, anchor)
	r.restsFolded(w, s.Constants)
	r.worksheetFoot(w, s)
	w.WriteString("</section>\n")
}

// work writes the steps, folded into one line. They scroll sideways in a box of their own where a line of mathematics
// is wider than the screen.
func (r *Renderer) work(w *bytes.Buffer, s *Worksheet, anchor string) {
	if len(s.Work) == 0 {
		return
	}
	words := &r.words.Worksheet
	w.WriteString(`<details class="work"><summary><h3`)
	attribute(w, "id", anchor+"-work")
	w.WriteByte('>')
	text(w, words.Work)
	w.WriteString("</h3> ")
	element(w, "small", "", words.length(s.Work))
	w.WriteString("</summary>\n<div role=\"group\" tabindex=\"0\"")
	attribute(w, "aria-labelledby", anchor+"-work")
	w.WriteString("><ol>\n")
	lines(w, s.Work)
	w.WriteString("</ol></div>")
	r.code(w, s)
	w.WriteString("</details>\n")
}

// lines writes the lines of the work.
func lines(w *bytes.Buffer, list []Line) {
	for i := range list {
		line := &list[i]
		w.WriteString("<li")
		when(w, line.When, line.Shown)
		w.WriteByte('>')
		ruled(w, "", line.Lang, string(line.Symbols))
		class := ""
		if line.Bare {
			class = "bare"
		}
		for _, numbers := range line.Numbers {
			ruled(w, class, line.Lang, string(numbers))
		}
		w.WriteString("</li>\n")
	}
}

// code writes the way to the code, which is with the work: few readers look for it.
func (r *Renderer) code(w *bytes.Buffer, s *Worksheet) {
	if s.CodeHref != "" {
		link(w, "", s.CodeHref, r.words.Worksheet.Code)
	}
}

// length says how many lines the work has. Where that changes with the numbers, it says no number.
func (words *WorksheetWords) length(work []Line) string {
	switch {
	case slices.ContainsFunc(work, func(line Line) bool { return line.When >= 0 }):
		return words.ByLine
	case len(work) == 1:
		return words.OneLine
	}
	return words.Lines.with(strconv.Itoa(len(work)))
}

// ruled writes one line of mathematics on its own ruled line.
func ruled(w *bytes.Buffer, class, lang, mathML string) {
	if mathML == "" {
		return
	}
	w.WriteString("<p")
	if class != "" {
		attribute(w, "class", class)
	}
	language(w, lang)
	w.WriteByte('>')
	w.WriteString(mathML)
	w.WriteString("</p>")
}

// restsFolded writes what the work rests on, folded into one line that says how sure it is.
func (r *Renderer) restsFolded(w *bytes.Buffer, list []Constant) {
	if len(list) == 0 {
		return
	}
	w.WriteString(`<details class="constants"><summary>`)
	element(w, "h3", "", r.words.Worksheet.Constants)
	w.WriteByte(' ')
	element(w, "small", "", strings.Join(r.kinds(list), "; "))
	w.WriteString("</summary>\n")
	r.constantList(w, list)
	w.WriteString("</details>\n")
}

// kinds names the kinds of sources of a list, each once.
func (r *Renderer) kinds(list []Constant) []string {
	var names []string
	for i := range list {
		if list[i].Kind == "" {
			continue
		}
		if name := strings.ToLower(r.words.Kinds.name(list[i].Kind)); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

func (r *Renderer) constants(w *bytes.Buffer, list []Constant) {
	if len(list) == 0 {
		return
	}
	w.WriteString(`<div class="constants">`)
	element(w, "h2", "", r.words.Worksheet.Constants)
	w.WriteByte('\n')
	r.constantList(w, list)
	w.WriteString("</div>\n")
}

func (r *Renderer) constantList(w *bytes.Buffer, list []Constant) {
	w.WriteString("<ul>\n")
	for i := range list {
		c := &list[i]
		w.WriteString("<li>")
		inLanguage(w, "b", c.TextLang, c.Text)
		w.WriteByte(' ')
		saidSentence(w, c.Lang, c.Label)
		saidSentence(w, c.NoteLang, c.Note)
		r.origin(w, c)
		w.WriteString("</li>\n")
	}
	w.WriteString("</ul>")
}

// origin writes the sources of a constant with their numbers in the page's list, the main one by its name, and how sure
// the constant is.
func (r *Renderer) origin(w *bytes.Buffer, c *Constant) {
	for i := range c.Origins {
		o := &c.Origins[i]
		if i > 0 {
			w.WriteString(", ")
		}
		switch {
		case o.Cite.Source == 0:
			said(w, o.Lang, o.Text)
		case i == 0:
			citeAs(w, o.Cite, func() { said(w, o.Lang, o.Text) })
		default:
			r.cite(w, o.Cite, o.Text)
		}
	}
	if c.Kind != "" {
		w.WriteString(". ")
		element(w, "i", "", r.words.Kinds.name(c.Kind))
	}
}

// worksheetFoot writes the way back to the example, and what opens the ways to take the worksheet along.
func (r *Renderer) worksheetFoot(w *bytes.Buffer, s *Worksheet) {
	w.WriteString(`<footer><button type="button"`)
	numbered(w, wire.Reset, s.Index)
	flag(w, wire.LiveOnly)
	w.WriteByte('>')
	text(w, r.words.Worksheet.Reset)
	w.WriteString(`</button><button type="button"`)
	flag(w, wire.Take)
	w.WriteByte('>')
	text(w, r.words.Paper.Take)
	w.WriteString("</button>")
	if len(s.Work) == 0 {
		r.code(w, s)
	}
	w.WriteString("</footer>\n")
}
