package site

import (
	"bytes"
	"math"
	"slices"
	"strconv"
	"strings"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/render"
)

// reference writes a table that calculations take their figures from.
func (f *fragments) reference(w *bytes.Buffer, b *markdown.Block) {
	bound := f.page.Work.Reference(b)
	v := &render.ReferenceTable{Index: b.Index, Table: bound.Table.Name, Caption: bound.Title,
		Columns: append(bound.Table.Columns[:1:1], bound.Columns...)}
	for _, m := range calc.Materials(f.page.Language) {
		row := render.ReferenceRow{Name: m.Name}
		for _, column := range bound.Columns {
			cell, sources := materialCells[column](m)
			cell.Sources = f.cited.numbersOf(sources)
			row.Cells = append(row.Cells, cell)
		}
		v.Rows = append(v.Rows, row)
	}
	f.renderer.ReferenceTable(w, v)
}

// materialCells has what each column of the table of materials shows of one, and the sources of that.
var materialCells = map[string]func(calc.Material) (render.ReferenceCell, []string){
	"name": func(m calc.Material) (render.ReferenceCell, []string) {
		return saying(render.Plain, m.Label), nil
	},
	"note": func(m calc.Material) (render.ReferenceCell, []string) {
		return saying(render.Plain, m.Note), m.NoteSources
	},
	"nitrogen": func(m calc.Material) (render.ReferenceCell, []string) {
		return saying(render.Plain, percent(m.Nitrogen.Value)), m.Nitrogen.Sources
	},
	"forms":  formsCell,
	"weight": weightCell,
	"lime":   limeCell,
	"apart":  apartCell,
}

// saying is a cell of one part.
func saying(words render.ReferenceWord, text string) render.ReferenceCell {
	return render.ReferenceCell{Parts: []render.ReferencePart{{Words: words, Text: text}}}
}

// noBreak keeps a unit on the line of its number.
const noBreak = "\u00A0"

// digits is a figure of the table with all of its digits, as its sources print it.
func digits(figure float64) string { return strconv.FormatFloat(figure, 'f', -1, 64) }

func percent(share float64) string { return digits(share) + noBreak + "%" }

// formsCell tells the shares of the nitrogen that are in each form.
func formsCell(m calc.Material) (render.ReferenceCell, []string) {
	if math.IsNaN(m.Nitrate) {
		return saying(render.OnLabel, ""), nil
	}
	var cell render.ReferenceCell
	for _, form := range []struct {
		words render.ReferenceWord
		share float64
	}{{render.Nitrate, m.Nitrate}, {render.Ammonium, m.Ammonium}, {render.Urea, m.Urea}} {
		if form.share > 0 {
			cell.Parts = append(cell.Parts, render.ReferencePart{Words: form.words, Text: percent(form.share)})
		}
	}
	return cell, m.FormSources
}

// weightCell tells the weight of a gallon. That of some liquids no source gives.
func weightCell(m calc.Material) (render.ReferenceCell, []string) {
	switch {
	case !m.Liquid:
		return saying(render.Dry, ""), nil
	case math.IsNaN(m.Gallon.Value):
		return saying(render.OnTicket, ""), nil
	}
	return saying(render.Plain, pounds(m.Gallon)), m.Gallon.Sources
}

func pounds(c sheet.Cell) string { return digits(math.Abs(c.Value)) + noBreak + "lb" }

// limeCell tells what a pound of the nitrogen does to the soil.
func limeCell(m calc.Material) (render.ReferenceCell, []string) {
	words := render.LowersPH
	if m.Lime.Value < 0 {
		words = render.RaisesPH
	}
	return saying(words, pounds(m.Lime)), m.Lime.Sources
}

// apartCell tells what the material must not meet, a part for each signal word.
func apartCell(m calc.Material) (render.ReferenceCell, []string) {
	if len(m.Apart) == 0 {
		return saying(render.NothingListed, ""), nil
	}
	var cell render.ReferenceCell
	var names, sources []string
	for i, meeting := range m.Apart {
		names = append(names, meeting.With)
		for _, id := range meeting.Sources {
			if !slices.Contains(sources, id) {
				sources = append(sources, id)
			}
		}
		if i+1 == len(m.Apart) || m.Apart[i+1].Signal != meeting.Signal {
			cell.Parts = append(cell.Parts, render.ReferencePart{Signal: meeting.Signal.String(),
				Text: strings.Join(names, ", ")})
			names = nil
		}
	}
	return cell, sources
}
