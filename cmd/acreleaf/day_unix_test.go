//go:build unix

package main

import (
	"bufio"
	"fmt"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"
)

// A day is a desk at work, started as a person starts it, and what its author does beside it.
type day struct {
	*testing.T
	folder  string // the content folder is in it
	process *exec.Cmd
	address string
	saves   int

	mutex sync.Mutex
	said  strings.Builder // on the terminal, in both streams
}

// deskPatience is how long a day waits for what must come. It is spent only when a test fails.
const deskPatience = 60 * time.Second

// begin starts a desk on a copy of the small site.
func begin(t *testing.T, command func(folder string) *exec.Cmd) *day {
	t.Helper()
	d := &day{T: t, folder: t.TempDir()}
	// A guest has to come in: who checks this as the superuser is asked for no rights otherwise.
	d.must(os.Chmod(filepath.Dir(d.folder), 0o755))
	d.must(os.CopyFS(d.folder, os.DirFS(filepath.Join("testdata", "site"))))
	d.process = command(d.folder)
	d.process.Dir = d.folder
	in, out := io.Pipe()
	d.process.Stdout, d.process.Stderr = out, out
	d.must(d.process.Start())
	t.Cleanup(func() {
		_ = d.process.Process.Kill()
		_ = out.Close()
		_ = d.process.Wait()
	})
	address := make(chan string, 1)
	go func() {
		lines := bufio.NewScanner(in)
		for lines.Scan() {
			d.mutex.Lock()
			d.said.WriteString(lines.Text() + "\n")
			d.mutex.Unlock()
			if found := greeting.FindStringSubmatch(lines.Text() + "\n"); found != nil {
				address <- found[1]
			}
		}
	}()
	select {
	case d.address = <-address:
	case <-time.After(deskPatience):
		t.Fatalf("the desk does not say where it is:\n%s", d.terminal())
	}
	return d
}

func (d *day) terminal() string {
	d.mutex.Lock()
	defer d.mutex.Unlock()
	return d.said.String()
}

func (d *day) must(err error) {
	d.Helper()
	if err != nil {
		d.Fatal(err)
	}
}

func (d *day) content(way string) string {
	return filepath.Join(d.folder, "content", filepath.FromSlash(way))
}

// get gives the page at an address, and "" where there is none.
func (d *day) get(way string) string {
	d.Helper()
	r, err := http.Get(d.address + way)
	d.must(err)
	defer func() { _ = r.Body.Close() }()
	page, err := io.ReadAll(r.Body)
	d.must(err)
	if r.StatusCode != http.StatusOK {
		return ""
	}
	return string(page)
}

// until waits for something to become so.
func (d *day) until(what string, is func() bool) {
	d.Helper()
	for end := time.Now().Add(deskPatience); !is(); time.Sleep(5 * time.Millisecond) {
		if time.Now().After(end) {
			d.Fatalf("it never comes to be: %s\n%s", what, d.terminal())
		}
	}
}

// shows waits for a text at an address.
func (d *day) shows(way, text string) {
	d.Helper()
	d.until(fmt.Sprintf("%q at %q", text, way), func() bool { return strings.Contains(d.get(way), text) })
}

// lacks waits for an address to lead to no page.
func (d *day) lacks(way string) {
	d.Helper()
	d.until("no page at "+way, func() bool { return d.get(way) == "" })
}

// says does something, and waits for the terminal to say what it did not say of what was before.
func (d *day) says(text string, do func()) {
	d.Helper()
	before := strings.Count(d.terminal(), text)
	do()
	d.until("said: "+text, func() bool { return strings.Count(d.terminal(), text) > before })
}

func (d *day) write(way, text string) {
	d.Helper()
	d.must(os.MkdirAll(filepath.Dir(d.content(way)), 0o755))
	d.must(os.WriteFile(d.content(way), []byte(text), 0o644))
}

func (d *day) read(way string) string {
	d.Helper()
	text, err := os.ReadFile(d.content(way))
	d.must(err)
	return string(text)
}

func (d *day) move(from, to string) {
	d.Helper()
	d.must(os.Rename(d.content(from), d.content(to)))
}

func (d *day) remove(way string) {
	d.Helper()
	d.must(os.RemoveAll(d.content(way)))
}

// text is a guide with a sentence that no other has.
func (d *day) text() (text, sentence string) {
	d.saves++
	sentence = fmt.Sprintf("This is save %d of the day.", d.saves)
	const head = "---\ntitle: Water of the well\nsummary: What the well gives.\norder: 2\n---\n\n## The well\n\n"
	return head + sentence + "\n", sentence
}

// saveIsShown saves a guide and waits for it on the screen.
func (d *day) saveIsShown() {
	d.Helper()
	text, sentence := d.text()
	d.write("guides/water.md", text)
	d.shows("guides/water/", sentence)
}

// run runs another program in the folder beside the content.
func (d *day) run(name string, arguments ...string) {
	d.Helper()
	command := exec.Command(name, arguments...)
	command.Dir = d.folder
	command.Env = append(os.Environ(), "GIT_CONFIG_GLOBAL=/dev/null", "GIT_CONFIG_SYSTEM=/dev/null",
		"GIT_AUTHOR_NAME=a", "GIT_AUTHOR_EMAIL=a@example.org", "GIT_COMMITTER_NAME=a", "GIT_COMMITTER_EMAIL=a@example.org")
	if out, err := command.CombinedOutput(); err != nil {
		d.Fatalf("%s %v: %v\n%s", name, arguments, err, out)
	}
}

// ends waits for the desk to end, and gives how.
func (d *day) ends() error {
	d.Helper()
	ended := make(chan error, 1)
	go func() { ended <- d.process.Wait() }()
	select {
	case err := <-ended:
		return err
	case <-time.After(deskPatience):
		d.Fatalf("the desk does not end\n%s", d.terminal())
		return nil
	}
}

// asAGuest starts the desk without the rights of the superuser.
func asAGuest(string) *exec.Cmd { return exec.Command("guest", "desk", "--port", "0") }

// A long day of an author. After each thing that happens to the files, the next save is on the screen.
func TestTheDeskHearsEverySave(t *testing.T) {
	d := begin(t, asAGuest)
	d.saveIsShown()
	for _, one := range disturbances {
		whole := t.Run(one.what, func(t *testing.T) {
			before := d.T
			d.T = t
			defer func() { d.T = before }()
			one.do(d)
			d.saveIsShown()
		})
		if !whole {
			t.FailNow() // what comes after it would fail for the same reason
		}
	}
	t.Logf("%d kinds of disturbance, %d saves", len(disturbances), d.saves)
	d.must(d.process.Process.Signal(syscall.SIGINT))
	if err := d.ends(); err != nil {
		t.Errorf("the desk ends with %v\n%s", err, d.terminal())
	}
}
