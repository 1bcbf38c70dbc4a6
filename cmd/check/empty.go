package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"time"

	"acreleaf/cmd/check/internal/pressed"
	"acreleaf/cmd/check/internal/step"
)

// A bare place is a folder with the program in it and nothing else, an empty home folder and an empty folder for
// temporary files, as on the computer of somebody who has downloaded one file.
type bare struct{ folder, program, home, tmp string }

// newBare makes the place, and puts a copy of the program there.
func newBare(dir, program string) (*bare, error) {
	p := &bare{folder: filepath.Join(dir, "folder"), home: filepath.Join(dir, "home"), tmp: filepath.Join(dir, "tmp")}
	p.program = filepath.Join(p.folder, "acreleaf")
	for _, folder := range []string{p.folder, p.home, p.tmp} {
		if err := os.MkdirAll(folder, 0o755); err != nil {
			return nil, err
		}
	}
	text, err := os.ReadFile(program)
	if err != nil {
		return nil, err
	}
	return p, os.WriteFile(p.program, text, 0o755)
}

// env is what the program is told of the computer: no folder with programs is there.
func (p *bare) env() []string {
	return []string{"PATH=" + filepath.Join(p.folder, "no-programs"), "HOME=" + p.home, "TMPDIR=" + p.tmp}
}

// emptySite is the folder that everything must be written into.
const emptySite = "here"

// empty starts a site in an empty folder with nothing but the program, and sees that this wrote the site alone.
func (b *bench) empty(ctx context.Context, r *step.Record) error {
	place, err := newBare(b.bare, b.acreleaf)
	if err != nil {
		return err
	}
	before, err := pressed.Snapshot(b.bare, emptySite)
	if err != nil {
		return err
	}
	site := filepath.Join(place.folder, emptySite)
	for _, one := range []struct {
		folder string
		words  []string
	}{
		{place.folder, []string{"draft", "--site", emptySite}},
		{site, []string{"press"}},
		{site, []string{"proof"}},
		{site, []string{"draft", "guides/frost.md", "--with", "water-nitrogen"}},
		{site, []string{"press"}},
	} {
		args := append([]string{place.program}, one.words...)
		if _, err := r.Command(ctx, step.Command{Dir: one.folder, Env: place.env(), Args: args}); err != nil {
			return err
		}
		r.Passed++
	}
	if err := place.desk(ctx, site); err != nil {
		return err
	}
	r.Passed++
	after, err := pressed.Snapshot(b.bare, emptySite)
	if err != nil {
		return err
	}
	if err := same("something was written beside the site", before.Differ(after)); err != nil {
		return err
	}
	r.Passed++
	return nil
}

// deskPatience is how long the desk may take in all.
const deskPatience = 30 * time.Second

// desk opens the desk of a site, reads its home page and a guide, and stops it as Ctrl+C does.
func (p *bare) desk(ctx context.Context, site string) error {
	ctx, cancel := context.WithTimeout(ctx, deskPatience)
	defer cancel()
	desk := exec.CommandContext(ctx, p.program, "desk", "--port", "0")
	desk.Dir, desk.Env, desk.Stderr = site, append(desk.Environ(), p.env()...), os.Stderr
	out, err := desk.StdoutPipe()
	if err != nil {
		return err
	}
	if err := desk.Start(); err != nil {
		return err
	}
	fault := visit(ctx, out)
	if fault != nil {
		_ = desk.Process.Kill() // it may not listen to anything else
	} else {
		fault = desk.Process.Signal(os.Interrupt)
	}
	if err := desk.Wait(); err != nil && fault == nil {
		fault = fmt.Errorf("the desk did not end well: %w", err)
	}
	return fault
}

var (
	deskAddress  = regexp.MustCompile(`http://127\.0\.0\.1:\d+/`)
	guideAddress = regexp.MustCompile(`href="?(guides/[a-z0-9-]+/)`)
)

// visit reads the address of a desk and what is there.
func visit(ctx context.Context, out io.Reader) error {
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		return fmt.Errorf("the desk says nothing: %w", err)
	}
	address := deskAddress.FindString(line)
	if address == "" {
		return fmt.Errorf("the desk names no address, and says %q", line)
	}
	home, err := get(ctx, address)
	if err != nil {
		return err
	}
	guide := guideAddress.FindSubmatch(home)
	if guide == nil {
		return errors.New("the home page of the new site leads to no guide")
	}
	_, err = get(ctx, address+string(guide[1]))
	return err
}

// get reads a page of a server on this computer.
func get(ctx context.Context, address string) ([]byte, error) {
	ask, err := http.NewRequestWithContext(ctx, http.MethodGet, address, nil)
	if err != nil {
		return nil, err
	}
	answer, err := http.DefaultClient.Do(ask)
	if err != nil {
		return nil, err
	}
	defer answer.Body.Close()
	if answer.StatusCode != http.StatusOK {
		return nil, fmt.Errorf("%s answers %s", address, answer.Status)
	}
	return io.ReadAll(answer.Body)
}
