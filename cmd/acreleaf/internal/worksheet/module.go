package worksheet

import (
	"encoding/hex"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"

	"acreleaf/calc/sheet"
	"acreleaf/wasm"
)

// Module is the data block of the page, as the page's script reads it (theme/script/data.ts): the module that works
// every worksheet, and which cells of it the script must know. It is nil for a page without worksheets.
func (p *Page) Module() ([]byte, error) {
	if len(p.Sheets) == 0 {
		return nil, nil
	}
	code, err := wasm.Compile(p.Graph.Program)
	if err != nil {
		return nil, fmt.Errorf("the worksheets cannot be compiled: %w", err)
	}
	w := &dataWriter{page: p}
	w.text = append(w.text, `{"m":"`...)
	w.text = hex.AppendEncode(w.text, code)
	w.text = append(w.text, `","sheets":[`...)
	for i, b := range p.Sheets {
		w.comma(i)
		w.sheet(b.Use.After, refusals(b))
	}
	for _, passage := range p.Passages {
		w.comma(passage.Index)
		w.sheet(passage.Asked.After, passage.Asked.Refusals())
	}
	w.text = append(w.text, `],"fixed":[`...)
	w.fixed()
	w.guards()
	w.trends()
	w.text = append(w.text, `],"tables":[`...)
	for i, b := range p.Tables() {
		w.comma(i)
		w.table(b)
	}
	w.text = append(w.text, "]}"...)
	return w.text, nil
}

// Tables lists the reckoners in the order of the module's data.
func (p *Page) Tables() []*Bound {
	var tables []*Bound
	for _, b := range p.Sheets {
		if b.Table != nil {
			tables = append(tables, b)
		}
	}
	return tables
}

// A dataWriter writes the JSON of the data block, which is numbers but for the module itself.
type dataWriter struct {
	page *Page
	text []byte
}

func (w *dataWriter) comma(i int) {
	if i > 0 {
		w.text = append(w.text, ',')
	}
}

func (w *dataWriter) integer(v int) { w.text = strconv.AppendInt(w.text, int64(v), 10) }

// number writes the shortest decimals that read back as the same number; null for an infinity.
func (w *dataWriter) number(v float64) {
	if math.IsInf(v, 0) {
		w.text = append(w.text, "null"...)
		return
	}
	w.text = strconv.AppendFloat(w.text, v, 'g', -1, 64)
}

func (w *dataWriter) sheet(after, refusals []int) {
	w.text = append(w.text, `{"after":[`...)
	for i, other := range after {
		w.comma(i)
		w.integer(other)
	}
	w.text = append(w.text, `],"refusals":[`...)
	for n, cell := range refusals {
		w.comma(n)
		w.integer(cell)
	}
	w.text = append(w.text, "]}"...)
}

// refusals lists the cells that withhold the answers of a block when they are not 0: its refusals, and linked values
// that are outside their range.
func refusals(b *Bound) []int {
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

// fixed writes the inputs that no field sets: the givens of a reckoner that are the same all over its grid.
func (w *dataWriter) fixed() {
	n := 0
	put := func(cell int) {
		w.comma(n)
		n++
		w.text = append(w.text, '[')
		w.integer(cell)
		w.comma(1)
		w.number(w.page.Cells[cell])
		if w.page.High[cell] != w.page.Cells[cell] {
			w.comma(1)
			w.number(w.page.High[cell])
		}
		w.text = append(w.text, ']')
	}
	for _, b := range w.page.Tables() {
		for _, given := range b.Sheet.Givens {
			if _, linked := b.links[given.Name]; linked {
				continue
			}
			onAxis := given.Name == b.Table.Down.Given || given.Name == b.Table.Across.Given
			if cell, ok := b.Use.Cell(given.Name); ok && !onAxis {
				put(cell)
			}
			if cell, ok := b.Use.Presence(given.Name); ok {
				put(cell)
			}
			if cell, ok := b.Use.OtherCell(given.Name); ok {
				put(cell)
			}
			if cell, ok := b.Use.FormCell(given.Name); ok {
				put(cell)
			}
		}
	}
}

// guards writes which values may be left out: the cell of each, and the cell that says whether it is there.
func (w *dataWriter) guards() {
	guards := w.page.Graph.Program.Guards
	if len(guards) == 0 {
		return
	}
	w.text = append(w.text, `],"guards":[`...)
	for i, cell := range slices.Sorted(maps.Keys(guards)) {
		w.comma(i)
		w.text = append(w.text, '[')
		w.integer(cell)
		w.comma(1)
		w.integer(guards[cell])
		w.text = append(w.text, ']')
	}
}

// trends writes what ranges are told of values: two cells, and 1 if the first never goes down when the second goes up.
func (w *dataWriter) trends() {
	w.text = append(w.text, `],"trends":[`...)
	n := 0
	for _, b := range w.page.Sheets {
		for _, t := range b.Use.Trends() {
			w.comma(n)
			n++
			w.text = append(w.text, '[')
			w.integer(t.Of)
			w.comma(1)
			w.integer(t.From)
			if w.comma(1); t.Up {
				w.integer(1)
			} else {
				w.integer(0)
			}
			w.text = append(w.text, ']')
		}
	}
}

func (w *dataWriter) table(b *Bound) {
	t := b.Table
	w.text = append(w.text, `{"of":`...)
	w.integer(b.Use.Index)
	w.axis(`,"down":`, b, t.Down)
	w.axis(`,"across":`, b, t.Across)
	w.text = append(w.text, `,"show":`...)
	show, _ := b.Use.Cell(t.Show)
	w.integer(show)
	if t.Mark != nil {
		w.text = append(w.text, `,"mark":[`...)
		w.number(t.Mark.Low)
		w.comma(1)
		w.number(t.Mark.High)
		w.text = append(w.text, ']')
	}
	if down, across, ok := w.page.Followed(b); ok {
		w.text = append(w.text, `,"follow":[`...)
		w.integer(down)
		w.comma(1)
		w.integer(across)
		w.text = append(w.text, ']')
	}
	w.text = append(w.text, '}')
}

func (w *dataWriter) axis(key string, b *Bound, a Axis) {
	w.text = append(w.text, key...)
	w.text = append(w.text, '[')
	cell, _ := b.Use.Cell(a.Given)
	w.integer(cell)
	w.text = append(w.text, `,[`...)
	for i, v := range a.Values {
		w.comma(i)
		w.number(v)
	}
	w.text = append(w.text, "]]"...)
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
