package rows

import (
	"encoding/csv"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
)

// Each row must be what the calculation answers for the same numbers alone: every calculation of the catalogue, with
// numbers from all of its ranges, and with givens left out that may be.
func TestEachRowIsTheCalculationAlone(t *testing.T) {
	const rows = 60
	random := rand.New(rand.NewPCG(3, 4))
	for _, s := range append(calc.Standard().All(), harvest) {
		values := make([]map[string]float64, rows)
		var text strings.Builder
		writer := csv.NewWriter(&text)
		var header []string
		for _, g := range s.Givens {
			header = append(header, heading(g))
		}
		_ = writer.Write(header)
		for i := range values {
			values[i] = map[string]float64{}
			var row []string
			for _, g := range s.Givens {
				cell := ""
				if !g.Optional || random.IntN(2) == 0 {
					values[i][g.Name], cell = draw(random, g)
				}
				row = append(row, cell)
			}
			_ = writer.Write(row)
		}
		writer.Flush()
		out, _ := run(t, s, text.String(), nil)
		got, err := csv.NewReader(strings.NewReader(out)).ReadAll()
		if err != nil || len(got) != rows+1 {
			t.Fatalf("%s: %d rows, %v", s.Name, len(got), err)
		}
		for i := range values {
			compare(t, s, values[i], got[0][len(header):], got[i+1][len(header):])
		}
	}
}

// draw gives a number that a given takes, and how it is written in a cell.
func draw(random *rand.Rand, g *sheet.Given) (float64, string) {
	switch {
	case len(g.Choices) > 0:
		i := random.IntN(len(g.Choices))
		return float64(i), g.Choices[i].Name
	case g.Date:
		day := float64(int(g.Low) + random.IntN(int(g.High-g.Low)))
		return day, sheet.ISODate(day)
	}
	value := g.Low + random.Float64()*(g.High-g.Low)
	if random.IntN(2) == 0 { // the numbers that people write
		value, _ = strconv.ParseFloat(strconv.FormatFloat(value, 'g', 2, 64), 64)
		value = min(max(value, g.Low), g.High)
	}
	return value, strconv.FormatFloat(value, 'f', -1, 64)
}

// compare compares the cells that were added to a row with the calculation alone.
func compare(t *testing.T, s *sheet.Sheet, values map[string]float64, header, cells []string) {
	t.Helper()
	alone, err := s.Evaluate(values)
	fault := cells[len(cells)-1]
	if err != nil {
		said := strings.Contains(fault, strings.TrimSuffix(err.Error(), "."))
		if !said || strings.Join(cells[:len(cells)-1], "") != "" {
			t.Errorf("%s: %v: %q, and alone %v", s.Name, values, cells, err)
		}
		return
	}
	if fault != "" {
		t.Errorf("%s: %v: fault %s", s.Name, values, fault)
	}
	var notes, cautions []string
	for _, said := range alone.Said() {
		if said.Signal == sheet.Note {
			notes = append(notes, said.Text)
		} else {
			cautions = append(cautions, said.Signal.String()+": "+said.Text)
		}
	}
	want := []string{strings.Join(notes, " "), strings.Join(cautions, " ")}
	if got := cells[len(cells)-3 : len(cells)-1]; !slices.Equal(got, want) {
		t.Errorf("%s: %v: said %q, and alone %q", s.Name, values, got, want)
	}
	compareAnswers(t, alone, header, cells)
}

func compareAnswers(t *testing.T, alone sheet.Outcome, header, cells []string) {
	t.Helper()
	there := alone.Answers()
	for i, r := range alone.Use.Sheet.Answers() {
		want := ""
		switch {
		case !slices.Contains(there, r):
		case r.Date:
			want = sheet.ISODate(alone.Value(r.Name).Value)
		default:
			value := alone.Value(r.Name)
			if got, err := strconv.ParseFloat(cells[i], 64); err != nil || got != value.Value {
				t.Errorf("%s is %q, and alone %s", header[i], cells[i], value)
			}
			if unitText := value.Unit.String(); !strings.Contains(header[i], unitText) {
				t.Errorf("the column %s is in %s", header[i], unitText)
			}
			continue
		}
		if cells[i] != want {
			t.Errorf("%s: %s is %q, and alone %q", alone.Use.Sheet.Name, header[i], cells[i], want)
		}
	}
}
