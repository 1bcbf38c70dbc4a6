package main

import (
	"context"
	"debug/elf"
	"debug/macho"
	"debug/pe"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

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

// foreign is the target that every check builds for, beside the machine it runs on: the one that differs most. The
// others cost two minutes of a processor each on a new machine, and are built for a release.
func foreign() target {
	i := slices.IndexFunc(targets, func(t target) bool { return t.system == "windows" && t.system != runtime.GOOS })
	if i < 0 {
		i = slices.IndexFunc(targets, func(t target) bool { return t.system != runtime.GOOS })
	}
	return targets[i]
}

// cross builds the program for another kind of computer as one file that needs nothing else, and reads its header.
func (b *bench) cross(ctx context.Context, r *step.Record) error {
	if err := os.MkdirAll(b.crossed, 0o755); err != nil {
		return err
	}
	t := foreign()
	// The compiler refuses the same programs without its optimisations, and takes three quarters of the time.
	to := filepath.Join(b.crossed, t.file())
	size, err := t.build(ctx, build{from: ".", to: to, environment: roomy}, "-gcflags=all=-N -l")
	if err != nil {
		return fmt.Errorf("%s: %w", t.name(), err)
	}
	r.Note("  %-14s %s", t.name(), size)
	return nil
}

// file is the name of the program for a target.
func (t target) file() string {
	name := "acreleaf-" + t.system + "-" + t.processor
	if t.system == "windows" {
		name += ".exe"
	}
	return name
}

// A build is from a folder of the project to a file, with more for the environment of the Go tool.
type build struct {
	from, to    string
	environment []string
}

// build builds the file of one target, with more flags for the Go tool, and gives its size as text. The commit is
// written into the file where the project lies in a repository.
func (t target) build(ctx context.Context, b build, flags ...string) (string, error) {
	args := append([]string{"build", "-trimpath", "-buildvcs=auto", "-ldflags=-s -w", "-o", b.to}, flags...)
	args = append(args, "./cmd/acreleaf")
	tool := exec.CommandContext(ctx, "go", args...)
	tool.Dir = b.from
	tool.Env = append(tool.Environ(), "CGO_ENABLED=0", "GOOS="+t.system, "GOARCH="+t.processor)
	tool.Env = append(tool.Env, b.environment...)
	if printed, err := tool.CombinedOutput(); err != nil {
		return "", fmt.Errorf("go build: %w\n%s", err, printed)
	}
	if err := t.alone(b.to); err != nil {
		return "", err
	}
	info, err := os.Stat(b.to)
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
