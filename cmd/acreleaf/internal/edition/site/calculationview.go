package site

import (
	"bytes"
	"cmp"
	"html/template"
	"slices"
	"strings"
	"sync"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/calc/words"
	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
)

// calculationAddress is where the page of a calculation is.
func calculationAddress(language string, s *sheet.Sheet) page.Address {
	return page.Address{Kind: kind.Calculation, Language: language,
		Name: kind.Calculation.Row().Folder + "/" + s.Name}
}

// usedSheets are the calculations that worksheets of a language use, in the order of the catalogue, and where.
func (c *common) usedSheets(language string) ([]*sheet.Sheet, map[*sheet.Sheet][]*book.Outline) {
	used, named := map[*sheet.Sheet][]*book.Outline{}, map[string]*sheet.Sheet{}
	for _, o := range c.book.Outlines {
		if o.Address.Language == language {
			for _, s := range o.Sheets {
				used[s], named[s.Name] = append(used[s], o), s
			}
		}
	}
	var sheets []*sheet.Sheet // in the language of their pages
	for _, name := range c.book.Catalogue.Names() {
		if s := named[name]; s != nil {
			sheets = append(sheets, s)
		}
	}
	return sheets, used
}

// uses says whether a worksheet of a language uses the calculation of a name.
func (c *common) uses(language, name string) bool {
	isNamed := func(s *sheet.Sheet) bool { return s.Name == name }
	return slices.ContainsFunc(c.book.Outlines, func(o *book.Outline) bool {
		return o.Address.Language == language && slices.ContainsFunc(o.Sheets, isNamed)
	})
}

// calculationPages are the pages of the calculations that worksheets of a language use, and the list of them.
func (c *common) calculationPages(language string, r *render.Renderer) []book.Part {
	sheets, used := c.usedSheets(language)
	if len(sheets) == 0 {
		return nil
	}
	tag := cmp.Or(language, c.Site.Languages[0])
	var pages []book.Part
	for _, s := range sheets {
		address := calculationAddress(language, s)
		pages = append(pages, part(address, func(w *bytes.Buffer) {
			v := c.calculationView(s, c.edition.newCitations(address), tag)
			v.Page = c.edition.frame(address, s.Title, s.Summary)
			v.Page.TitleLang, v.Page.SummaryLang = s.LangOf(s.Title, tag), s.LangOf(s.Summary, tag)
			v.Page.Up = up(address, r.Words())
			v.Page.Languages = c.sameInLanguages(address, func(code string) bool { return c.uses(code, s.Name) })
			for _, o := range used[s] {
				v.Used = append(v.Used, render.Link{Href: address.To(o.Address), Text: o.Title})
			}
			r.Calculation(w, v)
		}))
	}
	return append(pages, part(indexAddress(language, kind.Calculation.Row().Folder), func(w *bytes.Buffer) {
		r.Index(w, c.calculationIndex(language, sheets, r))
	}))
}

func (c *common) calculationView(s *sheet.Sheet, cited *citations, language string) *render.Calculation {
	told := func(text string) render.Told { return render.Told{Text: text, Lang: s.LangOf(text, language)} }
	v := &render.Calculation{Name: s.Name, Constants: cited.constants(s, language), Tables: figureViews(s, cited, told)}
	v.Code, v.CodeLang = c.code(s, language)
	v.Cited = cited.list
	for _, g := range s.Givens {
		asked := render.Asked{
			Name: g.Name, Label: g.Label, Hint: g.Hint, Takes: takes(g, language), Typical: g.Example(),
			Lang: told(g.Label).Lang, HintLang: told(g.Hint).Lang,
		}
		for i, o := range g.Choices {
			asked.Options, asked.Names = append(asked.Options, told(o.Label)), append(asked.Names, o.Name)
			if i == int(g.Typical) {
				asked.Typical = o.Label
			}
		}
		v.Givens = append(v.Givens, asked)
	}
	for _, a := range s.Answers() {
		asked := render.Asked{Name: a.Name, Label: a.Label, Lang: told(a.Label).Lang, Day: a.Date}
		if !a.Date {
			asked.Takes = a.Unit.String()
		}
		v.Answers = append(v.Answers, asked)
	}
	for _, slip := range s.Slips {
		v.Slips = append(v.Slips, told(slip.Text))
	}
	return v
}

// figureViews are the tables that a sheet looks its figures up in, those of one choice side by side.
func figureViews(s *sheet.Sheet, cited *citations, told func(string) render.Told) []render.Figures {
	var views []render.Figures
	at := map[*sheet.Given]int{}
	var choices []*sheet.Given
	for _, c := range s.Constants {
		if c.Table == nil {
			continue
		}
		choice := c.Table.Choice
		if _, begun := at[choice]; !begun {
			at[choice] = len(views)
			views, choices = append(views, figureRows(choice, told)), append(choices, choice)
		}
		v := &views[at[choice]]
		column := told(c.Label)
		column.Text = strings.TrimSuffix(column.Text+", "+c.Table.Unit.String(), ", ")
		v.Columns = append(v.Columns, column)
		for i := range c.Table.Cells {
			v.Rows[i].Cells = append(v.Rows[i].Cells, figureCell(c.Table, i, cited))
		}
	}
	for i, choice := range choices { // their notes are below the table
		for j, o := range choice.Choices {
			views[i].Rows[j].Sources = cited.numbersOf(o.Sources)
		}
	}
	return views
}

// figureCell is one figure, with the numbers of its sources.
func figureCell(t *sheet.Figures, option int, cited *citations) render.FigureCell {
	return render.FigureCell{Text: t.Text(option), Sources: cited.numbersOf(t.Cells[option].Sources)}
}

// figureRows is a table of a choice without its figures.
func figureRows(choice *sheet.Given, told func(string) render.Told) render.Figures {
	v := render.Figures{ID: "figures-" + choice.Name, Caption: told(choice.Label)}
	for _, o := range choice.Choices {
		v.Rows = append(v.Rows, render.FigureRow{Name: o.Name, Label: told(o.Label), Note: told(o.Note)})
	}
	return v
}

// takes says what can be written for a given: its options, or its range.
func takes(g *sheet.Given, language string) string {
	if len(g.Choices) > 0 {
		return ""
	}
	if g.Date {
		return sheet.ISODate(g.Low) + " " + words.InGeneral(language).To + " " + sheet.ISODate(g.High)
	}
	return unit.Range{Low: g.Low, High: g.High, Unit: g.Unit}.String()
}

var codes sync.Map // of template.HTML by *sheet.Sheet; the same function stands behind many worksheets

// code is the source behind a sheet, highlighted: Go, or what the author wrote; and its language, where that is not the
// language of the page.
func (c *common) code(s *sheet.Sheet, language string) (template.HTML, string) {
	if own, is := c.ownCode(s); is {
		return template.HTML(own), s.LangOf("", language)
	}
	if main, _, _ := strings.Cut(language, "-"); main != words.English {
		return goCode(s), words.English
	}
	return goCode(s), ""
}

// goCode is the function behind a sheet.
func goCode(s *sheet.Sheet) template.HTML {
	if known, ok := codes.Load(s); ok {
		return known.(template.HTML)
	}
	var w bytes.Buffer
	if source := calc.Source(s); source != "" {
		if err := markdown.Highlight(&w, "go", source); err != nil {
			w.Reset() // the page is whole without it
		}
	}
	html := template.HTML(w.String())
	codes.Store(s, html)
	return html
}

// ownCode is the text of an author's own calculation, highlighted; false for one of the standard catalogue.
func (c *common) ownCode(s *sheet.Sheet) (string, bool) {
	d := c.book.Own[s]
	if d == nil {
		return "", false
	}
	var w bytes.Buffer
	if err := markdown.Highlight(&w, "yaml", d.Text()); err != nil {
		w.Reset() // the page is whole without it
	}
	return w.String(), true
}
