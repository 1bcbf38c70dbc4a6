package tool

import (
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// A bench is a made-up machine: commands that are there, packages that can be had, and a record of what was run.
type bench struct {
	there   map[string]bool
	brings  map[string]string // package name to the command it brings
	refuses map[string]bool   // commands that end with an error, by their first words
	node    string
	ran     []string
}

func (b *bench) machine(root bool) Machine {
	return Machine{LookPath: b.lookPath, Run: b.run, Root: root, Say: io.Discard}
}

func (b *bench) lookPath(name string) (string, error) {
	if b.there[name] {
		return "/bin/" + name, nil
	}
	return "", errors.New("not found")
}

func (b *bench) run(_ context.Context, dir string, command ...string) ([]byte, error) {
	line := strings.Join(command, " ")
	b.ran = append(b.ran, line)
	for refused := range b.refuses {
		if strings.Contains(line, refused) {
			return []byte("first\nlast words"), errors.New("exit status 100")
		}
	}
	if slices.Contains(command, "install") {
		for _, word := range command {
			b.there[b.brings[word]] = true
		}
	}
	if line == "npm ci" {
		return nil, os.MkdirAll(filepath.Join(dir, "node_modules"), 0o755)
	}
	return []byte(b.node), nil
}

func TestNothingIsInstalledWhenAllIsThere(t *testing.T) {
	b := &bench{there: map[string]bool{"wasm-validate": true, "node": true}, node: "v20.19.0\n"}
	if missing := Find(t.Context(), b.machine(true), []Tool{Wabt, Node}); len(missing) != 0 {
		t.Errorf("missing: %v", missing)
	}
	if want := []string{"node --version"}; !slices.Equal(b.ran, want) {
		t.Errorf("ran %q, want %q", b.ran, want)
	}
}

func TestMissingToolsComeFromDebian(t *testing.T) {
	b := &bench{
		there:  map[string]bool{"apt-get": true},
		brings: map[string]string{"wabt": "wasm-validate", "chromium-headless-shell": "chromium-headless-shell"},
	}
	if missing := Find(t.Context(), b.machine(true), []Tool{Wabt, Chromium}); len(missing) != 0 {
		t.Errorf("missing: %v", missing)
	}
	apt := "env DEBIAN_FRONTEND=noninteractive apt-get "
	want := []string{
		apt + "update -q",
		apt + "install -y -q --no-install-recommends wabt",
		apt + "install -y -q --no-install-recommends chromium-headless-shell fonts-dejavu-core",
	}
	if !slices.Equal(b.ran, want) {
		t.Errorf("ran %q\nwant %q", b.ran, want)
	}
}

func TestSudoIsUsedWhenItAsksNothing(t *testing.T) {
	b := &bench{
		there:  map[string]bool{"apt-get": true, "sudo": true},
		brings: map[string]string{"wabt": "wasm-validate"},
	}
	if missing := Find(t.Context(), b.machine(false), []Tool{Wabt}); len(missing) != 0 {
		t.Errorf("missing: %v", missing)
	}
	last := b.ran[len(b.ran)-1]
	if !strings.HasPrefix(last, "sudo -n env DEBIAN_FRONTEND=noninteractive apt-get install") {
		t.Errorf("ran %q", last)
	}
}

func TestWhatCannotBeInstalledSaysHow(t *testing.T) {
	cases := []struct {
		name    string
		root    bool
		there   []string
		refuses string
		why     string
	}{
		{"no apt-get", true, nil, "", "this machine has no apt-get"},
		{"no right to", false, []string{"apt-get"}, "", "needs root, and this machine has no sudo"},
		{"sudo asks", false, []string{"apt-get", "sudo"}, "sudo -n true", "sudo asks for a password"},
		{"lists fail", true, []string{"apt-get"}, "update", "last words"},
		{"install fails", true, []string{"apt-get"}, "install", "last words"},
		{"package lacks it", true, []string{"apt-get"}, "", "wasm-validate is not on this machine"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			b := &bench{there: map[string]bool{}, refuses: map[string]bool{}}
			for _, name := range c.there {
				b.there[name] = true
			}
			if c.refuses != "" {
				b.refuses[c.refuses] = true
			}
			err := Find(t.Context(), b.machine(c.root), []Tool{Wabt})["wasm-validate"]
			if err == nil {
				t.Fatal("a tool that is not there passed")
			}
			for _, want := range []string{c.why, "apt-get install wabt", "is needed to check the WebAssembly modules"} {
				if !strings.Contains(err.Error(), want) {
					t.Errorf("the message lacks %q:\n%v", want, err)
				}
			}
		})
	}
}

func TestOldNodeIsNotEnough(t *testing.T) {
	for version, enough := range map[string]bool{
		"v18.20.4": false, "v20.18.9": false, "v20.19.0": true, "v22.1.0": true, "v9.9.9": false, "": false, "vx.y": false,
	} {
		b := &bench{there: map[string]bool{"node": true}, node: version}
		missing := Find(t.Context(), b.machine(true), []Tool{Node})
		if !enough && !strings.HasSuffix(missing["node"].Error(), Node.Note) {
			t.Errorf("version %q: the message does not end with the note: %v", version, missing["node"])
		}
		if got := missing["node"] == nil; got != enough {
			t.Errorf("version %q: enough is %v, want %v (%v)", version, got, enough, missing["node"])
		}
	}
}

func TestPackagesFollowTheLockFile(t *testing.T) {
	folder := t.TempDir()
	lock := filepath.Join(folder, "package-lock.json")
	b := &bench{}
	if err := Packages(t.Context(), b.machine(true), folder); err == nil {
		t.Error("a folder without a lock file passed")
	}
	for i, c := range []struct {
		lock string
		runs int
	}{{"{}", 1}, {"{}", 1}, {`{"a":1}`, 2}} {
		if err := os.WriteFile(lock, []byte(c.lock), 0o644); err != nil {
			t.Fatal(err)
		}
		if err := Packages(t.Context(), b.machine(true), folder); err != nil {
			t.Fatal(err)
		}
		if len(b.ran) != c.runs {
			t.Errorf("step %d: npm ran %d times, want %d", i, len(b.ran), c.runs)
		}
	}
	b.refuses = map[string]bool{"npm ci": true}
	if err := os.WriteFile(lock, []byte("{ }"), 0o644); err != nil {
		t.Fatal(err)
	}
	err := Packages(t.Context(), b.machine(true), folder)
	if err == nil || !strings.Contains(err.Error(), "npm ci --prefix") {
		t.Errorf("a failed install gave %v", err)
	}
}
