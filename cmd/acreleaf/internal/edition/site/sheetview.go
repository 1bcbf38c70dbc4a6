package site

import (
	"html/template"
	"slices"
	"strconv"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/wire"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// worksheetView is a worksheet with the example's numbers in it.
func worksheetView(p *worksheet.Page, b *worksheet.Bound, c *citations) *render.Worksheet {
	o := p.Example(b)
	v := &render.Worksheet{
		Index: b.Use.Index, Name: b.Block.Name, Title: b.Title,
		Summary: b.Sheet.Summary, SummaryLang: b.Sheet.LangOf(b.Sheet.Summary, p.Graph.Language),
	}
	if v.Title == "" {
		v.Title, v.TitleLang = b.Sheet.Title, titleLang(p, b)
	}
	for _, given := range b.Sheet.Givens {
		v.Givens = append(v.Givens, givenView(p, b, given))
	}
	v.Work = lineViews(o, b)
	v.Answers, v.Compared = answerViews(p, b, o)
	for i, remark := range b.Sheet.Remarks {
		v.Notes = append(v.Notes, noteView(o, i, remark))
	}
	if headline := b.Sheet.Headline; headline != nil {
		for i, c := range headline.Cases {
			v.Words = append(v.Words, spokenView(o, b.Use.CaseCell(i), c))
		}
	}
	v.Constants = withoutNotes(c.constants(b.Sheet, p.Graph.Language))
	return v
}

// lineViews are the lines of the work.
func lineViews(o sheet.Outcome, b *worksheet.Bound) []render.Line {
	var list []render.Line
	for _, line := range o.Lines(marker(b)) {
		work := render.Line{
			When: line.When, Shown: line.Taken, Symbols: template.HTML(line.Symbols), Bare: line.Bare,
			Lang: b.Sheet.LangOf(line.Result.Label, o.Use.Language()),
		}
		for _, numbers := range line.Numbers {
			work.Numbers = append(work.Numbers, template.HTML(numbers))
		}
		list = append(list, work)
	}
	return list
}

// withoutNotes leaves the notes of figures to the calculation's own page, to which each worksheet leads: where sources
// differ, and what a figure is for.
func withoutNotes(list []render.Constant) []render.Constant {
	for i := range list {
		list[i].Note = ""
	}
	return list
}

// marker ties the numbers of the work to their cells.
func marker(b *worksheet.Bound) sheet.Marker {
	kinds := map[int]string{}
	for _, name := range b.Sheet.Names() {
		cell, _ := b.Use.Cell(name)
		switch {
		case b.Sheet.IsDate(name):
			kinds[cell] = " " + wire.Day
		case b.Use.TypedElsewhere(name):
			kinds[cell] = " " + wire.Typed
		}
	}
	return func(cell int) string { return " " + wire.Show + `="` + strconv.Itoa(cell) + `"` + kinds[cell] }
}

// answerViews gives the answers, the headline first, and those that are compared.
func answerViews(p *worksheet.Page, b *worksheet.Bound, o sheet.Outcome) ([]render.Answer, *render.Comparison) {
	var first, rest []render.Answer
	var compared *render.Comparison
	for _, r := range b.Sheet.Answers() {
		switch {
		case r.Twin != "":
		case r.Of != nil:
			if compared == nil {
				compared = new(render.Comparison)
			}
			compare(compared, p, b, o, r)
		default:
			if headline := b.Sheet.Headline; headline != nil && headline.Answer == r.Name {
				first = append(first, answerView(o, r))
			} else {
				rest = append(rest, answerView(o, r))
			}
		}
	}
	return append(first, rest...), compared
}

// compare puts an answer into its row, and its column after those that are there.
func compare(c *render.Comparison, p *worksheet.Page, b *worksheet.Bound, o sheet.Outcome, r *sheet.Result) {
	row := slices.IndexFunc(c.Rows, func(one render.ComparedRow) bool { return one.Label == r.Row })
	if row < 0 {
		row = len(c.Rows)
		c.Rows = append(c.Rows, render.ComparedRow{Label: r.Row, Lang: b.Sheet.LangOf(r.Row, p.Graph.Language)})
	}
	if row == 0 {
		c.Columns = append(c.Columns, render.Compared{Label: r.Of.Label, Shown: *chosen(p, b, r.Of),
			Lang: b.Sheet.LangOf(r.Of.Label, p.Graph.Language)})
	}
	c.Rows[row].Answers = append(c.Rows[row].Answers, answerView(o, r))
}

func answerView(o sheet.Outcome, r *sheet.Result) render.Answer {
	v := render.Answer{Label: r.Label, Lang: o.Use.Sheet.LangOf(r.Label, o.Use.Language()),
		Shown: *shown(o, r.Name), There: -1, Out: !o.There(r.Name)}
	if cell, may := o.Use.There(r.Name); may {
		v.There = cell
	}
	return v
}

func noteView(o sheet.Outcome, i int, remark *sheet.Remark) render.Note {
	v := spokenView(o, o.Use.RemarkCell(i), remark)
	v.Refusal = remark.Signal == sheet.Refusal
	if !v.Refusal {
		v.Signal = remark.Signal.String()
	}
	return v
}

// holds says for the example whether the condition in a cell holds, -1 for always: for some of its ranges at least;
// not for all of them; and whether it is in doubt that it holds for any.
func holds(cell int, low, high []float64) (some, partly, perhaps bool) {
	if cell < 0 {
		return true, false, false
	}
	some = high[cell] != 0
	return some, some && low[cell] == 0, high[cell] == sheet.Doubt
}

// spokenView is a sentence that is said while its cell is not 0.
func spokenView(o sheet.Outcome, when int, remark *sheet.Remark) render.Note {
	v := render.Note{When: when, Lang: o.Use.Sheet.LangOf(remark.Text, o.Use.Language())}
	v.Shown, v.Partly, v.Perhaps = holds(when, o.Cells, o.High)
	v.Shown = v.Shown && !(remark.Words && v.Perhaps) // the answer in words says nothing that is in doubt
	o = o.Where(when)
	for _, piece := range remark.Pieces() {
		if piece.Name == "" {
			v.Pieces = append(v.Pieces, render.Piece{Text: piece.Text})
			continue
		}
		number := shown(o, piece.Name)
		switch {
		case remark.Words:
			inWords(number, o, piece)
		case piece.Bare:
			number.Before, number.After, number.Also, number.Kind = "", "", nil, nil
		default:
			number.Also = nil // the words around it are about its own unit
		}
		v.Pieces = append(v.Pieces, render.Piece{Shown: number})
	}
	return v
}
