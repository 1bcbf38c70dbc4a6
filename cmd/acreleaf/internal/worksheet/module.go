package worksheet

import (
	"fmt"
	"maps"
	"slices"

	"acreleaf/calc/practice"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/wire"
	"acreleaf/wasm"
)

// Module is the data block of the page: the module that works every worksheet, and which cells of it the script must
// know. It is nil for a page without worksheets.
func (p *Page) Module() ([]byte, error) {
	if len(p.parts) == 0 {
		return nil, nil
	}
	code, err := wasm.Compile(p.Graph.Program)
	if err != nil {
		return nil, fmt.Errorf("the worksheets cannot be compiled: %w", err)
	}
	data := wire.Data{Module: code, Guards: p.guards()}
	for _, b := range p.parts {
		data.Sheets = append(data.Sheets, wire.Part{After: b.Use.After, Refusals: refusals(b)})
		for _, t := range b.Use.Trends() {
			trend := wire.Trend{Of: t.Of, From: t.From}
			if t.Up {
				trend.Up = 1
			}
			data.Trends = append(data.Trends, trend)
		}
	}
	for _, passage := range p.Passages {
		data.Sheets = append(data.Sheets, wire.Part{After: passage.Asked.After, Refusals: passage.Asked.Refusals()})
	}
	for _, b := range p.Tables() {
		data.Fixed = append(data.Fixed, p.fixed(b)...)
		data.Tables = append(data.Tables, p.grid(b))
	}
	for _, e := range p.Exercises {
		data.Fixed = append(data.Fixed, p.dealt(e)...)
		data.Exercises = append(data.Exercises, varying(e))
	}
	return data.JSON(), nil
}

// varying is what the page's script must know of an exercise.
func varying(e *Exercise) wire.Varying {
	deal := e.Placed.Deal()
	v := wire.Varying{Deal: wire.Deal{Offset: deal.Offset, Stride: deal.Stride, Of: deal.Of}, Cards: e.Cards}
	for _, b := range e.Bounds {
		v.Sheets = append(v.Sheets, b.Use.Index)
	}
	for _, p := range e.Placed.Picks() {
		pick := wire.Pick{Cells: p.Cells}
		for _, value := range p.Varied.Values {
			pick.Values = append(pick.Values, value.Value)
			pick.Names = append(pick.Names, practice.CardText(p.Given, value))
		}
		v.Picks = append(v.Picks, pick)
	}
	for _, line := range e.Practice.Report {
		if line.Given.Given == "" {
			own := e.Practice.LineDeal(line)
			v.Picks = append(v.Picks, wire.Pick{Names: line.Values,
				Alone: &wire.Deal{Offset: own.Offset, Stride: own.Stride, Of: own.Of}})
		}
	}
	for _, p := range e.Placed.Steps {
		ask := wire.Ask{Digits: p.Digits, Right: p.RightCell()}
		ask.Answer, ask.Bare, ask.Told = p.HeardCells()
		v.Asks = append(v.Asks, ask)
	}
	return v
}

// dealt gives the inputs of an exercise with the numbers of its first card, and the right answers as what was heard.
func (p *Page) dealt(e *Exercise) []wire.Fixed {
	var list []wire.Fixed
	for _, b := range e.Bounds {
		for _, given := range b.Sheet.Givens {
			if _, linked := b.Use.Links[given.Name]; linked {
				continue
			}
			for _, at := range []func(string) (int, bool){b.Use.Cell, b.Use.Presence, b.Use.OtherCell, b.Use.FormCell} {
				if cell, there := at(given.Name); there {
					list = append(list, wire.Fixed{Cell: cell, Low: p.Cells[cell], High: p.High[cell]})
				}
			}
		}
	}
	return list
}

// Tables lists the reckoners in the order of the module's data.
func (p *Page) Tables() []*Bound {
	var tables []*Bound
	for _, b := range p.Sheets {
		if b.Kind == construct.Reckoner {
			tables = append(tables, b)
		}
	}
	return tables
}

// refusals lists the cells that withhold the answers of a block when they are not 0: its refusals, and linked values
// that are outside their range.
func refusals(b *Bound) []int {
	if b.Use.Quiet {
		return nil
	}
	var cells []int
	for i, remark := range b.Sheet.Remarks {
		if remark.Signal == sheet.Refusal {
			cells = append(cells, b.Use.RemarkCell(i))
		}
	}
	for _, given := range b.Sheet.Givens {
		if cell, linked := b.Use.Outside(given.Name); linked {
			cells = append(cells, cell)
		}
	}
	return cells
}

// fixed gives the inputs that no field sets: the givens of a reckoner that are the same all over its grid.
func (p *Page) fixed(b *Bound) []wire.Fixed {
	var list []wire.Fixed
	put := func(cell int, there bool) {
		if there {
			list = append(list, wire.Fixed{Cell: cell, Low: p.Cells[cell], High: p.High[cell]})
		}
	}
	for _, given := range b.Sheet.Givens {
		if _, linked := b.links[given.Name]; linked {
			continue
		}
		onAxis := given.Name == b.Table.Down.Given || given.Name == b.Table.Across.Given
		cell, there := b.Use.Cell(given.Name)
		put(cell, there && !onAxis)
		put(b.Use.Presence(given.Name))
		put(b.Use.OtherCell(given.Name))
		put(b.Use.FormCell(given.Name))
	}
	return list
}

// guards gives which values may be left out: the cell of each, and the cell that says whether it is there.
func (p *Page) guards() []wire.Guarded {
	guards := p.Graph.Program.Guards
	var list []wire.Guarded
	for _, cell := range slices.Sorted(maps.Keys(guards)) {
		list = append(list, wire.Guarded{Cell: cell, Guard: guards[cell]})
	}
	return list
}

func (p *Page) grid(b *Bound) wire.Grid {
	t := b.Table
	axis := func(a Axis) wire.Axis {
		cell, _ := b.Use.Cell(a.Given)
		return wire.Axis{Cell: cell, Values: a.Values}
	}
	grid := wire.Grid{Of: b.Use.Index, Down: axis(t.Down), Across: axis(t.Across)}
	grid.Show, _ = b.Use.Cell(t.Show)
	if t.Mark != nil {
		grid.Mark = &wire.Span{Low: wire.End(t.Mark.Low), High: wire.End(t.Mark.High)}
	}
	if down, across, ok := p.Followed(b); ok {
		grid.Follow = &wire.Follow{Down: down, Across: across}
	}
	return grid
}

// Followed gives the cells of the worksheet that a reckoner follows: its values down and across. False if it follows
// none.
func (p *Page) Followed(b *Bound) (down, across int, ok bool) {
	followed := p.Find(b.Table.Follow)
	if followed == nil {
		return 0, 0, false
	}
	down, okDown := followed.Use.Cell(b.Table.Down.Given)
	across, okAcross := followed.Use.Cell(b.Table.Across.Given)
	return down, across, okDown && okAcross
}
