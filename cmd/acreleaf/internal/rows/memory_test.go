package rows

import (
	"fmt"
	"io"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"testing"
	"time"

	"acreleaf/calc"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A field is a list of blocks that is made while it is read. Most cells differ from row to row, and every hundredth row
// has a fault.
type field struct {
	rows, made int
	rest       []byte
}

func (f *field) Read(p []byte) (int, error) {
	for len(f.rest) < len(p) && f.made <= f.rows {
		switch i := f.made; {
		case i == 0:
			f.rest = append(f.rest, "block,nitrate (ppm NO3-N),depth,bulk-density (g/cm3),variety\n"...)
		case i%100 == 0:
			f.rest = fmt.Appendf(f.rest, "Block %d,%d.5,%d,1.4,\"Sorrel, late\"\n", i, i, i%60+1)
		default:
			f.rest = fmt.Appendf(f.rest, "Block %d,%d.%d,%d in,1.%d,\"Sorrel, late\"\n", i, i%199, i, i%60+1, i%9)
		}
		f.made++
	}
	n := copy(p, f.rest)
	f.rest = f.rest[:copy(f.rest, f.rest[n:])]
	if n == 0 {
		return 0, io.EOF
	}
	return n, nil
}

// measured works a field, and gives the most memory that the program held from the system meanwhile, in bytes.
func measured(tb testing.TB, rows int) (peak uint64, took time.Duration) {
	tb.Helper()
	sample := []metrics.Sample{{Name: "/memory/classes/total:bytes"}, {Name: "/memory/classes/heap/released:bytes"}}
	look := func() {
		metrics.Read(sample)
		peak = max(peak, sample[0].Value.Uint64()-sample[1].Value.Uint64())
	}
	s := calc.Standard().Find("soil-nitrogen")
	faults := 0
	defer debug.SetGCPercent(debug.SetGCPercent(100)) // the usual, whatever the environment says
	runtime.GC()
	start := time.Now()
	tally, err := Job{Sheet: s, Name: "field.csv", In: &field{rows: rows}, Out: io.Discard,
		Report: func(m message.Message) {
			message.Printer{}.PrintOne(io.Discard, m)
			if faults++; faults%100 == 0 {
				look()
			}
		},
		Progress: func(int) { look() }}.Run()
	took = time.Since(start)
	look()
	if err != nil || tally.Rows != rows || tally.Faulty != rows/100 {
		tb.Fatalf("%+v, %v", tally, err)
	}
	return peak, took
}

// Memory must not grow with the file. Ten times the rows may take a little more, since the collector lets garbage lie;
// a million may take 100 MB in all, and what 100,000 take is held to that with the growth of ten times more on top.
func TestRowsMemory(t *testing.T) {
	const mega = 1 << 20
	few, _ := measured(t, 10_000)
	many, _ := measured(t, 100_000)
	t.Logf("10,000 rows: %d MB; 100,000 rows: %d MB", few/mega, many/mega)
	growth := max(many, few) - few
	if growth > 8*mega {
		t.Errorf("ten times the rows took %d MB more", growth/mega)
	}
	if many+10*growth > 100*mega {
		t.Errorf("100,000 rows took %d MB, %d MB more than 10,000", many/mega, growth/mega)
	}
}

// TestRowsSpeed prints how fast rows are worked here; go test -run RowsSpeed -v.
func TestRowsSpeed(t *testing.T) {
	const rows = 10_000
	peak, took := measured(t, rows)
	t.Logf("%d rows in %v: %.0f rows a second, peak memory %.1f MB", rows, took.Round(time.Millisecond),
		rows/took.Seconds(), float64(peak)/(1<<20))
}

// BenchmarkMillionRows holds the limit itself: 1,000,000 rows under 100 MB.
func BenchmarkMillionRows(b *testing.B) {
	const rows = 1_000_000
	var most uint64
	var all time.Duration
	for b.Loop() {
		peak, took := measured(b, rows)
		most, all = max(most, peak), all+took
	}
	if most > 100<<20 {
		b.Errorf("peak memory %d MB", most>>20)
	}
	b.ReportMetric(float64(b.N)*rows/all.Seconds(), "rows/s")
	b.ReportMetric(float64(most)/(1<<20), "peak-MB")
}
