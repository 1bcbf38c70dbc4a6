package site

import (
	"cmp"
	"html/template"
	"strconv"
	"sync"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// worksheetView is a worksheet with the example's numbers in it.
func worksheetView(p *worksheet.Page, b *worksheet.Bound) *render.Worksheet {
	o := p.Example(b)
	v := &render.Worksheet{
		Index: b.Use.Index, Name: b.Block.Name, Title: cmp.Or(b.Title, b.Sheet.Title), Summary: b.Sheet.Summary,
	}
	for _, given := range b.Sheet.Givens {
		v.Givens = append(v.Givens, givenView(p, b, given))
	}
	for _, line := range o.Lines(marker(b.Use.Index)) {
		v.Work = append(v.Work, render.Line{
			When: line.When, Shown: line.Taken,
			Symbols: template.HTML(line.Symbols), Numbers: template.HTML(line.Numbers),
		})
	}
	for _, r := range b.Sheet.Answers() {
		v.Answers = append(v.Answers, answerView(o, r))
	}
	for i, remark := range b.Sheet.Remarks {
		v.Notes = append(v.Notes, noteView(o, i, remark))
	}
	v.Constants = constantViews(b.Sheet)
	return v
}

// constantViews lists the figures that the answers of a sheet rest on.
func constantViews(s *sheet.Sheet) []render.Constant {
	var views []render.Constant
	for _, c := range s.Constants {
		if c.OnlySlips {
			continue
		}
		views = append(views, render.Constant{
			Label: c.Label, Text: cmp.Or(c.Reads, c.Quantity.String()), Note: c.Note,
			Source: c.Source, Sureness: c.Sureness.String(),
		})
	}
	return views
}

// marker ties the numbers of the work to their cells.
func marker(index int) sheet.Marker {
	suffix := `" data-sheet="` + strconv.Itoa(index) + `"`
	return func(cell int) string { return ` data-show="` + strconv.Itoa(cell) + suffix }
}

func answerView(o sheet.Outcome, r *sheet.Result) render.Answer {
	q := o.Value(r.Name)
	cell, _ := o.Use.Cell(r.Name)
	v := render.Answer{
		Label: r.Label, Text: unit.Text(q.Value), Unit: q.Unit.String(),
		Cell: cell, Sheet: o.Use.Index,
	}
	if also, there := alsoOf(r); there {
		v.Also = append(v.Also, render.Conversion{
			Text: unit.Text(also.factor.Apply(q.Value)), Unit: also.text, By: also.factor.Text(),
		})
	}
	return v
}

// A conversion is a second unit that an answer is shown in.
type conversion struct {
	text   string
	factor unit.Factor
}

var conversions sync.Map // of conversion by *sheet.Result; the same calculation stands behind many worksheets

// alsoOf is the second unit of an answer. False if it has none.
func alsoOf(r *sheet.Result) (conversion, bool) {
	if r.Also == "" {
		return conversion{}, false
	}
	if known, ok := conversions.Load(r); ok {
		return known.(conversion), true
	}
	u := unit.MustParse(r.Also)
	factor, err := r.Unit.To(u)
	if err != nil {
		panic(err) // the sheet has refused it
	}
	c := conversion{u.String(), factor}
	conversions.Store(r, c)
	return c, true
}

func noteView(o sheet.Outcome, i int, remark *sheet.Remark) render.Note {
	when := o.Use.RemarkCell(i)
	v := render.Note{When: when, Shown: when < 0 || o.Cells[when] != 0, Refusal: remark.Signal == sheet.Refusal}
	if !v.Refusal {
		v.Signal = remark.Signal.String()
	}
	for _, piece := range remark.Pieces() {
		if piece.Name == "" {
			v.Pieces = append(v.Pieces, render.Piece{Text: piece.Text, Cell: -1})
			continue
		}
		cell, _ := o.Use.Cell(piece.Name)
		v.Pieces = append(v.Pieces, numberPieces(o.Value(piece.Name), cell)...)
	}
	return v
}

// label is what the reader sees for a given, step or answer.
func label(s *sheet.Sheet, name string) string {
	if g := s.FindGiven(name); g != nil {
		return g.Label
	}
	for _, r := range s.Results {
		if r.Name == name {
			return cmp.Or(r.Label, name)
		}
	}
	return name
}
