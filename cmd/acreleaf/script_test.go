package main

import (
	"bytes"
	"crypto/sha256"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "write what the commands print into the scripts; then read it")

// The programs that scripts run.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"acreleaf":  main,
		"guest":     asGuest,
		"limited":   asLimited,
		"floor":     asFloor,
		"unwatched": asUnwatched,
	})
}

// TestScript runs the whole program as a user does. Every message that a user can meet is in one of the scripts.
func TestScript(t *testing.T) { runScripts(t, "script") }

func runScripts(t *testing.T, folder string) {
	// Most scripts start from a site that was pressed. It is pressed once: that is most of what a script would take.
	pressed := t.TempDir()
	if err := os.CopyFS(pressed, os.DirFS(filepath.Join("testdata", "site"))); err != nil {
		t.Fatal(err)
	}
	if said, err := press(pressed, "acreleaf"); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join("testdata", folder),
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       *update,
		Cmds: map[string]func(ts *testscript.TestScript, neg bool, args []string){
			"site":    func(ts *testscript.TestScript, _ bool, args []string) { lay(ts, pressed, "content", args) },
			"pressed": func(ts *testscript.TestScript, _ bool, args []string) { lay(ts, pressed, ".", args) },
			"alone":   scriptAlone,
			"listing": scriptListing,
			"sparse":  scriptSparse,
			"bytes":   scriptBytes,
			"repeat":  scriptRepeat,
		},
	})
}

// scriptAlone leaves no program on the PATH but our own, so that no browser is found.
func scriptAlone(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) > 0 {
		ts.Fatalf("usage: alone")
	}
	own, _, _ := strings.Cut(ts.Getenv("PATH"), string(filepath.ListSeparator))
	ts.Setenv("PATH", own)
}

// press runs a press as a program of its own, and gives what it prints.
func press(folder, program string) (string, error) {
	var said bytes.Buffer
	c := exec.Command(program, "press")
	c.Dir, c.Stdout, c.Stderr = folder, &said, &said
	err := c.Run()
	return said.String(), err
}

// lay lays out what the scripts start from: site, the content folder; pressed, the content and the site made of it.
// Files that the script brings itself stay.
func lay(ts *testscript.TestScript, from, part string, args []string) {
	if len(args) > 0 {
		ts.Fatalf("usage: site, or: pressed")
	}
	ts.Check(fs.WalkDir(os.DirFS(from), part, func(name string, entry fs.DirEntry, err error) error {
		to := ts.MkAbs(name)
		if _, there := os.Stat(to); err != nil || there == nil {
			return err
		}
		if entry.IsDir() {
			return os.Mkdir(to, 0o755)
		}
		content, err := os.ReadFile(filepath.Join(from, name))
		if err != nil {
			return err
		}
		return os.WriteFile(to, content, 0o644)
	}))
}

// scriptListing writes down all that is in a folder: listing [-site] FOLDER FILE. With -site, Acreleaf's own list of
// what it wrote is left out: it remembers times, which a second press of the same site may fill in.
func scriptListing(ts *testscript.TestScript, neg bool, args []string) {
	without := ""
	if len(args) > 0 && args[0] == "-site" {
		without, args = ".acreleaf-manifest", args[1:]
	}
	if neg || len(args) != 2 {
		ts.Fatalf("usage: listing [-site] folder file")
	}
	list, err := list(ts.MkAbs(args[0]), without)
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(list), 0o644))
}

func listing(t *testing.T, folder string) string {
	t.Helper()
	list, err := list(folder, "")
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// list writes down all that is in a folder, with sums and times, but for files of one name. Two lists are the same
// only if nobody wrote in between.
func list(folder, without string) (string, error) {
	var list strings.Builder
	err := filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.Name() == without {
			return err
		}
		name, err := filepath.Rel(folder, path)
		if err != nil {
			return err
		}
		info, err := entry.Info()
		if err != nil || entry.IsDir() {
			fmt.Fprintln(&list, filepath.ToSlash(name))
			return err
		}
		content, err := os.ReadFile(path)
		fmt.Fprintf(&list, "%s %x %s\n", filepath.ToSlash(name), sha256.Sum256(content), info.ModTime())
		return err
	})
	return list.String(), err
}

// scriptSparse stretches a file with a hole at its end, which takes no room: sparse FILE BYTES.
func scriptSparse(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: sparse file bytes")
	}
	size, err := strconv.ParseInt(args[1], 10, 64)
	ts.Check(err)
	ts.Check(os.Truncate(ts.MkAbs(args[0]), size))
}

// scriptBytes appends bytes that a script cannot hold, written as in Go: bytes FILE 'caf\xe9'.
func scriptBytes(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: bytes file text")
	}
	text, err := strconv.Unquote(`"` + args[1] + `"`)
	ts.Check(err)
	file, err := os.OpenFile(ts.MkAbs(args[0]), os.O_APPEND|os.O_WRONLY, 0)
	ts.Check(err)
	_, err = file.WriteString(text)
	ts.Check(err)
	ts.Check(file.Close())
}

// scriptRepeat goes on with the last line of a file, with a text many times over, written as in Go: repeat FILE TIMES
// TEXT. A {n} in the text is the number of the time, from 1.
func scriptRepeat(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: repeat file times text")
	}
	times, err := strconv.Atoi(args[1])
	ts.Check(err)
	more, err := strconv.Unquote(`"` + args[2] + `"`)
	ts.Check(err)
	text, err := os.ReadFile(ts.MkAbs(args[0]))
	ts.Check(err)
	text = bytes.TrimSuffix(text, []byte("\n"))
	for n := range times {
		text = append(text, strings.ReplaceAll(more, "{n}", strconv.Itoa(n+1))...)
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), text, 0o644))
}
