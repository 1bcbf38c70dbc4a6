package main

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"acreleaf/cmd/check/internal/pressed"
)

// faults kills presses, begins two at once and pauses them, and prints what came of it. It is for a person who has
// changed how files are written; it takes about half an hour.
func faults(ctx context.Context, w io.Writer, arguments []string) (bool, error) {
	set := flag.NewFlagSet("faults", flag.ContinueOnError)
	set.SetOutput(w)
	kills := set.Int("kills", 300, "how many presses are killed, half of them where other files stand")
	pairs := set.Int("pairs", 100, "how many pairs of presses begin at once")
	pauses := set.Int("pauses", 60, "how many pauses fall into presses, desks and proofs")
	if err := set.Parse(arguments); err != nil {
		return false, err
	}
	dir, err := os.MkdirTemp("", "acreleaf-faults-")
	if err != nil {
		return false, err
	}
	defer os.RemoveAll(dir)
	acreleaf := filepath.Join(dir, "acreleaf")
	build := exec.CommandContext(ctx, "go", "build", "-o", acreleaf, "./cmd/acreleaf")
	if said, err := build.CombinedOutput(); err != nil {
		return false, fmt.Errorf("%w: %s", err, said)
	}
	k, err := newKilling(ctx, acreleaf, dir)
	if err != nil {
		return false, err
	}
	fmt.Fprintf(w, "sites of %d pages; a press of one takes %.1f s\n", killingPages, k.took.Seconds())
	passed := true
	tell := func(counted any, err error) {
		fmt.Fprintln(w, counted)
		if err != nil {
			passed = false
			fmt.Fprintf(w, "FAILED: %v\n", err)
		}
	}
	for _, withOthers := range []bool{false, true} {
		c, err := k.kill(ctx, *kills/2, withOthers)
		tell(c, err)
	}
	p, err := k.pairs(ctx, *pairs)
	tell(p, err)
	for _, kind := range []struct {
		name string
		run  func(ctx context.Context, acreleaf, dir string, pauses bool) (stops int, made []byte, err error)
	}{{"press", pausedPress}, {"desk", pausedDesk}, {"proof", pausedProof}} {
		_, want, err := kind.run(ctx, acreleaf, dir, false)
		stops, runs := 0, 0
		for err == nil && stops < *pauses/3 {
			var n int
			var made []byte
			n, made, err = kind.run(ctx, acreleaf, dir, true)
			if err == nil && !bytes.Equal(made, want) {
				err = fmt.Errorf("a %s that was paused made something else", kind.name)
			}
			stops, runs = stops+n, runs+1
		}
		tell(fmt.Sprintf("%s: %d pauses at random moments (runs: %d), %d bytes the same each time", kind.name, stops, runs,
			len(want)), err)
	}
	return passed && pausedSteps(ctx, w), nil
}

// pausedSteps stops presses for half a second at each step of their writing. The test that does it has the disk on
// which a program stops.
func pausedSteps(ctx context.Context, w io.Writer) bool {
	printed, err := exec.CommandContext(ctx, "go", "test", "-count=1", "-v", "-run", "^TestAPauseAtEachStep$",
		"./cmd/acreleaf/internal/output", "-args", "-pause", "500ms").CombinedOutput()
	if err != nil {
		fmt.Fprintf(w, "FAILED: a pause at a step of writing: %v\n%s\n", err, printed)
		return false
	}
	for line := range strings.Lines(string(printed)) {
		if _, told, counts := strings.Cut(line, ".go:"); counts {
			_, told, _ = strings.Cut(told, ": ")
			fmt.Fprint(w, told)
		}
	}
	return true
}

// runProgram runs a program, with pauses or without.
func runProgram(ctx context.Context, program *exec.Cmd, pauses bool) (int, error) {
	if pauses {
		return runPaused(ctx, program)
	}
	return 0, program.Run()
}

func pausedPress(ctx context.Context, acreleaf, dir string, pauses bool) (int, []byte, error) {
	to := filepath.Join(dir, "paused")
	if err := os.RemoveAll(to); err != nil {
		return 0, nil, err
	}
	stops, err := runProgram(ctx, exec.CommandContext(ctx, acreleaf, "press", "--to", to), pauses)
	if err != nil {
		return stops, nil, err
	}
	made, err := allBytes(to)
	return stops, made, err
}

// allBytes is what is in the files of a folder, in order.
func allBytes(dir string) ([]byte, error) {
	tree, err := pressed.Snapshot(dir)
	var made []byte
	for _, name := range tree.Differ(nil) {
		made = fmt.Appendf(made, "%s %x\n", name, tree[name])
	}
	return made, err
}

func pausedProof(ctx context.Context, acreleaf, _ string, pauses bool) (int, []byte, error) {
	var out bytes.Buffer
	proof := exec.CommandContext(ctx, acreleaf, "proof", "--today", "2026-11-30")
	proof.Stdout, proof.Stderr = &out, &out
	stops, err := runProgram(ctx, proof, pauses)
	return stops, out.Bytes(), err
}

// pausedDesk starts a desk, pauses it until it shows its address, and reads every page from it.
func pausedDesk(ctx context.Context, acreleaf, dir string, pauses bool) (stops int, pages []byte, err error) {
	desk := exec.CommandContext(ctx, acreleaf, "desk", "--port", "0")
	out, err := desk.StdoutPipe()
	if err != nil {
		return 0, nil, err
	}
	if err := desk.Start(); err != nil {
		return 0, nil, err
	}
	defer func() { _ = desk.Process.Kill(); _ = desk.Wait() }()
	found := make(chan string, 1)
	go func() {
		for lines := bufio.NewScanner(out); lines.Scan(); {
			if address := deskAddress.FindString(lines.Text()); address != "" {
				found <- address
			}
		}
	}()
	address := ""
	for deadline := time.Now().Add(time.Minute); address == ""; {
		select {
		case address = <-found:
		case <-time.After(between(20, 120)):
			if time.Now().After(deadline) {
				return stops, nil, errors.New("the desk shows no address")
			}
			if !pauses {
				continue
			}
			stopped, err := pause(ctx, desk.Process.Pid)
			if err != nil {
				return stops, nil, err
			}
			if stopped {
				stops++
			}
		}
	}
	pages, err = readPages(ctx, strings.TrimSuffix(address, "/"), filepath.Join(dir, "plain-desk"), acreleaf)
	return stops, pages, err
}

// readPages asks a desk for every page that a press makes.
func readPages(ctx context.Context, address, site, acreleaf string) (pages []byte, err error) {
	if err := exec.CommandContext(ctx, acreleaf, "press", "--to", site).Run(); err != nil {
		return nil, err
	}
	tree, err := pressed.Snapshot(site)
	if err != nil {
		return nil, err
	}
	for _, name := range tree.Differ(nil) {
		if !strings.HasSuffix(name, ".html") || name == "404.html" {
			continue
		}
		page := address + "/" + strings.TrimSuffix(name, "index.html")
		text, err := get(ctx, page)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		pages = append(pages, text...)
	}
	return pages, nil
}
