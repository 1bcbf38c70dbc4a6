package main

import (
	"crypto/sha256"
	"flag"
	"fmt"
	"io/fs"
	"os"
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
		"acreleaf": main,
		"guest":    asGuest,
		"limited":  asLimited,
	})
}

// TestScript runs the whole program as a user does. Every message that a user can meet stands in one of the scripts.
func TestScript(t *testing.T) { runScripts(t, "script") }

func runScripts(t *testing.T, folder string) {
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join("testdata", folder),
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       *update,
		Cmds: map[string]func(ts *testscript.TestScript, neg bool, args []string){
			"site":    scriptSite,
			"listing": scriptListing,
			"sparse":  scriptSparse,
			"bytes":   scriptBytes,
		},
		Setup: func(e *testscript.Env) error {
			folder, err := filepath.Abs(filepath.Join("testdata", "site"))
			e.Values[siteFolder{}] = folder
			return err
		},
	})
}

// siteFolder is the key of the folder that the command site copies.
type siteFolder struct{}

// scriptSite lays out the site that most scripts start from: site. Files that the script brings itself stay.
func scriptSite(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) > 0 {
		ts.Fatalf("usage: site")
	}
	from := os.DirFS(ts.Value(siteFolder{}).(string))
	ts.Check(fs.WalkDir(from, ".", func(name string, entry fs.DirEntry, err error) error {
		to := ts.MkAbs(name)
		if _, there := os.Stat(to); err != nil || there == nil {
			return err
		}
		if entry.IsDir() {
			return os.Mkdir(to, 0o755)
		}
		content, err := fs.ReadFile(from, name)
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
