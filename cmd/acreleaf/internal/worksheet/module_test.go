package worksheet

import (
	"bytes"
	"context"
	"encoding/hex"
	"encoding/json"
	"math"
	"math/rand/v2"
	"path/filepath"
	"slices"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/tetratelabs/wazero"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/construct"
)

// pageData is the data block as the page's script reads it.
type pageData struct {
	M      string      `json:"m"`
	Sheets []sheetData `json:"sheets"`
	Fixed  [][]float64 `json:"fixed"`
	Guards [][]int     `json:"guards"`
	Trends [][]int     `json:"trends"`
	Tables []tableData `json:"tables"`
}

type sheetData struct {
	After    []int `json:"after"`
	Refusals []int `json:"refusals"`
}

type tableData struct {
	Sheet  int               `json:"of"`
	Down   []json.RawMessage `json:"down"`
	Across []json.RawMessage `json:"across"`
	Show   int               `json:"show"`
	Mark   []*float64        `json:"mark"`
	Follow []int             `json:"follow"`
}

// goodPages are the cases of testdata without a fault.
func goodPages(t *testing.T) map[string]*Page {
	t.Helper()
	names, err := filepath.Glob("testdata/*.txtar")
	if err != nil {
		t.Fatal(err)
	}
	pages := map[string]*Page{}
	for _, name := range names {
		archive, err := txtar.ParseFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if page, messages := bind(t, string(archive.Files[0].Data)); len(messages) == 0 && len(page.Sheets) > 0 {
			pages[name] = page
		}
	}
	if len(pages) < 5 {
		t.Fatalf("only %d cases have worksheets and no fault", len(pages))
	}
	return pages
}

func readData(t *testing.T, page *Page) pageData {
	t.Helper()
	text, err := page.Module()
	if err != nil {
		t.Fatal(err)
	}
	var data pageData
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(&data); err != nil {
		t.Fatalf("%v: %s", err, text)
	}
	return data
}

// What the script is told is what the page was bound to.
func TestData(t *testing.T) {
	for name, page := range goodPages(t) {
		data := readData(t, page)
		if len(data.Sheets) != len(page.Sheets) || len(data.Tables) != len(page.Tables()) {
			t.Errorf("%s: %d sheets and %d tables in the data", name, len(data.Sheets), len(data.Tables))
			continue
		}
		for i, b := range page.Sheets {
			if !slices.Equal(data.Sheets[i].After, b.Use.After) {
				t.Errorf("%s: sheet %d comes after %v, not %v", name, i, data.Sheets[i].After, b.Use.After)
			}
			var refusals []int
			for r, remark := range b.Sheet.Remarks {
				if remark.Signal == sheet.Refusal {
					refusals = append(refusals, b.Use.RemarkCell(r))
				}
			}
			for _, given := range b.Sheet.Givens {
				if cell, linked := b.Use.Outside(given.Name); linked {
					refusals = append(refusals, cell)
				}
			}
			if !slices.Equal(data.Sheets[i].Refusals, refusals) {
				t.Errorf("%s: sheet %d has the refusals %v, not %v", name, i, data.Sheets[i].Refusals, refusals)
			}
		}
		for _, pair := range data.Fixed {
			cell := int(pair[0])
			want := []float64{pair[0], page.Cells[cell]}
			if page.High[cell] != page.Cells[cell] {
				want = append(want, page.High[cell])
			}
			if !slices.Equal(pair, want) {
				t.Errorf("%s: fixed %v, want %v", name, pair, want)
			}
		}
		if len(data.Guards) != len(page.Graph.Program.Guards) {
			t.Errorf("%s: %d guards, want %v", name, len(data.Guards), page.Graph.Program.Guards)
		}
		for _, pair := range data.Guards {
			if page.Graph.Program.Guards[pair[0]] != pair[1] {
				t.Errorf("%s: guard %v", name, pair)
			}
		}
		for i, b := range page.Tables() {
			checkTableData(t, name, page, b, data.Tables[i])
		}
	}
}

func checkTableData(t *testing.T, name string, page *Page, b *Bound, data tableData) {
	t.Helper()
	cellOf := func(use *sheet.Use, given string) int {
		cell, ok := use.Cell(given)
		if !ok {
			t.Errorf("%s: %s has no cell", name, given)
		}
		return cell
	}
	if data.Sheet != b.Use.Index || data.Show != cellOf(b.Use, b.Table.Show) {
		t.Errorf("%s: the table is of sheet %d and shows %d", name, data.Sheet, data.Show)
	}
	for key, want := range map[string]Axis{"down": b.Table.Down, "across": b.Table.Across} {
		axis := data.Down
		if key == "across" {
			axis = data.Across
		}
		var cell int
		var values []float64
		if len(axis) != 2 || json.Unmarshal(axis[0], &cell) != nil || json.Unmarshal(axis[1], &values) != nil {
			t.Fatalf("%s: %s is %s", name, key, axis)
		}
		if cell != cellOf(b.Use, want.Given) || !slices.Equal(values, want.Values) {
			t.Errorf("%s: %s sets cell %d to %v", name, key, cell, values)
		}
	}
	if b.Table.Mark == nil != (data.Mark == nil) {
		t.Errorf("%s: the mark is %v", name, data.Mark)
	} else if data.Mark != nil {
		for i, want := range []float64{b.Table.Mark.Low, b.Table.Mark.High} {
			if got := data.Mark[i]; got == nil != math.IsInf(want, 0) || got != nil && *got != want {
				t.Errorf("%s: end %d of the mark is not %v", name, i, want)
			}
		}
	}
	if followed := page.Find(b.Table.Follow); followed != nil {
		want := []int{cellOf(followed.Use, b.Table.Down.Given), cellOf(followed.Use, b.Table.Across.Given)}
		if !slices.Equal(data.Follow, want) {
			t.Errorf("%s: the table follows %v, not %v", name, data.Follow, want)
		}
	} else if data.Follow != nil {
		t.Errorf("%s: the table follows %v", name, data.Follow)
	}
}

// A page without worksheets has no data block.
func TestNoData(t *testing.T) {
	page, messages := bind(t, "Only words.\n")
	if text, err := page.Module(); len(messages) > 0 || text != nil || err != nil {
		t.Errorf("%v, %q, %v", messages, text, err)
	}
}

// The module in the page gives the bits that were printed: for the example, with nothing but the example's numbers
// and the fixed cells put in, and for other numbers, as a reader types them.
func TestModuleGivesTheSameBits(t *testing.T) {
	ctx := context.Background()
	runtime := wazero.NewRuntime(ctx)
	defer func() { _ = runtime.Close(ctx) }()
	random := rand.New(rand.NewPCG(14, 22))
	for name, page := range goodPages(t) {
		data := readData(t, page)
		code, err := hex.DecodeString(data.M)
		if err != nil {
			t.Fatal(err)
		}
		instance, err := runtime.InstantiateWithConfig(ctx, code, wazero.NewModuleConfig().WithName(""))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		memory, run := instance.ExportedMemory("m"), instance.ExportedFunction("r")
		put := func(cells []float64, cell int, value float64) {
			cells[cell] = value
			memory.WriteFloat64Le(uint32(8*cell), value)
		}
		cells := make([]float64, len(page.Cells))
		for _, pair := range data.Fixed {
			put(cells, int(pair[0]), pair[1])
		}
		for round := range 100 {
			for _, cell := range fields(page) {
				value := page.Cells[cell]
				if round > 0 {
					value = math.Ldexp(random.Float64(), random.IntN(12))
				}
				put(cells, cell, value)
			}
			page.Graph.Program.Run(cells)
			if _, err := run.Call(ctx); err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			for cell, want := range cells {
				got, _ := memory.ReadFloat64Le(uint32(8 * cell))
				if math.Float64bits(got) != math.Float64bits(want) && (got == got || want == want) {
					t.Fatalf("%s: cell %d is %v in the module, %v here", name, cell, got, want)
				}
				single := slices.Equal(page.Cells, page.High) // the ends of ranges come from many runs
				if round == 0 && single && math.Float64bits(got) != math.Float64bits(page.Cells[cell]) {
					t.Fatalf("%s: cell %d is %v in the module, %v in the page", name, cell, got, page.Cells[cell])
				}
			}
		}
	}
}

// fields lists the cells that the page's fields and grids set: givens that are not linked, and whether an optional one
// is there.
func fields(page *Page) []int {
	var cells []int
	for _, b := range page.Sheets {
		for _, given := range b.Sheet.Givens {
			onAxis := b.Kind == construct.Reckoner && (given.Name == b.Table.Down.Given || given.Name == b.Table.Across.Given)
			if _, linked := b.From(given.Name); linked || b.Kind == construct.Reckoner && !onAxis {
				continue
			}
			cell, _ := b.Use.Cell(given.Name)
			cells = append(cells, cell)
			if presence, ok := b.Use.Presence(given.Name); ok && b.Kind == construct.Worksheet {
				cells = append(cells, presence)
			}
			if other, ok := b.Use.OtherCell(given.Name); ok {
				cells = append(cells, other)
			}
		}
	}
	return cells
}
