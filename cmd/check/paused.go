package main

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"time"

	"acreleaf/cmd/check/internal/pressed"
	"acreleaf/cmd/check/internal/step"
)

// pausedPresses is how often the site is pressed with pauses. Each costs the pauses and a press, two seconds or so.
const pausedPresses = 3

// paused presses the site while something stops the program and lets it go on, as a busy machine does: at random times,
// for 0.3 to 0.5 seconds, until the press is done. The bytes must be those of a press that nothing stopped.
func (b *bench) paused(ctx context.Context, r *step.Record) error {
	whole, err := pressed.Snapshot(b.site)
	if err != nil {
		return err
	}
	dir := b.site + "-paused"
	var faults []error
	stops := 0
	for range pausedPresses {
		if err := os.RemoveAll(dir); err != nil {
			return err
		}
		press := exec.CommandContext(ctx, b.acreleaf, "press", "--from", "content", "--to", dir)
		press.Env = append(press.Environ(),
			"HOME="+filepath.Join(b.aside, "home"), "TMPDIR="+filepath.Join(b.aside, "tmp"))
		n, err := runPaused(ctx, press)
		if err != nil {
			return err
		}
		stops += n
		next, err := pressed.Snapshot(dir)
		if err != nil {
			return err
		}
		faults = append(faults, same("a press that was paused differs from one that was not", whole.Differ(next)))
	}
	r.Note("  %d presses, stopped %d times", pausedPresses, stops)
	if stops < pausedPresses {
		faults = append(faults, fmt.Errorf("only %d stops fell into a press; make the waits before them shorter", stops))
	}
	return errors.Join(faults...)
}

// runPaused runs a program to its end and gives how often it was stopped.
func runPaused(ctx context.Context, program *exec.Cmd) (stops int, err error) {
	if err := program.Start(); err != nil {
		return 0, err
	}
	done := make(chan error, 1)
	go func() { done <- program.Wait() }()
	for {
		select {
		case err := <-done:
			return stops, err
		case <-time.After(between(20, 120)):
		}
		stopped, err := pause(ctx, program.Process.Pid)
		if stopped {
			stops++
		}
		if err == nil {
			continue
		}
		select {
		case ended := <-done: // it was at its end when it was told to stop
			return stops, ended
		case <-time.After(time.Second):
			return stops, fmt.Errorf("the program stays stopped: %w", err)
		}
	}
}

// pause stops a process for 0.3 to 0.5 seconds, unless it has just ended.
func pause(ctx context.Context, process int) (stopped bool, err error) {
	if tell(ctx, process, "-STOP") != nil {
		return false, nil
	}
	time.Sleep(between(300, 500))
	return true, tell(ctx, process, "-CONT")
}

// between is a random time from least to most milliseconds.
func between(least, most int) time.Duration {
	return time.Duration(least+rand.IntN(most-least)) * time.Millisecond
}

func tell(ctx context.Context, process int, name string) error {
	return exec.CommandContext(ctx, "kill", name, strconv.Itoa(process)).Run()
}
