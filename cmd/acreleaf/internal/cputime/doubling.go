package cputime

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"strings"
	"time"
)

const (
	// most is how many times as long, and as much memory, work of twice the size may take. What grows with the square
	// takes four times as long.
	most = 2.5

	lengths = 3 // that are measured, each twice the one before

	// enough is how long the work is repeated for. What it needs is not in the processor's cache the first time, which
	// is every time for work that is done once, so it is done many times.
	enough = 4 * time.Millisecond
	least  = 3 // rounds at the least
	rounds = 50
)

// Growth is what work of three sizes takes, each twice the one before.
type Growth struct {
	Size [lengths]int
	Time [lengths]time.Duration // of one piece of work

	// Memory is the bytes that it asks for in all, also what it gives back. Work never holds more than that at one time,
	// and it is the same each time, on a busy machine too; the most that is held depends on when the collector comes.
	Memory [lengths]uint64
}

// Doubling does work of three sizes, of which the largest is given. Prepare is not measured, and gives the work.
//
// The smaller work is done as many times as makes one of the largest, so that all three ask the machine for about the
// same memory. They take turns, so that all meet the same machine. What other programs do makes a measurement longer,
// so the shortest of each size counts, and on a busy machine there are more rounds. Only one thread of Go does it:
// each has a pool of memory of its own to use again, and a second one would ask for more.
func Doubling(largest int, prepare func(size int) (work func())) Growth {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	var g Growth
	var works [lengths]func()
	for i := range lengths {
		g.Size[i] = largest >> (lengths - 1 - i)
		works[i] = prepare(g.Size[i])
	}
	first, _ := cost(1, works[lengths-1], works[0])
	again := 1 + int(enough/(first+1))
	for round := range rounds {
		for i, work := range works {
			times := again << (lengths - 1 - i)
			spent, asked := cost(times, work, works[0])
			if round == 0 || spent < g.Time[i] {
				g.Time[i] = spent
			}
			if round == 0 || asked < g.Memory[i] {
				g.Memory[i] = asked
			}
		}
		if round+1 >= least && !g.TooFast() {
			break
		}
	}
	return g
}

// TooFast says whether twice the size takes too much in any doubling.
func (g Growth) TooFast() bool {
	for i := 1; i < lengths; i++ {
		if g.time(i) > most || g.memory(i) > most {
			return true
		}
	}
	return false
}

func (g Growth) time(i int) float64 { return float64(g.Time[i]) / float64(g.Time[i-1]) }

func (g Growth) memory(i int) float64 { return float64(g.Memory[i]) / float64(g.Memory[i-1]) }

// String is a line for each doubling.
func (g Growth) String() string {
	var b strings.Builder
	for i := 1; i < lengths; i++ {
		fmt.Fprintf(&b, "%d to %d: %.2f times the time, %v; %.2f times the memory, %d kB\n", g.Size[i-1], g.Size[i],
			g.time(i), g.Time[i], g.memory(i), g.Memory[i]>>10)
	}
	return b.String()
}

// cost is the processor time of some work, and the bytes that it asks for, each time of several. What is kept from one
// work to the next is thrown away before it, and made again by a little work that does not count.
func cost(times int, work, little func()) (time.Duration, uint64) {
	var before, after runtime.MemStats
	runtime.GC() // here, and not while it is measured
	defer debug.SetGCPercent(debug.SetGCPercent(-1))
	little()
	runtime.ReadMemStats(&before)
	start := Used()
	for range times {
		work()
	}
	spent := Used() - start
	runtime.ReadMemStats(&after)
	return spent / time.Duration(times), (after.TotalAlloc - before.TotalAlloc) / uint64(times)
}
