package site

import (
	"slices"
	"strconv"
	"sync"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

func givenView(p *worksheet.Page, b *worksheet.Bound, g *sheet.Given) render.Given {
	cell, _ := b.Use.Cell(g.Name)
	v := render.Given{
		ID: b.Block.Name + "-" + g.Name, Label: g.Label, Hint: g.Hint,
		Kind: render.KindNumber, Cell: cell, Presence: -1, Unit: g.Unit.String(),
		Low: g.Low, High: g.High, Optional: g.Optional,
	}
	if link, linked := b.From(g.Name); linked {
		from := p.Find(link.Use)
		v.Kind, v.Hint = render.KindLinked, ""
		v.Outside, _ = b.Use.Outside(g.Name)
		v.LowText, v.HighText = unit.Text(g.Low), unit.Text(g.High)
		v.Text = unit.Text(p.Cells[cell])
		v.From = &render.Link{Href: "#" + render.Anchor(link.Use), Text: title(from)}
		return v
	}
	if presence, ok := b.Use.Presence(g.Name); ok {
		v.Presence = presence
		v.Typical = g.Example()
	}
	entry, filled := b.Entries[g.Name]
	if len(g.Choices) > 0 {
		v.Kind = render.KindChoice
		for i, option := range g.Choices {
			v.Choices = append(v.Choices, render.Choice{Text: option.Label, Value: i, Selected: float64(i) == entry.Value})
		}
		return v
	}
	chosen := g.Unit
	if filled {
		v.Text, v.Start, chosen = strconv.FormatFloat(entry.Typed, 'f', -1, 64), entry.Value, entry.Unit
	}
	fillUnits(&v, g, chosen)
	return v
}

func title(b *worksheet.Bound) string {
	if b.Title != "" {
		return b.Title
	}
	return b.Sheet.Title
}

// fillUnits lists the units that a given can be typed in, the chosen one selected, and writes the allowed range in it.
func fillUnits(v *render.Given, g *sheet.Given, chosen unit.Unit) {
	units := unitsOf(g)
	isChosen := func(o unitOption) bool { return o.text == chosen.String() }
	if !slices.ContainsFunc(units, isChosen) {
		units = append(slices.Clip(units), newUnitOption(chosen, g))
	}
	for _, o := range units {
		selected := isChosen(o)
		if selected {
			v.LowText, v.HighText, v.Unit = o.low, o.high, o.text
		}
		if len(units) > 1 {
			v.Units = append(v.Units, render.UnitOption{Text: o.text, Factor: o.factor, Selected: selected})
		}
	}
}

// A unitOption is a unit that a given can be typed in, with the factor to its own and its range as they are shown.
type unitOption struct{ text, factor, low, high string }

func newUnitOption(u unit.Unit, g *sheet.Given) unitOption {
	factor, err := u.To(g.Unit)
	if err != nil {
		panic(err) // the sheet or Read has refused it
	}
	back := unit.Factor{Multiply: factor.Divide, Divide: factor.Multiply}
	return unitOption{u.String(), factor.Text(), unit.Text(back.Apply(g.Low)), unit.Text(back.Apply(g.High))}
}

var unitOptions sync.Map // of []unitOption by *sheet.Given; the same calculation stands behind many worksheets

// unitsOf lists the units that a given is offered in, its own first.
func unitsOf(g *sheet.Given) []unitOption {
	if known, ok := unitOptions.Load(g); ok {
		return known.([]unitOption)
	}
	units := []unitOption{newUnitOption(g.Unit, g)}
	for _, text := range g.Units {
		units = append(units, newUnitOption(unit.MustParse(text), g))
	}
	unitOptions.Store(g, units)
	return units
}

// tableView is a reckoner with its grid filled in.
func tableView(p *worksheet.Page, b *worksheet.Bound) *render.Table {
	t := b.Table
	show, _ := b.Sheet.UnitOf(t.Show)
	v := &render.Table{
		Sheet: b.Use.Index, Caption: b.Title,
		RowLabel: label(b.Sheet, t.Down.Given), ColLabel: label(b.Sheet, t.Across.Given),
		Rows: axisTexts(t.Down), Cols: axisTexts(t.Across),
	}
	for i, other := range p.Tables() {
		if other == b {
			v.Index = i
		}
	}
	if v.Caption == "" {
		v.Caption = label(b.Sheet, t.Show) + ", " + show.String()
	}
	if t.Mark != nil {
		v.MarkText = t.Mark.Text
	}
	nearRow, nearCol := -1, -1
	if down, across, ok := p.Followed(b); ok {
		v.FollowText = title(p.Find(t.Follow))
		nearRow, nearCol = t.Down.Nearest(p.Cells[down]), t.Across.Nearest(p.Cells[across])
	}
	for i, row := range t.Values {
		cells := make([]render.Cell, len(row))
		for j := range row {
			r := unit.Range{Low: row[j], High: t.High[i][j]}
			cells[j] = render.Cell{Text: r.Numbers(), Marked: t.Marked(i, j), Near: i == nearRow && j == nearCol}
		}
		v.Cells = append(v.Cells, cells)
	}
	return v
}

func axisTexts(a worksheet.Axis) []string {
	var texts []string
	for i := range a.Values {
		texts = append(texts, a.At(i))
	}
	return texts
}
