package main

import (
	"context"
	"debug/elf"
	"debug/macho"
	"debug/pe"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"acreleaf/cmd/check/internal/step"
)

// A target is a kind of computer that the program is built for, with what the header of its file must say.
type target struct {
	system, processor string
	header            func(file string) (machine string, libraries []string, err error)
	machine           string // as the header names it
}

func (t target) name() string { return t.system + "/" + t.processor }

var targets = []target{
	{"linux", "amd64", elfHeader, elf.EM_X86_64.String()},
	{"linux", "arm64", elfHeader, elf.EM_AARCH64.String()},
	{"darwin", "amd64", machoHeader, macho.CpuAmd64.String()},
	{"darwin", "arm64", machoHeader, macho.CpuArm64.String()},
	{"windows", "amd64", peHeader, peMachine(pe.IMAGE_FILE_MACHINE_AMD64)},
	{"windows", "arm64", peHeader, peMachine(pe.IMAGE_FILE_MACHINE_ARM64)},
}

// side is how many targets are built at a time. A build ends with a link, which keeps one processor busy: beside it
// another target compiles.
const side = 2

// cross builds the program for every target as one file that needs nothing else, and reads the file's header.
func (b *bench) cross(ctx context.Context, r *step.Record) error {
	if err := os.MkdirAll(b.crossed, 0o755); err != nil {
		return err
	}
	notes, faults := make([]string, len(targets)), make([]error, len(targets))
	room := make(chan struct{}, side)
	var all sync.WaitGroup
	for i, t := range targets {
		all.Go(func() {
			room <- struct{}{}
			defer func() { <-room }()
			notes[i], faults[i] = t.build(ctx, b.crossed)
		})
	}
	all.Wait()
	for i, t := range targets {
		if faults[i] != nil {
			r.Failed++
			faults[i] = fmt.Errorf("%s: %w", t.name(), faults[i])
			continue
		}
		r.Passed++
		r.Note("  %-14s %s", t.name(), notes[i])
	}
	return errors.Join(faults...)
}

// build builds for one target and gives the size of what it built.
func (t target) build(ctx context.Context, folder string) (string, error) {
	file := filepath.Join(folder, "acreleaf-"+t.system+"-"+t.processor)
	args := []string{"build", "-trimpath", "-ldflags=-s -w", "-o", file, "./cmd/acreleaf"}
	build := exec.CommandContext(ctx, "go", args...)
	build.Env = append(build.Environ(), "CGO_ENABLED=0", "GOOS="+t.system, "GOARCH="+t.processor)
	if printed, err := build.CombinedOutput(); err != nil {
		return "", fmt.Errorf("go build: %w\n%s", err, printed)
	}
	if err := t.alone(file); err != nil {
		return "", err
	}
	info, err := os.Stat(file)
	if err != nil {
		return "", err
	}
	return fmt.Sprintf("%5.1f MB", float64(info.Size())/1e6), nil
}

// alone sees that a file is a program of the target that runs with what the system itself brings.
func (t target) alone(file string) error {
	machine, libraries, err := t.header(file)
	if err != nil {
		return err
	}
	if machine != t.machine {
		return fmt.Errorf("the header says that it is for %s, and %s is wanted", machine, t.machine)
	}
	own := systemLibraries[t.system]
	libraries = slices.DeleteFunc(libraries, func(name string) bool { return own(strings.ToLower(name)) })
	if len(libraries) > 0 {
		return fmt.Errorf("it needs files that the system does not bring: %s", strings.Join(libraries, ", "))
	}
	return nil
}

// systemLibraries says of each system which libraries are part of it. A program for Linux may need none at all: its
// systems do not agree on one.
var systemLibraries = map[string]func(name string) bool{
	"linux": func(string) bool { return false },
	"darwin": func(name string) bool {
		return strings.HasPrefix(name, "/usr/lib/") || strings.HasPrefix(name, "/system/library/frameworks/")
	},
	"windows": func(name string) bool { return name == "kernel32.dll" },
}
