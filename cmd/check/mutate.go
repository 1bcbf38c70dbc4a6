package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"maps"
	"math/rand/v2"
	"path"
	"slices"
	"strings"
	"time"

	"acreleaf/cmd/check/internal/mutate"
)

// survivors is the file of those that are accepted.
const survivors = "cmd/check/survivors.txt"

// mutatePackages changes one thing at a time of each package and lists what its own tests do not notice. False when
// there is a survivor that nobody has explained.
func mutatePackages(ctx context.Context, w io.Writer, arguments []string) (bool, error) {
	set := flag.NewFlagSet("mutate", flag.ContinueOnError)
	set.SetOutput(w)
	sample := set.Int("sample", 0, "try so many changes of each package, drawn at random; 0 tries all")
	seed := set.Uint64("seed", 1, "which changes are drawn")
	jobs := set.Int("jobs", 1, "how many changes are tried at once")
	if err := set.Parse(arguments); err != nil {
		return false, err
	}
	if set.NArg() == 0 {
		return false, fmt.Errorf("write the folder of a package, such as: go run ./cmd/check mutate -sample 50 calc/unit")
	}
	accepted, err := mutate.ReadAccepted(survivors)
	if err != nil {
		return false, err
	}
	clean := true
	for _, folder := range set.Args() {
		m := &mutation{accepted: accepted, w: w, draw: rand.New(rand.NewPCG(*seed, 0)), sample: *sample}
		m.trial = mutate.Trial{Root: ".", Package: strings.Trim(folder, "/"), Jobs: *jobs}
		found, err := m.run(ctx)
		if err != nil {
			return false, err
		}
		clean = clean && !found
	}
	return clean, nil
}

// A mutation is the mutation of one package.
type mutation struct {
	trial    mutate.Trial
	accepted mutate.Accepted
	draw     *rand.Rand
	sample   int
	w        io.Writer
}

// run says whether there is a survivor that is not accepted.
func (m *mutation) run(ctx context.Context) (bool, error) {
	mutants, err := mutate.Find(m.trial.Root, m.trial.Package)
	if err != nil {
		return false, err
	}
	all := len(mutants)
	m.tellStale(mutants)
	if m.sample > 0 && m.sample < all {
		m.draw.Shuffle(all, func(i, j int) { mutants[i], mutants[j] = mutants[j], mutants[i] })
		mutants = mutants[:m.sample]
	}
	start := time.Now()
	counts := map[mutate.Fate]int{}
	explained := 0
	err = m.trial.Run(ctx, mutants, func(mutant mutate.Mutant, fate mutate.Fate) {
		counts[fate]++
		if _, known := m.accepted[mutant.Key()]; known && fate == mutate.Survived {
			explained++
		} else if fate == mutate.Survived {
			fmt.Fprintf(m.w, "survived  %v\n", mutant)
		}
	})
	tried := counts[mutate.Killed] + counts[mutate.Late] + counts[mutate.Survived] + counts[mutate.Unmade]
	fmt.Fprintf(m.w, "%s: %d of %d changes tried in %.0f s: %d killed, %d ran out of time, %d survived (%d of them "+
		"explained), %d do not compile\n", m.trial.Package, tried, all, time.Since(start).Seconds(), counts[mutate.Killed],
		counts[mutate.Late], counts[mutate.Survived], explained, counts[mutate.Unmade])
	return counts[mutate.Survived] > explained, err
}

// tellStale tells which accepted survivors of the package are no longer among its mutants.
func (m *mutation) tellStale(mutants []mutate.Mutant) {
	var keys []string
	for _, mutant := range mutants {
		keys = append(keys, mutant.Key())
	}
	for _, key := range slices.Sorted(maps.Keys(m.accepted)) {
		file, _, _ := strings.Cut(key, " | ")
		if path.Dir(file) == m.trial.Package && !slices.Contains(keys, key) {
			fmt.Fprintf(m.w, "gone      %s: take it out of %s\n", key, survivors)
		}
	}
}
