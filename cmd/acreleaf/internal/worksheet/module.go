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
	data := wire.Data{Guards: p.guards()}
	program := p.Graph.Program
	var marker []*sheet.Program
	if len(p.Exercises) > 0 {
		program = program.Narrow(p.known())
		marker, data.Marker = []*sheet.Program{practice.Marker()}, program.Cells
	}
	var err error
	if data.Module, err = wasm.Compile(program, marker...); err != nil {
		return nil, fmt.Errorf("the worksheets cannot be compiled: %w", err)
	}
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
		ask := wire.Ask{Right: p.RightCell(), Digits: p.Compared(), Answer: p.HeardCell(), Again: p.AgainCell()}
		for i := range p.Slips() {
			for _, cell := range p.SlipCells(i) {
				slip := wire.Slip{Value: cell.Value, Open: cell.Open}
				if cell.Again {
					slip.Again = 1
				}
				ask.Slips = append(ask.Slips, slip)
			}
		}
		v.Asks = append(v.Asks, ask)
	}
	return v
}

// dealt gives the inputs of an exercise. The script fills those that vary; of the others those are left out that are 0,
// as a cell is at first.
func (p *Page) dealt(e *Exercise) []wire.Fixed {
	var list []wire.Fixed
	varied := map[int]bool{}
	for _, pick := range e.Placed.Picks() {
		for _, cell := range pick.Cells {
			varied[cell] = true
		}
	}
	for _, step := range e.Placed.Steps {
		varied[step.HeardCell()] = true
	}
	for _, cell := range p.inputs(e) {
		switch {
		case varied[cell]:
			list = append(list, wire.Fixed{Cell: cell})
		case p.Cells[cell] != 0:
			list = append(list, wire.Fixed{Cell: cell, Low: p.Cells[cell], High: p.Cells[cell]})
		}
	}
	return list
}

// inputs are the cells that the calculations of an exercise read.
func (p *Page) inputs(e *Exercise) []int {
	var cells []int
	for _, b := range e.Bounds {
		for _, given := range b.Sheet.Givens {
			if _, linked := b.Use.Links[given.Name]; linked {
				continue
			}
			for _, at := range []func(string) (int, bool){b.Use.Cell, b.Use.Presence, b.Use.OtherCell, b.Use.FormCell} {
				if cell, there := at(given.Name); there {
					cells = append(cells, cell)
				}
			}
		}
	}
	return cells
}

// known are the numbers that the inputs of exercises may have, by cell: those of the cards.
func (p *Page) known() map[int][]float64 {
	known := map[int][]float64{}
	for _, e := range p.Exercises {
		for _, cell := range p.inputs(e) {
			known[cell] = []float64{p.Cells[cell]}
		}
		for _, pick := range e.Placed.Picks() {
			var values []float64
			for _, entry := range pick.Varied.Values {
				values = append(values, entry.Value)
			}
			for _, cell := range pick.Cells {
				known[cell] = values
			}
		}
		for _, step := range e.Placed.Steps {
			delete(known, step.HeardCell())
		}
	}
	return known
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
	if b.Use.Quiet || b.Use.Unsaid {
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
