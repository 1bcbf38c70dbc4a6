package rows

import (
	"encoding/csv"
	"errors"
	"io"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/google/go-cmp/cmp"
)

// A scanned row is what a scanner says of it.
type scanned struct {
	Above  int
	Cells  []string
	Broken bool
}

func scan(in io.Reader, separator byte) ([]scanned, error) {
	s := &scanner{in: in, separator: separator}
	var all []scanned
	for {
		if err := s.next(); err == io.EOF {
			return all, nil
		} else if err != nil {
			return all, err
		}
		row := scanned{Above: s.above, Broken: s.broken}
		for _, c := range s.cells {
			row.Cells = append(row.Cells, s.text(c))
		}
		all = append(all, row)
	}
}

func TestScan(t *testing.T) {
	for _, c := range []struct {
		text string
		want []scanned
	}{
		{"", nil},
		{"\n\r\n\n", nil},
		{"a", []scanned{{0, []string{"a"}, false}}},
		{"a\r", []scanned{{0, []string{"a"}, false}}},
		{"a,b\nc,d", []scanned{{0, []string{"a", "b"}, false}, {1, []string{"c", "d"}, false}}},
		{"a,b\r\n\r\nc,d\r\n", []scanned{{0, []string{"a", "b"}, false}, {2, []string{"c", "d"}, false}}},
		{",\n", []scanned{{0, []string{"", ""}, false}}},
		{`""`, []scanned{{0, []string{""}, false}}},
		{"\"a\"\"b\",\"c,\r\nd\"\r\ne,f", []scanned{{0, []string{`a"b`, "c,\r\nd"}, false}, {2, []string{"e", "f"}, false}}},
		{`6" pipe,x`, []scanned{{0, []string{`6" pipe`, "x"}, false}}},

		// Wrong quotation marks spoil their own line, wherever the next mark is.
		{"\"a,b\nc,d", []scanned{{0, []string{`"a,b`}, true}, {1, []string{"c", "d"}, false}}},
		{"\"a,b\r\nc,\"d\"\r\n", []scanned{{0, []string{`"a,b`}, true}, {1, []string{"c", "d"}, false}}},
		{"x,\"a\"b,c\nd", []scanned{{0, []string{"x", `"a"b,c`}, true}, {1, []string{"d"}, false}}},
		{"\"x\ny\",\"a\nd", []scanned{{0, []string{"x\ny", `"a`}, true}, {2, []string{"d"}, false}}},
		{"x,\"", []scanned{{0, []string{"x", `"`}, true}}},
	} {
		for name, in := range readers(c.text) {
			got, err := scan(in, ',')
			if diff := cmp.Diff(c.want, got); diff != "" || err != nil {
				t.Errorf("%s: %q: %v (-want +got):\n%s", name, c.text, err, diff)
			}
		}
	}
}

// readers hand out a text in pieces of several sizes.
func readers(text string) map[string]io.Reader {
	return map[string]io.Reader{
		"whole":        strings.NewReader(text),
		"byte by byte": iotest.OneByteReader(strings.NewReader(text)),
		"with EOF":     iotest.DataErrReader(strings.NewReader(text)),
	}
}

// Where the standard library reads a text, its rows are ours. It takes the carriage return out of a quoted line end;
// we leave cells as they are.
func TestScanAgainstTheStandardLibrary(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	pieces := []string{"a", "b c", ";", ";", ";", "\n", "\n", "\r\n", `"`, `"x"`, `"x;y"`, "\"x\r\ny\"", `""`, "é", " "}
	compared := 0
	for range 30_000 {
		var text strings.Builder
		for range random.IntN(12) {
			text.WriteString(pieces[random.IntN(len(pieces))])
		}
		standard := csv.NewReader(strings.NewReader(text.String()))
		standard.Comma, standard.FieldsPerRecord = ';', -1
		want, err := standard.ReadAll()
		if err != nil {
			continue
		}
		compared++
		got, err := scan(strings.NewReader(text.String()), ';')
		if err != nil || len(got) != len(want) {
			t.Fatalf("%q: %v: %d rows, not %d", &text, err, len(got), len(want))
		}
		for i, row := range got {
			for j, cell := range row.Cells {
				row.Cells[j] = strings.ReplaceAll(cell, "\r\n", "\n")
			}
			if !slices.Equal(row.Cells, want[i]) {
				t.Fatalf("%q: row %d is %q, not %q", &text, i, row.Cells, want[i])
			}
		}
	}
	if compared < 5_000 {
		t.Errorf("only %d texts could be compared", compared)
	}
}

// A row that goes on and on must not fill the memory.
func TestScanLongRow(t *testing.T) {
	long := strings.Repeat("x", maxRow)
	for name, c := range map[string]struct {
		text  string
		rows  int
		error error
	}{
		"a long line":                   {"a\n" + long + "x\nb", 1, errLong},
		"a long line without end":       {"a\n" + long + "x", 1, errLong},
		"a mark that is not closed":     {"a\n\"b\nc\n" + long[:maxRow/2] + "\nd\n", 5, nil},
		"one before much text":          {"\"a\n" + strings.Repeat(long[:99]+"\n", 3*maxRow/100), 3*maxRow/100 + 1, nil},
		"a mark on a line without end":  {"\"" + long, 0, errLong},
		"a long cell that is allowed":   {"\"" + long[:maxRow-4] + "\"\n" + "b\n", 2, nil},
		"many lines beyond the longest": {strings.Repeat(long[:999]+"\n", 5*maxRow/1000), 5 * maxRow / 1000, nil},
	} {
		got, err := scan(strings.NewReader(c.text), ',')
		if len(got) != c.rows || !errors.Is(err, c.error) {
			t.Errorf("%s: %d rows, %v; want %d, %v", name, len(got), err, c.rows, c.error)
		}
	}
}

func TestScanReaderThatGivesNothing(t *testing.T) {
	if _, err := scan(nothing{}, ','); !errors.Is(err, io.ErrNoProgress) {
		t.Errorf("%v", err)
	}
}

type nothing struct{}

func (nothing) Read([]byte) (int, error) { return 0, nil }

// Nothing in a file may bring the scanner down, and each of its lines is in one row.
func FuzzScan(f *testing.F) {
	for _, text := range []string{"a,b\nc", "\"a\"\"b\"\r\n", "\"a\nb,\"c\"", ",,\n\n,", "\xff\"\x00"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s := &scanner{in: strings.NewReader(text), separator: ','}
		end := 0
		for s.next() == nil {
			if s.above < end {
				t.Fatalf("%q: a row begins on line %d, and the one before it ends on %d", text, s.above+1, end)
			}
			end = s.above + strings.Count(string(s.row), "\n")
			for _, c := range s.cells {
				if c.start > c.end || c.end > len(s.row) {
					t.Fatalf("%q: a cell from %d to %d in a row of %d", text, c.start, c.end, len(s.row))
				}
				_ = s.text(c)
			}
		}
		if lines := strings.Count(text, "\n"); end > lines {
			t.Fatalf("%q: rows end on line %d of %d", text, end, lines)
		}
	})
}
