package site

import (
	"math"
	"slices"
	"strconv"
	"sync"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/calc/words"
	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

func givenView(p *worksheet.Page, b *worksheet.Bound, g *sheet.Given) render.Given {
	cell, _ := b.Use.Cell(g.Name)
	v := render.Given{
		ID: b.Block.Name + "-" + g.Name, Label: g.Label, Hint: g.Hint, Lang: b.Sheet.LangOf(g.Label, p.Graph.Language),
		HintLang: b.Sheet.LangOf(g.Hint, p.Graph.Language),
		Kind:     render.KindNumber, Cell: cell, Presence: -1, Others: -1, Unit: g.Unit.String(),
		Low: g.Low, High: g.High, Optional: g.Optional,
	}
	if link, linked := b.From(g.Name); linked {
		linkedView(&v, p, b, g, link)
		return v
	}
	if presence, ok := b.Use.Presence(g.Name); ok {
		v.Presence = presence
		v.Typical = g.Example()
	}
	if others, ok := b.Use.OtherCell(g.Name); ok {
		v.Others = others
	}
	if forms, ok := b.Use.FormCell(g.Name); ok {
		v.Others = forms // no given has a second kind as well
	}
	for _, choice := range g.For {
		source, name := origin(p, b, choice.Name)
		chosen, _ := source.Use.Cell(name)
		v.For = append(v.For, chosen)
	}
	entry, filled := b.Entries[g.Name]
	if len(g.Choices) > 0 {
		v.Kind = render.KindChoice
		for i, option := range g.Choices {
			v.Choices = append(v.Choices, render.Choice{Text: option.Label, Selected: float64(i) == entry.Value})
		}
		return v
	}
	if filled {
		v.Text, v.Start, v.StartTop = typed(b.Use, g, entry), entry.Value, entry.High
	}
	v.Lab = g.Lab
	if entry.Below {
		v.Below = unit.Text(entry.TypedHigh)
	}
	if g.Date {
		v.Day = &render.Days{First: sheet.ISODate(g.Low), Last: sheet.ISODate(g.High)}
		v.LowText, v.HighText = b.Use.DayText(g.Low), b.Use.DayText(g.High)
		return v
	}
	chosen := g.Unit
	if filled {
		chosen = entry.Unit
	}
	fillUnits(&v, g, chosen, entry)
	return v
}

// linkedView is a given that takes its value from another worksheet.
func linkedView(v *render.Given, p *worksheet.Page, b *worksheet.Bound, g *sheet.Given, link sheet.Link) {
	from := p.Find(link.Use)
	v.Kind, v.Hint = render.KindLinked, ""
	v.Outside, _ = b.Use.Outside(g.Name)
	v.LowText, v.HighText = unit.Text(g.Low), unit.Text(g.High)
	source, given := origin(p, b, g.Name)
	if len(g.Choices) > 0 {
		v.Taken = chosen(p, b, g)
	} else {
		v.Taken = shown(p.Example(b), g.Name)
	}
	if presence, optional := source.Use.Presence(given); optional {
		v.Taken.Presence = presence
		if p.Cells[presence] == 0 {
			v.Taken.Text = render.Absent
		}
	}
	v.From = &render.Link{Href: "#" + construct.Anchor(link.Use), Text: title(from)}
	v.FromLang = titleLang(p, from)
}

// chosen is the option that a choice has, tied to the list that it is chosen from.
func chosen(p *worksheet.Page, b *worksheet.Bound, g *sheet.Given) *render.Shown {
	v := shown(p.Example(b), g.Name)
	source, given := origin(p, b, g.Name)
	v.Text, v.List = g.Choices[int(p.Cells[v.Cell])].Label, source.Block.Name+"-"+given
	return v
}

// typed is an entry as the field shows it: "12", "3 to 4", "<5", "2027-04-15".
func typed(use *sheet.Use, g *sheet.Given, e sheet.Entry) string {
	write := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	if g.Date {
		write = sheet.ISODate
	}
	if e.Below {
		return "<" + write(e.TypedHigh)
	}
	return use.RangeText(write(e.Typed), write(e.TypedHigh))
}

// origin is the worksheet and the name that a linked given takes its value from in the end: each may be linked in turn.
func origin(p *worksheet.Page, b *worksheet.Bound, given string) (*worksheet.Bound, string) {
	for link, linked := b.From(given); linked; link, linked = b.From(given) {
		b, given = p.Find(link.Use), link.Name
	}
	return b, given
}

func title(b *worksheet.Bound) string {
	if b.Title != "" {
		return b.Title
	}
	return b.Sheet.Title
}

// titleLang is the language of that title, where it is not that of the page.
func titleLang(p *worksheet.Page, b *worksheet.Bound) string {
	if b.Title != "" {
		return ""
	}
	return b.Sheet.LangOf(b.Sheet.Title, p.Graph.Language)
}

// fillUnits lists the units that a given can be typed in, the chosen one selected, and writes the allowed range in it.
// The chosen one is of the given's second kind of quantity, or of its first.
func fillUnits(v *render.Given, g *sheet.Given, chosen unit.Unit, entry sheet.Entry) {
	units := unitsOf(g)
	isChosen := func(o unitOption) bool { return o.text == chosen.String() && (o.second != nil) == entry.Other }
	if !slices.ContainsFunc(units, isChosen) {
		units = append(slices.Clip(units), newUnitOption(chosen, g, entry))
	}
	for _, o := range units {
		selected := isChosen(o)
		if selected {
			v.LowText, v.HighText, v.Unit = o.low, o.high, o.text
		}
		if len(units) > 1 {
			v.Units = append(v.Units, render.UnitOption{Text: o.text, Factor: o.factor, Selected: selected, Second: o.second,
				Form: o.form})
		}
	}
}

// A unitOption is a unit that a given can be typed in, with the factor to its own and its range as they are shown.
type unitOption struct {
	text, factor, low, high string
	unit                    unit.Unit
	second                  *render.Limits // of the second kind of quantity
	form                    int            // the form that it tells, 0 for none
}

func newUnitOption(u unit.Unit, g *sheet.Given, of sheet.Entry) unitOption {
	limits := render.Limits{Low: g.Low, High: g.High}
	if of.Other {
		limits = render.Limits{Low: g.Else.Low, High: g.Else.High}
	}
	factor, err := u.For(g.UnitFor(of))
	if err != nil {
		panic(err) // the sheet or Read has refused it
	}
	back := factor.Inverse()
	o := unitOption{
		text: u.String(), unit: u, factor: factor.Text(),
		low: unit.Text(back.Apply(limits.Low)), high: unit.Text(back.Apply(limits.High)),
	}
	o.form = of.Form
	if of.Other {
		o.second = &limits
	}
	return o
}

var unitOptions sync.Map // of []unitOption by *sheet.Given; the same calculation stands behind many worksheets

// unitsOf lists the units that a given is offered in, its own first, that of its second kind last.
func unitsOf(g *sheet.Given) []unitOption {
	if known, ok := unitOptions.Load(g); ok {
		return known.([]unitOption)
	}
	units := []unitOption{newUnitOption(g.Unit, g, sheet.Entry{})}
	for _, text := range g.Units {
		units = append(units, newUnitOption(unit.MustParse(text).Like(g.Unit), g, sheet.Entry{}))
	}
	if g.Else.Unit != "" {
		units = append(units, newUnitOption(secondUnit(g), g, sheet.Entry{Other: true}))
	}
	unitOptions.Store(g, units)
	return units
}

// labelLang is the language of the label of a given, step or answer, where it is not that of the page.
func labelLang(p *worksheet.Page, b *worksheet.Bound, name string) string {
	return b.Sheet.LangOf(book.Label(b.Sheet, name), p.Graph.Language)
}

// tableView is a reckoner with its grid filled in.
func tableView(p *worksheet.Page, b *worksheet.Bound) *render.Table {
	t := b.Table
	show, _ := b.Sheet.UnitOf(t.Show)
	v := &render.Table{
		Sheet: b.Use.Index, Caption: b.Title, Day: b.Sheet.IsDate(t.Show), Cents: show.IsMoney(),
		RowLabel: book.Label(b.Sheet, t.Down.Given), ColLabel: book.Label(b.Sheet, t.Across.Given),
		Rows: axisTexts(t.Down), Cols: axisTexts(t.Across),
		RowLang: labelLang(p, b, t.Down.Given), ColLang: labelLang(p, b, t.Across.Given),
	}
	for i, other := range p.Tables() {
		if other == b {
			v.Index = i
		}
	}
	if v.Caption == "" {
		v.Caption, v.CaptionLang = book.Label(b.Sheet, t.Show), labelLang(p, b, t.Show)
		if !v.Day {
			v.Caption += ", " + show.String()
		}
	}
	if t.Mark != nil {
		v.MarkText = markText(t.Mark, b.Use.Language())
	}
	nearRow, nearCol := -1, -1
	if down, across, ok := p.Followed(b); ok {
		v.FollowText, v.FollowLang = title(p.Find(t.Follow)), titleLang(p, p.Find(t.Follow))
		nearRow, nearCol = t.Down.Nearest(p.Cells[down]), t.Across.Nearest(p.Cells[across])
	}
	for i, row := range t.Values {
		cells := make([]render.Cell, len(row))
		for j := range row {
			cells[j] = render.Cell{
				Text:   cellText(b.Use, v.Day, show, row[j], t.High[i][j]),
				Marked: t.Marked(i, j), Near: i == nearRow && j == nearCol,
			}
		}
		v.Cells = append(v.Cells, cells)
	}
	return v
}

// markText is what a mark takes in, in the author's unit.
func markText(m *worksheet.Mark, language string) string {
	typed := m.Typed
	typed.Unit = typed.Unit.In(language)
	switch {
	case math.IsInf(m.High, 1):
		return words.InGeneral(language).AtLeast + " " + typed.String()
	case math.IsInf(m.Low, -1):
		return words.InGeneral(language).AtMost + " " + typed.String()
	}
	return typed.String()
}

// cellText is an answer of a reckoner, without its unit.
func cellText(use *sheet.Use, day bool, u unit.Unit, low, high float64) string {
	write := u.Number
	if day {
		write = use.DayText
	}
	return use.RangeText(write(low), write(high))
}

func axisTexts(a worksheet.Axis) []string {
	var texts []string
	for i := range a.Values {
		texts = append(texts, a.At(i))
	}
	return texts
}
