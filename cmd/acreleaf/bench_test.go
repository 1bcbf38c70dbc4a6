package main

import (
	"bytes"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"

	"acreleaf/cmd/acreleaf/internal/cputime"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/site"
)

// BenchmarkPress presses 1,000 guides and prints how that compares with the floor: converting the same Markdown with
// goldmark as it comes (and tables), and writing the same bytes with nothing but the system's calls.
//
//	x-floor    full press ÷ floor with as many workers as the press has
//	x-one      full press ÷ floor on one core
//	x-cpu      the same as x-floor, in processor time: what others do on the machine counts less
//	x-full     press with nothing changed ÷ full press
//
// The floor has its Markdown in memory; the press reads its files. How much of both is writing hangs on the disk that
// TMPDIR is on: in memory, the ratio is the processor's alone.
func BenchmarkPress(b *testing.B) { benchmarkPress(b, 1_000) }

// BenchmarkTenThousand is BenchmarkPress for 10,000 guides. Its name keeps it out of a run of -bench Press.
func BenchmarkTenThousand(b *testing.B) { benchmarkPress(b, 10_000) }

func benchmarkPress(b *testing.B, guides int) {
	yard := newYard(b, guides)
	yard.press(b, yard.fresh(b)) // the theme is bundled once a process
	b.Run(strconv.Itoa(guides), func(b *testing.B) {
		var full, again, floor, one []cost
		b.ReportAllocs()
		for b.Loop() { // in turn, so that all meet the same weather
			folder := yard.fresh(b)
			full = append(full, timed(func() { yard.press(b, folder) }))
			again = append(again, timed(func() { yard.pressAgain(b, folder) }))
			floor = append(floor, timed(func() { yard.floor(b, yard.fresh(b), runtime.GOMAXPROCS(0)) }))
			one = append(one, timed(func() { yard.floor(b, yard.fresh(b), 1) }))
		}
		b.ReportMetric(ratio(full, floor, cost.wallTime), "x-floor")
		b.ReportMetric(ratio(full, one, cost.wallTime), "x-one")
		b.ReportMetric(ratio(full, floor, cost.cpuTime), "x-cpu")
		b.ReportMetric(ratio(again, full, cost.wallTime), "x-full")
		b.ReportMetric(middle(full), "press-ms")
		b.ReportMetric(middle(floor), "floor-ms")
	})
}

// A cost is what one run took.
type cost struct{ wall, cpu time.Duration }

func (c cost) wallTime() time.Duration { return c.wall }
func (c cost) cpuTime() time.Duration  { return c.cpu }

// timed gives the cost of one run, which does not pay for the garbage of the one before it.
func timed(run func()) cost {
	runtime.GC()
	start, used := time.Now(), cputime.Used()
	run()
	return cost{time.Since(start), cputime.Used() - used}
}

// ratio is the middle one of the ratios of pairs that ran one after the other.
func ratio(over, under []cost, of func(cost) time.Duration) float64 {
	ratios := make([]float64, len(over))
	for i := range over {
		ratios[i] = of(over[i]).Seconds() / of(under[i]).Seconds()
	}
	slices.Sort(ratios)
	return ratios[len(ratios)/2]
}

// middle is the middle time in milliseconds.
func middle(costs []cost) float64 {
	var times []float64
	for _, c := range costs {
		times = append(times, c.wall.Seconds()*1000)
	}
	slices.Sort(times)
	return times[len(times)/2]
}

// A yard is a farm on the disk, with all that a press and the floor need.
type yard struct {
	options  site.Options
	markdown [][]byte
	files    []output.File // what a press makes of it
	room     string        // for sites
	taken    int
}

func newYard(b *testing.B, guides int) *yard {
	y := &yard{room: b.TempDir()}
	content := filepath.Join(b.TempDir(), "content")
	y.markdown = writeFarm(b, content, guides)
	root, err := os.OpenRoot(content)
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { _ = root.Close() })
	y.options = site.Options{Content: root.FS(), Name: "content"}
	y.files = y.make(b).Files
	return y
}

// fresh gives a folder that is not there yet, and clears the one before it.
func (y *yard) fresh(b *testing.B) string {
	b.StopTimer()
	defer b.StartTimer()
	if err := os.RemoveAll(filepath.Join(y.room, strconv.Itoa(y.taken))); err != nil {
		b.Fatal(err)
	}
	y.taken++
	return filepath.Join(y.room, strconv.Itoa(y.taken))
}

func (y *yard) make(b *testing.B) *site.Made {
	made, messages := site.Make(y.options)
	if made == nil {
		message.Printer{}.Print(os.Stderr, messages)
		b.Fatal("the farm has faults")
	}
	return made
}

func (y *yard) press(b *testing.B, folder string) {
	mark := output.Mark{From: site.Mark(y.options), Pages: 1}
	if _, err := output.Write(folder, y.make(b).Files, mark); err != nil {
		b.Fatal(err)
	}
}

// pressAgain presses with nothing changed.
func (y *yard) pressAgain(b *testing.B, folder string) {
	if _, _, current := output.Current(folder, site.Mark(y.options)); !current {
		b.Fatal("nothing changed, and the site is not current")
	}
}

// floor does what no press can leave out.
func (y *yard) floor(b *testing.B, folder string, workers int) {
	converter := goldmark.New(goldmark.WithExtensions(extension.Table))
	each(workers, max(len(y.markdown), len(y.files)), func(i int) {
		if i < len(y.markdown) {
			var w bytes.Buffer
			if err := converter.Convert(y.markdown[i], &w); err != nil {
				b.Error(err)
			}
		}
		if i < len(y.files) {
			name := filepath.Join(folder, filepath.FromSlash(y.files[i].Path))
			if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
				b.Error(err)
			}
			if err := os.WriteFile(name, y.files[i].Bytes, 0o644); err != nil {
				b.Error(err)
			}
		}
	})
}

// each calls do for 0 to n-1 from so many goroutines.
func each(workers, n int, do func(i int)) {
	var next atomic.Int64
	var group sync.WaitGroup
	for range workers {
		group.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				do(i)
			}
		})
	}
	group.Wait()
}
