package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
)

// BenchmarkPress presses copies of the demo's guides, and tells how that compares with the floor: to convert the same
// Markdown with goldmark as it comes (and tables), and to write as many bytes into as many files. Both run as programs
// of their own, one after the other, and the system says what each has used:
//
//	press-s, floor-s      processor time in seconds, in the system's calls too
//	press-MB, floor-MB    the most memory at once
//	x-cpu, x-memory       press ÷ floor
//	x-again               processor time of a press with nothing changed ÷ a full press
//
// Each is the middle one of all runs. No time on the clock is told, since that depends on what else the machine does.
func BenchmarkPress(b *testing.B) { benchmarkPress(b, 100) }

// BenchmarkThousand and BenchmarkTenThousand are BenchmarkPress for more guides. Their names keep them out of a run of
// -bench Press.
func BenchmarkThousand(b *testing.B)    { benchmarkPress(b, 1_000) }
func BenchmarkTenThousand(b *testing.B) { benchmarkPress(b, 10_000) }

func benchmarkPress(b *testing.B, atLeast int) {
	folder := b.TempDir()
	guides := writeFarm(b, filepath.Join(folder, "content"), atLeast)
	b.Run(strconv.Itoa(guides), func(b *testing.B) {
		var full, again, floor []cost
		for b.Loop() {
			full = append(full, costOf(b, folder, "acreleaf", "press"))
			again = append(again, costOf(b, folder, "acreleaf", "press"))
			floor = append(floor, costOf(b, folder, "floor"))
			for _, made := range []string{"public", "floor"} {
				if err := os.RemoveAll(filepath.Join(folder, made)); err != nil {
					b.Fatal(err)
				}
			}
		}
		b.ReportMetric(0, "ns/op") // it is of all three together
		b.ReportMetric(middle(full, cost.processor), "press-s")
		b.ReportMetric(middle(floor, cost.processor), "floor-s")
		b.ReportMetric(middle(full, cost.processor)/middle(floor, cost.processor), "x-cpu")
		b.ReportMetric(middle(again, cost.processor)/middle(full, cost.processor), "x-again")
		if most := middle(full, cost.memory); !math.IsNaN(most) {
			b.ReportMetric(most, "press-MB")
			b.ReportMetric(middle(floor, cost.memory), "floor-MB")
			b.ReportMetric(most/middle(floor, cost.memory), "x-memory")
		}
	})
}

// A cost is what one run of a program has used: seconds of the processors, and megabytes.
type cost struct{ seconds, megabytes float64 }

func (c cost) processor() float64 { return c.seconds }
func (c cost) memory() float64    { return c.megabytes }

// costOf runs a program in a folder.
func costOf(b testing.TB, folder, program string, arguments ...string) cost {
	var said bytes.Buffer
	c := exec.Command(program, arguments...)
	c.Dir, c.Stdout, c.Stderr = folder, &said, &said
	c.Env = append(c.Environ(), "GOGC=100") // the usual, whatever this process has
	if err := c.Run(); err != nil {
		b.Fatalf("%s: %v\n%s", program, err, said.String())
	}
	return cost{(c.ProcessState.UserTime() + c.ProcessState.SystemTime()).Seconds(), peakMemory(c.ProcessState)}
}

// middle is the middle one of some costs.
func middle(costs []cost, of func(cost) float64) float64 {
	var all []float64
	for _, c := range costs {
		all = append(all, of(c))
	}
	slices.Sort(all)
	return all[len(all)/2]
}

// asFloor is a program that does what no press can leave out: it converts the Markdown in content, and writes as many
// bytes into floor as there are in public, file by file.
func asFloor() {
	fail := func(err error) {
		if err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
	}
	converter := goldmark.New(goldmark.WithExtensions(extension.Table))
	content, err := filesIn("content")
	fail(err)
	each(content, func(name string) {
		if filepath.Ext(name) != ".md" {
			return
		}
		text, err := os.ReadFile(filepath.Join("content", name))
		fail(err)
		_, text, _ = bytes.Cut(text, []byte("\n---\n")) // what comes before is no Markdown
		var page bytes.Buffer
		fail(converter.Convert(text, &page))
	})
	made, err := filesIn("public")
	fail(err)
	each(made, func(name string) {
		info, err := os.Stat(filepath.Join("public", name))
		fail(err)
		to := filepath.Join("floor", name)
		fail(os.MkdirAll(filepath.Dir(to), 0o755))
		fail(os.WriteFile(to, []byte(strings.Repeat(" ", int(info.Size()))), 0o644))
	})
}

// filesIn lists the files in a folder, and in those inside it.
func filesIn(folder string) (names []string, err error) {
	err = fs.WalkDir(os.DirFS(folder), ".", func(name string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() {
			names = append(names, name)
		}
		return err
	})
	return names, err
}

// each calls do for every name, from as many goroutines as the press has.
func each(names []string, do func(name string)) {
	var next atomic.Int64
	var group sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(names); i = int(next.Add(1)) - 1 {
				do(names[i])
			}
		})
	}
	group.Wait()
}
