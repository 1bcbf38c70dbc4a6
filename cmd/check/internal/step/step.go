// Package step runs the checks, three beside each other, and tells what came of each.
//
// The package owns the order, the timing, the printed lines and the counts. It must not know what any step checks,
// and it never leaves one out: a step that could not start has failed.
package step

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"os/exec"
	"strings"
	"sync"
	"time"
)

// A Step is one check.
type Step struct {
	Name  string
	After []string // the steps whose product this one reads; when one of them failed, this one cannot run
	Tools []string // the tools it calls
	Group string   // steps of one group never run beside each other; the empty group is none
	Alone bool     // nothing runs beside it, since it takes time by the clock
	Run   func(ctx context.Context, r *Record) error
}

// A Record is what a step leaves behind.
type Record struct {
	Passed, Failed int // checks inside the step; both 0 when the step is one check as a whole
	notes          []string
	detail         bytes.Buffer
}

// Note adds a line that is shown whether or not the step fails.
func (r *Record) Note(format string, args ...any) {
	r.notes = append(r.notes, fmt.Sprintf(format, args...))
}

// Detail adds a line that is shown only when the step fails.
func (r *Record) Detail(format string, args ...any) {
	fmt.Fprintf(&r.detail, format+"\n", args...)
}

// patience is how long the output of a command may stay open after its end, by a child that it left behind.
const patience = 10 * time.Second

// A Command is a program with its arguments, run in the folder Dir with Env added to this process's environment.
type Command struct {
	Dir   string
	Env   []string
	Args  []string
	Quiet bool // the step shows standard output in a form of its own
}

// Command runs a command to its end and gives what it wrote to standard output. All that it wrote, to standard
// error too, is part of the detail, unless the command is quiet.
func (r *Record) Command(ctx context.Context, c Command) ([]byte, error) {
	r.Detail("$ %s", strings.Join(c.Args, " "))
	run := exec.CommandContext(ctx, c.Args[0], c.Args[1:]...)
	run.Dir = c.Dir
	run.WaitDelay = patience
	if c.Env != nil {
		run.Env = append(run.Environ(), c.Env...)
	}
	var out bytes.Buffer
	var one sync.Mutex
	run.Stdout = &out
	if !c.Quiet {
		run.Stdout = &shared{&one, io.MultiWriter(&r.detail, &out)}
	}
	run.Stderr = &shared{&one, &r.detail}
	if err := run.Run(); err != nil {
		return out.Bytes(), fmt.Errorf("%s: %w", c.Args[0], err)
	}
	return out.Bytes(), nil
}

// shared lets the two streams of a command, which are copied side by side, end in one buffer.
type shared struct {
	one *sync.Mutex
	to  io.Writer
}

func (s *shared) Write(p []byte) (int, error) {
	s.one.Lock()
	defer s.one.Unlock()
	return s.to.Write(p)
}
