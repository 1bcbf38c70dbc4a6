package step

import (
	"bytes"
	"context"
	"errors"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/synctest"
	"time"
)

// clocked makes steps that take a time, and notes which of them ran at the same time.
type clocked struct {
	one     sync.Mutex
	running []string
	beside  map[string][]string // by step
}

func (c *clocked) step(name string, takes time.Duration, s Step) Step {
	s.Name = name
	s.Run = func(_ context.Context, r *Record) error {
		c.begin(name)
		time.Sleep(takes)
		c.one.Lock()
		defer c.one.Unlock()
		c.running = slices.DeleteFunc(c.running, func(other string) bool { return other == name })
		r.Note("note of %s", name)
		return nil
	}
	return s
}

func (c *clocked) begin(name string) {
	c.one.Lock()
	defer c.one.Unlock()
	c.beside[name] = slices.Clone(c.running)
	for _, other := range c.running {
		c.beside[other] = append(c.beside[other], name)
	}
	c.running = append(c.running, name)
}

func TestThreeStepsRunAtOnce(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		c := &clocked{beside: map[string][]string{}}
		var out bytes.Buffer
		start := time.Now()
		report := Run(t.Context(), &out, []Step{
			c.step("compile", 3*time.Second, Step{Group: "go"}),
			c.step("test", 4*time.Second, Step{Group: "go"}),
			c.step("pages", 5*time.Second, Step{}),
			c.step("made", time.Second, Step{After: []string{"test"}}),
			c.step("clock", 2*time.Second, Step{Alone: true}),
			c.step("brief", time.Second, Step{}),
			c.step("late", 5*time.Second, Step{}),
		}, nil)
		// compile and test, one after the other, beside pages and brief, and after brief late; then made; then clock.
		for name, want := range map[string]string{
			"compile": "brief late pages", "pages": "brief compile late test", "test": "late pages", "made": "", "clock": "",
			"brief": "compile pages", "late": "compile pages test",
		} {
			if got, ran := c.beside[name]; strings.Join(slices.Sorted(slices.Values(got)), " ") != want || !ran {
				t.Errorf("%s ran beside %q, want %q", name, got, want)
			}
		}
		if took, want := time.Since(start), 10*time.Second; took != want {
			t.Errorf("it took %s, want %s", took, want)
		}
		if want := (Tally{Passed: 7}); report.Tally != want {
			t.Errorf("counted %v, want %v", report.Tally, want)
		}
		order := []string{"brief", "note of brief", "compile", "note of compile", "pages", "late", "test", "made", "clock"}
		at := 0
		for _, name := range order {
			next := strings.Index(out.String()[at:], name)
			if next < 0 {
				t.Fatalf("%s is not where it should be in\n%s", name, out.String())
			}
			at += next
		}
	})
}

// What a step needs may fail while another runs; what needs that does not start.
func TestAFailureBesideAnother(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		c := &clocked{beside: map[string][]string{}}
		broken := Step{Name: "press", Run: func(context.Context, *Record) error { return errors.New("broken") }}
		var out bytes.Buffer
		report := Run(t.Context(), &out, []Step{
			broken, c.step("long", time.Minute, Step{}), c.step("sizes", time.Second, Step{After: []string{"press"}}),
		}, nil)
		if want := (Tally{Passed: 1, Failed: 2}); report.Tally != want {
			t.Errorf("counted %v, want %v\n%s", report.Tally, want, out.String())
		}
		if _, ran := c.beside["sizes"]; ran {
			t.Error("sizes ran without what it needs")
		}
	})
}
