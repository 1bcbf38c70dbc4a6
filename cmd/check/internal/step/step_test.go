package step

import (
	"bytes"
	"context"
	"errors"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"
)

func passing(_ context.Context, r *Record) error {
	r.Detail("hidden detail")
	return nil
}

func TestRunGoesOnAfterAFailure(t *testing.T) {
	var ran []string
	var one sync.Mutex
	note := func(name string, err error) func(context.Context, *Record) error {
		return func(_ context.Context, r *Record) error {
			one.Lock()
			defer one.Unlock()
			ran = append(ran, name)
			r.Note("note of %s", name)
			r.Detail("detail of %s", name)
			return err
		}
	}
	steps := []Step{
		{Name: "one", Run: note("one", errors.New("broken"))},
		{Name: "two", After: []string{"one"}, Run: note("two", nil)},
		{Name: "three", After: []string{"two"}, Run: note("three", nil)},
		{Name: "four", Tools: []string{"saw"}, Run: note("four", nil)},
		{Name: "five", Tools: []string{"axe"}, Run: note("five", nil)},
	}
	var out bytes.Buffer
	total := Run(t.Context(), &out, steps, map[string]error{"saw": errors.New("no saw here")})
	if want := (Tally{Passed: 1, Failed: 4}); total.Tally != want {
		t.Errorf("counted %v, want %v", total.Tally, want)
	}
	if want := []string{"five", "one"}; !slices.Equal(slices.Sorted(slices.Values(ran)), want) {
		t.Errorf("ran %q, want %q", ran, want)
	}
	text := out.String()
	for _, want := range []string{"note of one", "detail of one", "broken", `needs what "one" makes`,
		`needs what "two" makes`, "no saw here", "note of five"} {
		if !strings.Contains(text, want) {
			t.Errorf("the report lacks %q:\n%s", want, text)
		}
	}
	if strings.Contains(text, "detail of five") {
		t.Errorf("the detail of a step that passed was shown:\n%s", text)
	}
}

func TestTally(t *testing.T) {
	broken := errors.New("broken")
	for _, c := range []struct {
		record Record
		err    error
		want   Tally
	}{
		{Record{}, nil, Tally{1, 0}},
		{Record{}, broken, Tally{0, 1}},
		{Record{Passed: 7}, nil, Tally{7, 0}},
		{Record{Passed: 7}, broken, Tally{7, 1}},
		{Record{Passed: 7, Failed: 2}, broken, Tally{7, 2}},
		{Record{Failed: 2}, nil, Tally{0, 2}},
	} {
		if got := c.record.tally(c.err); got != c.want {
			t.Errorf("%d and %d with error %v: %v, want %v", c.record.Passed, c.record.Failed, c.err, got, c.want)
		}
	}
	if got := (Tally{12, 3}).String(); got != "12 passed, 3 failed" {
		t.Errorf("closing line %q", got)
	}
}

func TestCommandKeepsBothStreams(t *testing.T) {
	var r Record
	out, err := r.Command(t.Context(), Command{Args: []string{"sh", "-c", "echo $WORD; echo aside >&2; exit 3"},
		Env: []string{"WORD=main"}})
	if err == nil || !strings.Contains(err.Error(), "exit status 3") {
		t.Errorf("error %v", err)
	}
	if string(out) != "main\n" {
		t.Errorf("standard output %q", out)
	}
	if text := r.detail.String(); !strings.Contains(text, "main\n") || !strings.Contains(text, "aside\n") {
		t.Errorf("detail %q", text)
	}
}

func TestChoose(t *testing.T) {
	steps := []Step{
		{Name: "press", Run: passing}, {Name: "vet", Run: passing},
		{Name: "modules", After: []string{"press"}, Run: passing},
	}
	names := func(s []Step) (all []string) {
		for _, one := range s {
			all = append(all, one.Name)
		}
		return all
	}
	for name, want := range map[string][]string{
		"": {"press", "vet", "modules"}, "vet": {"vet"}, "modules": {"press", "modules"},
	} {
		got, err := Choose(steps, name)
		if err != nil || !slices.Equal(names(got), want) {
			t.Errorf("%q: %q, %v; want %q", name, names(got), err, want)
		}
	}
	_, err := Choose(steps, "vett")
	if err == nil || !strings.Contains(err.Error(), "press, vet, modules") {
		t.Errorf("an unknown step gave %v", err)
	}
}

func TestLongest(t *testing.T) {
	report := Report{times: []timed{{"one", time.Second}, {"two", 3 * time.Second}, {"three", 2 * time.Second}}}
	if got, want := report.Longest(2), "two 3 s, three 2 s"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got, want := report.Longest(5), "two 3 s, three 2 s, one 1 s"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
