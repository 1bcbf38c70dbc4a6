package render

import (
	"bytes"
	"html/template"
)

// A Calculation is the page behind the worksheets of one calculation: what it takes, what it rests on, the known wrong
// ways to work it, and the code itself.
type Calculation struct {
	Page      Page
	Name      string // "soil-nitrogen", as an author writes it
	Givens    []Asked
	Answers   []Asked
	Slips     []string
	Constants []Constant
	Tables    []Figures
	Cited     []Reference   // what its numbers rest on, in the order of their numbers
	Used      []Link        // the pages that have a worksheet of it
	Code      template.HTML // its source, highlighted
}

// Asked is a given or an answer of a calculation, as its page lists it.
type Asked struct {
	Name, Label, Hint string
	Takes             string // "0 to 200 ppm NO3-N", or the options; of an answer its unit
	Typical           string // "12 ppm NO3-N"; empty leaves the sentence out
}

// Figures is what a calculation looks up: a row for each thing that can be chosen.
type Figures struct {
	ID      string // unique in the page
	Caption string
	Columns []string // the heading of each figure, with its unit
	Rows    []FigureRow
}

// A FigureRow is one thing that can be chosen.
type FigureRow struct {
	Name, Label, Note string
	Cells             []FigureCell
	Sources           []int // of the note, as those of a cell
}

// A FigureCell is one figure, with the numbers of its sources in the list of the page.
type FigureCell struct {
	Text    string
	Sources []int
}

// Calculation writes the page of a calculation.
func (r *Renderer) Calculation(w *bytes.Buffer, c *Calculation) {
	words := &r.words.Calculation
	r.write(w, &filling{page: &c.Page, main: func(w *bytes.Buffer) {
		head(w, c.Page.Title, c.Page.Summary, nil)
		w.WriteString("<article class=\"calculation\">\n")
		r.usedIn(w, c.Used)
		r.asked(w, r.words.Worksheet.Given, c.Givens)
		r.asked(w, r.words.Worksheet.Answer, c.Answers)
		slips(w, words.Slips, c.Slips)
		r.constants(w, c.Constants)
		for i := range c.Tables {
			r.figures(w, &c.Tables[i])
		}
		element(w, "h2", "", words.Authors)
		w.WriteString("\n<p>")
		words.Name.write(w, func(string) { element(w, "code", "", c.Name) })
		w.WriteString("</p>\n")
		if c.Code != "" {
			element(w, "h2", "", words.Code)
			w.WriteByte('\n')
			w.WriteString(string(c.Code))
		}
		r.references(w, c.Cited)
		w.WriteString("</article>\n")
	}})
}

func (r *Renderer) usedIn(w *bytes.Buffer, pages []Link) {
	if len(pages) > 0 {
		r.cited(w, pages)
	}
}

// asked lists givens or answers.
func (r *Renderer) asked(w *bytes.Buffer, title string, list []Asked) {
	element(w, "h2", "", title)
	w.WriteString("\n<dl>\n")
	for _, a := range list {
		element(w, "dt", "", a.Label)
		w.WriteString("<dd>")
		sentence(w, a.Hint)
		sentence(w, a.Takes)
		if a.Typical != "" {
			text(w, r.words.Worksheet.Typical.with(a.Typical))
			w.WriteByte(' ')
		}
		element(w, "code", "", a.Name)
		w.WriteString("</dd>\n")
	}
	w.WriteString("</dl>\n")
}

func slips(w *bytes.Buffer, title string, list []string) {
	if len(list) == 0 {
		return
	}
	element(w, "h2", "", title)
	w.WriteString("\n<ul>\n")
	for _, slip := range list {
		w.WriteString("<li>")
		text(w, slip)
		w.WriteString("</li>\n")
	}
	w.WriteString("</ul>\n")
}
