package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// tiny builds a program of a few lines for a target.
func tiny(t *testing.T, system, processor string) string {
	t.Helper()
	folder := t.TempDir()
	source, file := filepath.Join(folder, "tiny.go"), filepath.Join(folder, "tiny")
	if err := os.WriteFile(source, []byte("package main\n\nfunc main() { println() }\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	build := exec.Command("go", "build", "-o", file, source)
	build.Env = append(build.Environ(), "CGO_ENABLED=0", "GOOS="+system, "GOARCH="+processor)
	if printed, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, printed)
	}
	return file
}

// A file of this machine passes as one of this machine only.
func TestHeaderOfAnotherMachine(t *testing.T) {
	file := tiny(t, runtime.GOOS, runtime.GOARCH)
	for _, one := range targets {
		err := one.alone(file)
		if own := one.name() == runtime.GOOS+"/"+runtime.GOARCH; own != (err == nil) {
			t.Errorf("%s: %v", one.name(), err)
		}
	}
}

// The test of this package has libraries of the system in it when it is built with the race detector; gcc's own
// programs always have.
func TestFileWithLibraries(t *testing.T) {
	gcc, err := exec.LookPath("gcc")
	if err != nil {
		t.Fatal(err)
	}
	_, libraries, err := elfHeader(gcc)
	if err != nil || !strings.Contains(strings.Join(libraries, " "), "libc.so") ||
		libraries[len(libraries)-1] != "a loader" {
		t.Error(libraries, err)
	}
}

// Every library of a system is told from one that is put beside the program.
func TestSystemLibraries(t *testing.T) {
	for name, own := range map[string]bool{
		"linux libc.so.6": false, "darwin /usr/lib/libsystem.b.dylib": true, "darwin @rpath/libz.dylib": false,
		"darwin /system/library/frameworks/security.framework/versions/a/security": true,
		"windows kernel32.dll": true, "windows libgcc.dll": false,
	} {
		system, library, _ := strings.Cut(name, " ")
		if systemLibraries[system](library) != own {
			t.Errorf("%s: part of the system: %v", name, !own)
		}
	}
}

// A check on any machine builds for another kind than its own.
func TestForeign(t *testing.T) {
	if foreign().system == runtime.GOOS {
		t.Errorf("%s is this machine", foreign().name())
	}
}
