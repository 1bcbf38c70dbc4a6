//go:build unix

package main

import (
	"fmt"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"time"
)

// Each of these leaves the site in order, so that the save after it can be shown.
var disturbances = []struct {
	what string
	do   func(*day)
}{
	{"the folder is deleted and copied back", func(d *day) {
		d.must(os.CopyFS(d.content("../keep"), os.DirFS(d.content(""))))
		d.remove("")
		d.must(os.CopyFS(d.content(""), os.DirFS(d.content("../keep"))))
	}},
	{"the folder is deleted, and comes back later", func(d *day) {
		d.remove("")
		d.until("said: it is away", func() bool { return strings.Contains(d.terminal(), "content is not there now") })
		d.must(os.CopyFS(d.content(""), os.DirFS(d.content("../keep"))))
	}},
	{"a branch without the folder, and back", func(d *day) {
		if _, err := exec.LookPath("git"); err != nil {
			d.Skip("there is no git")
		}
		d.run("git", "init", "-q")
		d.run("git", "add", "keep")
		d.run("git", "commit", "-qm", "keep")
		d.run("git", "checkout", "-qb", "site")
		d.run("git", "add", "content")
		d.run("git", "commit", "-qm", "site")
		d.run("git", "checkout", "-q", "-") // without it
		d.run("git", "checkout", "-q", "site")
	}},
	{"the folder is moved away and back", func(d *day) {
		d.move("", "../aside")
		d.move("../aside", "")
	}},
	{"the folder is moved away, and a copy comes", func(d *day) {
		d.move("", "../aside")
		d.must(os.CopyFS(d.content(""), os.DirFS(d.content("../aside"))))
		d.remove("../aside")
	}},
	{"two folders change places", func(d *day) {
		d.must(os.CopyFS(d.content("../other"), os.DirFS(d.content(""))))
		d.move("", "../third")
		d.move("../other", "")
		d.move("../third", "../other")
	}},
	{"a link to a folder comes in its place", func(d *day) {
		d.move("", "../real")
		d.must(os.Symlink("real", d.content("")))
		d.saveIsShown()
		d.must(os.Remove(d.content("")))
		d.move("../real", "")
	}},
	{"a new file is renamed over the old one", func(d *day) {
		for range 5 {
			text, sentence := d.text()
			d.write("guides/.water.new", text)
			d.move("guides/.water.new", "guides/water.md")
			d.shows("guides/water/", sentence)
		}
	}},
	{"a file is emptied and written later", func(d *day) {
		d.write("guides/water.md", "")
		d.until("said: an error", func() bool { return strings.Contains(d.terminal(), "content/guides/water.md:1:1: error") })
	}},
	{"a file is deleted and written", func(d *day) { d.remove("guides/water.md") }},
	{"a folder with a page", func(d *day) {
		d.write("workshops/spring/frost.md", "---\ntitle: Frost\nsummary: Cold.\n---\nIce.\n")
		d.shows("workshops/spring/frost/", "Ice.")
	}},
	{"a folder has another name", func(d *day) {
		d.move("workshops/spring", "workshops/winter")
		d.shows("workshops/winter/frost/", "Ice.")
		d.lacks("workshops/spring/frost/")
	}},
	{"a folder is removed", func(d *day) {
		d.remove("workshops")
		d.lacks("workshops/winter/frost/")
	}},
	{"what a link leads to is saved", func(d *day) {
		d.write(".store/frost.md", "---\ntitle: Frost\nsummary: Cold.\n---\nIce.\n")
		d.must(os.Symlink("../.store/frost.md", d.content("guides/frost.md")))
		d.shows("guides/frost/", "Ice.")
		d.write(".store/frost.md", "---\ntitle: Frost\nsummary: Cold.\n---\nHoar.\n")
		d.shows("guides/frost/", "Hoar.")
		d.remove("guides/frost.md")
	}},
	{"site.yaml is broken and mended", func(d *day) { d.broken("site.yaml", "office: [\n") }},
	{"sources.yaml is broken and mended", func(d *day) { d.broken("sources.yaml", "row-book: {\n") }},
	{"a page is no UTF-8, and mended", func(d *day) { d.broken("guides/soil.md", "---\ntitle: \xff\n---\n") }},
	{"a page must not be read, and may again", func(d *day) {
		d.says("guides/soil.md", func() { d.must(os.Chmod(d.content("guides/soil.md"), 0)) })
		d.must(os.Chmod(d.content("guides/soil.md"), 0o644))
	}},
	{"a folder must not be read, and may again", func(d *day) {
		d.says("cannot be read", func() { d.must(os.Chmod(d.content("guides"), 0)) })
		d.must(os.Chmod(d.content("guides"), 0o755))
	}},
	{"a pipe comes and goes", func(d *day) {
		for _, way := range []string{"guides/pipe.md", "pipe.png"} {
			d.says(way, func() { d.must(syscall.Mkfifo(d.content(way), 0o644)) })
			d.remove(way)
		}
	}},
	{"a socket comes and goes", func(d *day) {
		d.must(os.Symlink(d.content("guides"), d.content("../s"))) // the path of a socket must be short
		d.says("guides/socket.md", func() {
			socket, err := net.Listen("unix", d.content("../s")+"/socket.md")
			d.must(err)
			d.Cleanup(func() { _ = socket.Close() })
		})
		d.remove("guides/socket.md")
		d.remove("../s")
	}},
	{"a film of 100 MB", func(d *day) {
		d.write("film.mp4", "")
		d.must(os.Truncate(d.content("film.mp4"), 100<<20))
		d.saveIsShown()
		d.remove("film.mp4")
	}},
	{"a thousand saves in a row", func(d *day) {
		for range 1000 {
			text, _ := d.text()
			d.write("guides/water.md", text)
		}
	}},
	{"a save while everything is made", func(d *day) { d.write("site.yaml", d.read("site.yaml")+"\n") }},
	{"a save with the time of last year", func(d *day) {
		text, sentence := d.text()
		d.write("guides/water.md", text)
		past := time.Now().AddDate(-1, 0, 0)
		d.must(os.Chtimes(d.content("guides/water.md"), past, past))
		d.shows("guides/water/", sentence)
	}},
	{"the clock goes back a year", func(d *day) {
		ahead := time.Now().AddDate(1, 0, 0)
		for _, way := range []string{"guides/water.md", "guides/soil.md", "guides", "site.yaml", ""} {
			d.must(os.Chtimes(d.content(way), ahead, ahead))
		}
		d.saveIsShown() // by the clock, a year before what it replaces
		text, sentence := d.text()
		d.write("guides/.water.new", text)
		d.must(os.Chtimes(d.content("guides/.water.new"), ahead, ahead))
		d.move("guides/.water.new", "guides/water.md")
		d.shows("guides/water/", sentence)
	}},
	{"a backup of last year is restored", func(d *day) {
		text, sentence := d.text()
		d.must(os.CopyFS(d.content("../backup"), os.DirFS(d.content(""))))
		d.must(os.WriteFile(d.content("../backup/guides/water.md"), []byte(text), 0o644))
		past := time.Now().AddDate(-1, 0, 0)
		for _, way := range []string{"guides/water.md", "guides/soil.md", "home.md", "guides", ""} {
			d.must(os.Chtimes(d.content("../backup/"+way), past, past))
		}
		d.move("", "../newer")
		d.move("../backup", "")
		d.shows("guides/water/", sentence)
		d.remove("../newer")
	}},
	{"a name in other letters", func(d *day) {
		d.move("guides/water.md", "guides/Water.md")
		d.move("guides/Water.md", "guides/water.md")
	}},
	{"what an editor keeps for itself", func(d *day) {
		for _, way := range []string{"guides/.water.md.swp", "guides/4913", "guides/water.md~", "guides/#water.md#"} {
			d.write(way, "kept")
		}
		d.saveIsShown()
		for _, way := range []string{"guides/.water.md.swp", "guides/4913", "guides/water.md~", "guides/#water.md#"} {
			d.remove(way)
		}
	}},
	{"presses of the same folder", func(d *day) {
		for range 2 {
			pressed := make(chan error)
			go func() {
				said, err := press(d.folder, "acreleaf")
				if err != nil {
					err = fmt.Errorf("%w\n%s", err, said)
				}
				pressed <- err
			}()
			d.saveIsShown()
			d.must(<-pressed)
		}
		d.run("acreleaf", "press")
		page, err := os.ReadFile(filepath.Join(d.folder, "public", "guides", "water", "index.html"))
		if text := fmt.Sprintf("This is save %d of the day.", d.saves); err != nil || !strings.Contains(string(page), text) {
			d.Errorf("the site has another text (%v)", err)
		}
	}},
	{"a touch without a change", func(d *day) {
		for range 20 {
			d.must(os.Chtimes(d.content("guides/water.md"), time.Now(), time.Now()))
		}
	}},
	{"a page goes to another address", func(d *day) {
		d.move("guides/water.md", "guides/well.md")
		d.write("guides/soil.md", strings.Replace(d.read("guides/soil.md"), "water.md", "well.md", 1))
		d.shows("guides/well/", "The well")
		d.lacks("guides/water/")
		d.move("guides/well.md", "guides/water.md")
		d.write("guides/soil.md", strings.Replace(d.read("guides/soil.md"), "well.md", "water.md", 1))
	}},
	{"a calculation comes and goes", func(d *day) {
		d.write("calculations/rows.yaml", "title: Rows of a block\nsummary: Counts rows.\n"+
			"givens:\n  width: {label: Width, example: 400 ft, range: 1 to 5000}\n"+
			"  row: {label: Row, example: 20 ft, range: 1 to 60}\nwork:\n  - rows = width / row\n"+
			"answers:\n  rows: {label: Rows, unit: number}\n")
		d.write("guides/rows.md", "---\ntitle: Rows\nsummary: How many.\n---\n\n"+
			"```worksheet r\ncalculation: rows\nwidth: 400 ft\nrow: 20 ft\n```\n")
		d.shows("guides/rows/", "Rows of a block")
		d.remove("guides/rows.md")
		d.remove("calculations")
		d.lacks("guides/rows/")
	}},
	{"the desk sleeps and wakes", func(d *day) {
		d.must(d.process.Process.Signal(syscall.SIGSTOP))
		text, sentence := d.text()
		d.write("guides/water.md", text)
		d.must(d.process.Process.Signal(syscall.SIGCONT))
		d.shows("guides/water/", sentence)
	}},
	{"browsers go away", func(d *day) {
		for range 120 {
			r, err := http.Get(d.address + ".desk/events?page=/&made=x")
			d.must(err)
			if r.StatusCode != http.StatusOK && r.StatusCode != http.StatusServiceUnavailable {
				d.Errorf("status %d", r.StatusCode)
			}
			_ = r.Body.Close()
		}
	}},
	{"three hundred pages come and go at once", func(d *day) {
		for i := range 300 {
			d.write(fmt.Sprintf("guides/many/page-%d.md", i),
				fmt.Sprintf("---\ntitle: Page %d\nsummary: One.\n---\nOne.\n", i))
		}
		d.shows("guides/many/page-299/", "One.")
		d.remove("guides/many")
		d.lacks("guides/many/page-299/")
	}},
	// A file with a second name elsewhere, saved by that one: the system reports it there, and here nothing, as on a
	// folder that another computer shares.
	{"saves that the system does not report", func(d *day) {
		d.must(os.Link(d.content("guides/water.md"), filepath.Join(d.folder, "far.md")))
		for range 2 {
			text, sentence := d.text()
			d.must(os.WriteFile(filepath.Join(d.folder, "far.md"), []byte(text), 0o644))
			d.shows("guides/water/", sentence)
		}
		d.until("said: looks", func() bool { return strings.Contains(d.terminal(), "looks at the folder every second") })
	}},
}

// broken saves a file with a fault, waits for the desk to say so, and mends it.
func (d *day) broken(way, text string) {
	d.Helper()
	good := d.read(way)
	d.says("content/"+way+":", func() { d.write(way, text) })
	d.write(way, good)
}
