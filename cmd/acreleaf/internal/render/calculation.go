package render

import (
	"bytes"
	"html/template"
)

// A Calculation is the page about one calculation: what it takes, what it rests on, the known wrong
// ways to work it, and the code itself.
type Calculation struct {
	Page      Page
	Name      string // "soil-nitrogen", as an author writes it
	Givens    []Asked
	Answers   []Asked
	Slips     []Told
	Constants []Constant
	Tables    []Figures
	Cited     []Reference   // what its numbers rest on, in the order of their numbers
	Used      []Link        // the pages that have a worksheet of it
	Code      template.HTML // its source, highlighted
	CodeLang  string        // of the texts in it, where that is not the language of the page
}

// CalculationWords is for the page about a calculation.
type CalculationWords struct {
	Name    Sentence `yaml:"name" blanks:"name"`
	Day     string   `yaml:"day"`
	Slips   string   `yaml:"slips"`
	Authors string   `yaml:"authors"`
	Code    string   `yaml:"code"`
}

// Asked is a given or an answer of a calculation, as its page lists it.
type Asked struct {
	Name, Label, Hint string
	Lang, HintLang    string   // of the label and the hint, where these are not in the language of the page
	Takes             string   // "0 to 200 ppm NO3-N"; of an answer its unit
	Options           []Told   // what can be chosen, as a reader sees it, and
	Names             []string // as an author writes it
	Typical           string   // "12 ppm NO3-N"; empty leaves the sentence out
	Day               bool     // of an answer: a day of the calendar
}

// Told is a text, and its language where that is not the language of the page.
type Told struct{ Text, Lang string }

// Figures is what a calculation looks up: a row for each thing that can be chosen.
type Figures struct {
	ID      string // unique in the page
	Caption Told
	Columns []Told // the heading of each figure, with its unit
	Rows    []FigureRow
}

// A FigureRow is one thing that can be chosen.
type FigureRow struct {
	Name        string
	Label, Note Told
	Cells       []FigureCell
	Sources     []int // of the note, as those of a cell
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
		head(w, &c.Page, nil)
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
		names(w, c.Givens)
		if c.Code != "" {
			element(w, "h2", "", words.Code)
			w.WriteByte('\n')
			code(w, c)
		}
		r.references(w, c.Cited)
		w.WriteString("</article>\n")
	}})
}

// code writes the source, marked where the texts in it are not in the language of the page.
func code(w *bytes.Buffer, c *Calculation) {
	if c.CodeLang == "" {
		w.WriteString(string(c.Code))
		return
	}
	w.WriteString("<div")
	language(w, c.CodeLang)
	w.WriteByte('>')
	w.WriteString(string(c.Code))
	w.WriteString("</div>\n")
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
		inLanguage(w, "dt", a.Lang, a.Label)
		w.WriteString("<dd>")
		saidSentence(w, a.HintLang, a.Hint)
		sentence(w, a.Takes)
		options(w, a.Options)
		if a.Day {
			sentence(w, r.words.Calculation.Day)
		}
		if a.Typical != "" {
			text(w, r.words.Worksheet.Typical.with(a.Typical))
			w.WriteByte(' ')
		}
		element(w, "code", "", a.Name)
		w.WriteString("</dd>\n")
	}
	w.WriteString("</dl>\n")
}

// options lists what can be chosen. A name may have a comma in it.
func options(w *bytes.Buffer, list []Told) {
	for i, o := range list {
		if i > 0 {
			w.WriteString("; ")
		}
		inLanguage(w, "span", o.Lang, o.Text)
	}
	if len(list) > 0 {
		w.WriteString(". ")
	}
}

// names lists for authors how what can be chosen is written.
func names(w *bytes.Buffer, givens []Asked) {
	for _, g := range givens {
		if len(g.Names) == 0 {
			continue
		}
		w.WriteString("<p>")
		element(w, "code", "", g.Name)
		w.WriteString(": ")
		for i, name := range g.Names {
			if i > 0 {
				w.WriteString(", ")
			}
			element(w, "code", "", name)
		}
		w.WriteString("</p>\n")
	}
}

func slips(w *bytes.Buffer, title string, list []Told) {
	if len(list) == 0 {
		return
	}
	element(w, "h2", "", title)
	w.WriteString("\n<ul>\n")
	for _, slip := range list {
		inLanguage(w, "li", slip.Lang, slip.Text)
		w.WriteByte('\n')
	}
	w.WriteString("</ul>\n")
}
