//go:build unix

package main

import (
	"bufio"
	"bytes"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"syscall"
	"testing"
)

var greeting = regexp.MustCompile(
	`^The desk is at (http://127\.0\.0\.1:\d+/) and follows content\. Press Ctrl\+C to stop\.\n$`)

// The desk as a user runs it: it says where it is, shows the site, writes nothing, and an interrupt or the end of the
// session ends it cleanly.
func TestDesk(t *testing.T) {
	for _, signal := range []os.Signal{os.Interrupt, syscall.SIGTERM} {
		t.Run(signal.String(), func(t *testing.T) {
			folder := t.TempDir()
			if err := os.CopyFS(folder, os.DirFS(filepath.Join("testdata", "site"))); err != nil {
				t.Fatal(err)
			}
			before := listing(t, folder)
			desk := exec.Command("acreleaf", "desk", "--port", "0")
			desk.Dir = folder
			var errors bytes.Buffer
			desk.Stderr = &errors
			out, err := desk.StdoutPipe()
			if err != nil {
				t.Fatal(err)
			}
			if err := desk.Start(); err != nil {
				t.Fatal(err)
			}
			lines := bufio.NewReader(out)
			line, err := lines.ReadString('\n')
			found := greeting.FindStringSubmatch(line)
			if found == nil {
				t.Fatalf("%q, %v, %s", line, err, &errors)
			}
			r, err := http.Get(found[1] + "guides/soil/")
			if err != nil {
				t.Fatal(err)
			}
			page, err := io.ReadAll(r.Body)
			if err != nil || !strings.Contains(string(page), "Nitrogen in the soil") {
				t.Errorf("%v\n%s", err, page)
			}
			if err := desk.Process.Signal(signal); err != nil {
				t.Fatal(err)
			}
			rest, _ := io.ReadAll(lines)
			if err := desk.Wait(); err != nil || len(rest)+errors.Len() > 0 {
				t.Errorf("%v, %s%s", err, rest, &errors)
			}
			if after := listing(t, folder); after != before {
				t.Errorf("the desk wrote:\n%swas\n%s", after, before)
			}
		})
	}
}
