package site

import (
	"bytes"
	"slices"
	"strconv"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/drawing"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// drawing writes a picture that the numbers of a worksheet draw.
func (f *fragments) drawing(w *bytes.Buffer, b *markdown.Block) {
	f.drawings++
	f.renderer.Drawing(w, drawingView(f.page.Work, f.page.Work.Drawing(b)))
}

// drawingView is a picture with the example's numbers.
func drawingView(p *worksheet.Page, d *worksheet.Drawing) *render.Drawing {
	bound := d.Of
	o := p.Example(bound)
	v := &render.Drawing{Index: d.Index, Sheet: bound.Use.Index, Rule: d.Rule, Title: d.Title,
		Values: map[string]*render.DrawnValue{}}
	var numbers []drawing.Number
	cells := &strings.Builder{}
	for _, name := range d.Rule.Takes {
		number, guard := drawn(o, name)
		numbers = append(numbers, number)
		cell, _ := bound.Use.Cell(name)
		cells.WriteString(" " + strconv.Itoa(cell))
		if guard >= 0 {
			cells.WriteString("/" + strconv.Itoa(guard))
		}
	}
	v.Cells, v.Places = cells.String(), d.Rule.Work(numbers)
	for _, name := range slices.Concat(d.Rule.Takes, d.Rule.Groups) {
		v.Values[name] = drawnValue(p, bound, name, d.Rule.Also[name])
	}
	for _, group := range d.Rule.Groups { // it is there with its first value
		first := v.Values[group+"-"+d.Rule.Rows[0]]
		v.Values[group].There, v.Values[group].Out = first.There, first.Out
	}
	return v
}

// drawn is a value as a rule takes it, with the cell that is 0 while it is left out; -1 for what is always there.
func drawn(o sheet.Outcome, name string) (number drawing.Number, guard int) {
	ends := o.Range(name)
	number = drawing.Number{Low: ends.Low, High: ends.High, There: o.There(name) && o.Stated(name), Sure: true}
	guard = -1
	if cell, may := o.Use.There(name); may {
		guard = cell
	}
	if cell, may := o.Use.Presence(name); may {
		guard = cell
	}
	if guard >= 0 {
		number.Sure = o.Cells[guard] != 0
	}
	return number, guard
}

// inSecond is a given in a second unit, as answers have one: a picture is in one system of units.
func inSecond(o sheet.Outcome, name, second string) *render.Shown {
	cell, _ := o.Use.Cell(name)
	value := o.Range(name)
	c := conversionOf(value.Unit, unit.MustParse(second).Like(value.Unit))
	s := c.shown(o.Use, cell, value)
	if !o.Stated(name) {
		s.Text = render.Absent
	}
	return s
}

// drawnValue is a value with what it is called. A given may have a second unit here.
func drawnValue(p *worksheet.Page, b *worksheet.Bound, name, second string) *render.DrawnValue {
	v := &render.DrawnValue{Label: book.Label(b.Sheet, name), Lang: labelLang(p, b, name), There: -1}
	if cell, may := b.Use.There(name); may {
		v.There, v.Out = cell, !p.Example(b).There(name)
	}
	if given := b.Sheet.FindGiven(name); given != nil && len(given.Choices) > 0 {
		v.Shown = *chosen(p, b, given)
		v.Said = v.Shown
		return v
	}
	o := p.Example(b)
	v.Shown = *shown(o, name)
	if second != "" {
		v.Shown.Also = inSecond(o, name, second)
	}
	v.Said = described(v.Shown, o, name, second)
	return v
}

// described is a number with its units in words, as the description of a picture has it.
func described(v render.Shown, o sheet.Outcome, name, second string) render.Shown {
	if v.Day {
		return v
	}
	own, language := o.Range(name).Unit, o.Use.Language()
	v.Before, v.After = spokenAround(own, language)
	if v.Also != nil {
		other := *v.Also
		if second == "" {
			second = o.Use.Sheet.FindResult(name).Also
		}
		other.Before, other.After = spokenAround(unit.MustParse(second).Like(own), language)
		v.Also = &other
	}
	return v
}
