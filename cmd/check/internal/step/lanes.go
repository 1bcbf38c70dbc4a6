package step

import (
	"context"
	"fmt"
	"io"
	"slices"
	"time"
)

// lanes is how many steps run at once: one more than the two processors for which the check is made, since a step waits
// for a browser or a disk about a third of its time.
const lanes = 3

// A run is the steps that have not ended yet, and what came of those that have.
type run struct {
	waiting, running []Step
	failed           map[string]bool
	report           Report
}

// An ending is what came of a step.
type ending struct {
	step   Step
	record *Record
	err    error
	took   time.Duration
}

// Run runs every step, three at once where they may, and prints all of a step as it ends. Of the steps that can start,
// the first in order does. missing says by name why a tool is not to be had; a step that needs it fails with that
// sentence.
func Run(ctx context.Context, w io.Writer, steps []Step, missing map[string]error) Report {
	r := &run{waiting: slices.Clone(steps), failed: map[string]bool{}}
	endings := make(chan ending)
	for len(r.waiting)+len(r.running) > 0 {
		for i := r.next(); i >= 0; i = r.next() {
			s := r.waiting[i]
			r.waiting = slices.Delete(r.waiting, i, i+1)
			r.running = append(r.running, s)
			stopped := s.stopped(r.failed, missing)
			go func() { endings <- s.end(ctx, stopped) }()
		}
		r.take(w, <-endings)
	}
	return r.report
}

// next is the place of the first waiting step that can start now, or -1.
func (r *run) next() int {
	if len(r.running) >= lanes {
		return -1
	}
	return slices.IndexFunc(r.waiting, func(s Step) bool {
		unfinished := func(name string) bool {
			named := func(other Step) bool { return other.Name == name }
			return slices.ContainsFunc(r.waiting, named) || slices.ContainsFunc(r.running, named)
		}
		return !slices.ContainsFunc(s.After, unfinished) && !slices.ContainsFunc(r.running, s.keepsFrom)
	})
}

// keepsFrom says whether a step may not run beside another.
func (s Step) keepsFrom(other Step) bool {
	return s.Alone || other.Alone || s.Group != "" && s.Group == other.Group
}

// end runs a step to its end, unless something stopped it before.
func (s Step) end(ctx context.Context, stopped error) ending {
	e := ending{step: s, record: &Record{}, err: stopped}
	start := time.Now()
	if stopped == nil {
		e.err = s.Run(ctx, e.record)
	}
	e.took = time.Since(start)
	return e
}

// take counts and prints a step that has ended.
func (r *run) take(w io.Writer, e ending) {
	r.running = slices.DeleteFunc(r.running, func(s Step) bool { return s.Name == e.step.Name })
	r.failed[e.step.Name] = e.err != nil || e.record.Failed > 0
	one := e.record.tally(e.err)
	r.report.Passed += one.Passed
	r.report.Failed += one.Failed
	r.report.times = append(r.report.times, timed{e.step.Name, e.took})
	fmt.Fprintf(w, "%-14s ", e.step.Name)
	e.record.print(w, one, e.err, e.took)
}
