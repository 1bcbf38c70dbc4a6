package step

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"
)

// A Tally counts checks.
type Tally struct{ Passed, Failed int }

// String is the closing line.
func (t Tally) String() string { return fmt.Sprintf("%d passed, %d failed", t.Passed, t.Failed) }

// A Report is what came of a run: the counts, and how long each step took.
type Report struct {
	Tally
	times []timed
}

type timed struct {
	name string
	took time.Duration
}

// Longest names the n steps that took longest, with their seconds, the longest first.
func (r Report) Longest(n int) string {
	byTime := slices.SortedStableFunc(slices.Values(r.times), func(a, b timed) int { return cmp.Compare(b.took, a.took) })
	var all []string
	for _, one := range byTime[:min(n, len(byTime))] {
		all = append(all, fmt.Sprintf("%s %.0f s", one.name, one.took.Seconds()))
	}
	return strings.Join(all, ", ")
}

// stopped says why a step cannot start, or nil.
func (s Step) stopped(failed map[string]bool, missing map[string]error) error {
	for _, name := range s.Tools {
		if err := missing[name]; err != nil {
			return err
		}
	}
	for _, name := range s.After {
		if failed[name] {
			return fmt.Errorf("not run, because it needs what %q makes, and that failed", name)
		}
	}
	return nil
}

// tally counts a step: its own checks, or itself as one. An error is always a failure.
func (r *Record) tally(err error) Tally {
	t := Tally{r.Passed, r.Failed}
	switch {
	case err != nil && t.Failed == 0:
		t.Failed = 1
	case t == Tally{}:
		t.Passed = 1
	}
	return t
}

func (r *Record) print(w io.Writer, t Tally, err error, took time.Duration) {
	word := "ok"
	if t.Failed > 0 {
		word = "FAILED"
	}
	fmt.Fprintf(w, "%-6s %6.1f s", word, took.Seconds())
	if t.Passed+t.Failed > 1 {
		fmt.Fprintf(w, "  %d of %d checks", t.Passed, t.Passed+t.Failed)
	}
	fmt.Fprintln(w)
	for _, note := range r.notes {
		fmt.Fprintln(w, note)
	}
	if t.Failed == 0 {
		return
	}
	w.Write(r.detail.Bytes())
	if err != nil {
		fmt.Fprintln(w, err)
	}
	fmt.Fprintln(w)
}

// Choose gives the step of that name with all that it needs, in order. The empty name stands for all of them.
func Choose(steps []Step, name string) ([]Step, error) {
	if name == "" {
		return steps, nil
	}
	var names []string
	wanted := map[string]bool{name: true}
	var chosen []Step
	for _, s := range slices.Backward(steps) {
		names = append([]string{s.Name}, names...)
		if !wanted[s.Name] {
			continue
		}
		chosen = append([]Step{s}, chosen...)
		for _, need := range s.After {
			wanted[need] = true
		}
	}
	if len(chosen) == 0 {
		return nil, errors.New("there is no step " + name + "; the steps are " + strings.Join(names, ", "))
	}
	return chosen, nil
}
