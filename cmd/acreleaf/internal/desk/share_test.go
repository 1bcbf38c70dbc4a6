package desk

import (
	"fmt"
	"net"
	"net/http"
	"net/netip"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
)

// Shared, the desk answers to the addresses and the name that this computer has on its network, and to no others.
func TestSharedDeskAnswersToItsOwnNames(t *testing.T) {
	d := shown()
	d.options.Share = true
	want := map[string]int{
		"127.0.0.1:4480": http.StatusOK, "localhost": http.StatusOK,
		"rows.example.org": http.StatusForbidden, "rows.example.org:4480": http.StatusForbidden, "": http.StatusForbidden,
		"203.0.113.9:4480": http.StatusForbidden, "[2001:db8::1]:4480": http.StatusForbidden,
		"0.0.0.0": http.StatusForbidden, "local": http.StatusForbidden, ".local": http.StatusForbidden,
	}
	for _, own := range ownAddresses() {
		want[net.JoinHostPort(own.String(), "4480")] = http.StatusOK
	}
	name, err := os.Hostname()
	if err != nil {
		t.Fatal(err)
	}
	short, _, _ := strings.Cut(name, ".")
	for _, own := range []string{name, strings.ToUpper(name) + ":4480", short + ".local", short + ".local.:4480"} {
		want[own] = http.StatusOK
		want[own[:1]+"x"+own[1:]] = http.StatusForbidden
	}
	for host, status := range want {
		if r := ask(d, http.MethodGet, "/", host); r.StatusCode != status {
			t.Errorf("%q: %d, not %d", host, r.StatusCode, status)
		}
	}
	if r := ask(shown(), http.MethodGet, "/", name); r.StatusCode != http.StatusForbidden && name != "localhost" {
		t.Errorf("a desk that is not shared answers to %q", name)
	}
}

// A shared desk says what to type on a phone, and that address leads to it.
func TestSharedDeskIsReached(t *testing.T) {
	o := &office{content: filepath.Join(t.TempDir(), "content"), share: true}
	o.fill(t, goodGuide)
	o.run(t, 0)
	typed := regexp.MustCompile(`(?m)^  (http://\S+/)$`).FindAllStringSubmatch(o.out.String(), -1)
	shared := sharedAddresses(ownAddresses())
	if len(typed) != len(shared) {
		t.Fatalf("%d addresses to type, and this computer has %v:\n%s", len(typed), shared, &o.out)
	}
	for _, found := range typed {
		o.address = found[1]
		if page := o.read(t, "guides/soil/"); !strings.Contains(page, "Deep.") {
			t.Errorf("%s: %s", found[1], page)
		}
	}
	if len(shared) == 0 {
		o.err.waitFor(t, "This computer is on no network now, so no device can reach the desk.\n")
	}
}

func TestAddressesToType(t *testing.T) {
	for _, c := range []struct{ own, want string }{
		{"127.0.0.1 ::1 192.0.2.7 fe80::1 2001:db8::7 169.254.3.4", "192.0.2.7"},
		{"127.0.0.1 ::1 fe80::1 2001:db8::7", "2001:db8::7"},
		{"127.0.0.1 ::1", ""},
	} {
		var own []netip.Addr
		for _, text := range strings.Fields(c.own) {
			own = append(own, netip.MustParseAddr(text))
		}
		if got := strings.Trim(fmt.Sprint(sharedAddresses(own)), "[]"); got != c.want {
			t.Errorf("%s: %s, not %s", c.own, got, c.want)
		}
	}
}

// A word about a first making that takes long goes where somebody waits for it, and nowhere else.
func TestWordWhileThePagesAreMade(t *testing.T) {
	for _, waits := range []bool{true, false} {
		var progress screen
		d := New(Options{})
		if waits {
			d.options.Progress = &progress
		}
		done := d.wait()
		if waits {
			progress.waitFor(t, "Making every page.")
		} else {
			time.Sleep(patient + 100*time.Millisecond)
		}
		done()
		if got := progress.String() != ""; got != waits {
			t.Errorf("somebody waits: %v, and is told: %v", waits, got)
		}
	}
}

// A site with many faults does not flood the browser; the terminal has them all.
func TestManyFaultsAreCut(t *testing.T) {
	o := open(t, guideHead+strings.Repeat("See [it](gone.md).\n", mostTold+3), 0)
	if page := o.read(t, ""); !strings.Contains(page, "The terminal has 3 more.") ||
		strings.Count(page, "link-broken") != mostTold || !strings.Contains(page, fmt.Sprint(mostTold+3, " errors")) {
		t.Error(page)
	}
	if n := strings.Count(o.err.String(), "[link-broken]"); n != mostTold+3 {
		t.Errorf("%d faults in the terminal", n)
	}
}

// What an editor, a version control system and a careless hand do to the files of a content folder, end to end.
func TestFilesAreFollowed(t *testing.T) {
	o := open(t, goodGuide, 0)
	soil := filepath.Join(o.content, "guides", "soil.md")
	shows := func(path, want, after string) {
		t.Helper()
		for end := time.Now().Add(patience); ; time.Sleep(10 * time.Millisecond) {
			if page := o.read(t, path); strings.Contains(page, want) {
				return
			} else if time.Now().After(end) {
				t.Fatalf("after %s the desk never shows %q at %q, but\n%s\nterminal:\n%s", after, want, path, page, &o.err)
			}
		}
	}
	rename := func(from, to string) {
		t.Helper()
		if err := os.Rename(from, to); err != nil {
			t.Fatal(err)
		}
	}
	remove := func(path string) {
		t.Helper()
		if err := os.RemoveAll(path); err != nil {
			t.Fatal(err)
		}
	}
	for _, text := range []string{"Second.", "Third."} {
		rename(soil, soil+"~")
		save(t, soil+".new", guideHead+text+"\n")
		rename(soil+".new", soil)
		remove(soil + "~")
		shows("guides/soil/", text, "a rename-and-replace save")
	}
	save(t, filepath.Join(o.content, "workshops", "spring", "frost.md"), "---\ntitle: Frost\nsummary: Cold.\n---\nIce.\n")
	shows("workshops/spring/frost/", "Ice.", "a new folder with a page in it")
	save(t, filepath.Join(o.content, "site.yaml"), "office: Second Row Orchard Office\n")
	shows("", "Second Row", "a new name in site.yaml")
	save(t, filepath.Join(o.content, "sources.yaml"), "row-book:\n  title: The book of rows\n  kind: memory\n")
	shows("sources/", "The book of rows", "a new sources.yaml")
	const rows = `<svg xmlns="http://www.w3.org/2000/svg"/>`
	save(t, filepath.Join(o.content, "row.svg"), rows)
	save(t, soil, guideHead+"![A row](../row.svg)\n")
	shows("row.svg", rows, "a new picture")
	save(t, filepath.Join(o.content, "row.svg"), rows+"\n")
	shows("row.svg", rows+"\n", "another picture")

	remove(filepath.Join(o.content, "guides"))
	shows("guides/soil/", "There is no page here", "a folder was deleted")
	save(t, soil, guideHead+"Restored.\n")
	shows("guides/soil/", "Restored.", "a folder was restored")

	aside := o.content + "-aside"
	rename(o.content, aside)
	o.err.waitFor(t, "the content folder cannot be read: no such file or directory")
	save(t, filepath.Join(aside, "guides", "soil.md"), guideHead+"Changed meanwhile.\n")
	rename(aside, o.content)
	shows("guides/soil/", "Changed meanwhile.", "the content folder was away")
	save(t, soil, guideHead+"Back.\n")
	shows("guides/soil/", "Back.", "a save in the content folder that is back")
}

// Five hundred files that change at once make the site again once or a few times, and all of them are in it.
func TestBurstOfFiles(t *testing.T) {
	const burst = 500
	o := open(t, goodGuide, 0)
	for i := range burst {
		save(t, filepath.Join(o.content, "guides", fmt.Sprintf("block-%d.md", i)), guideHead+fmt.Sprintf("Block %d.\n", i))
	}
	var wrong []int
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		wrong = wrong[:0]
		for i := range burst {
			if _, there := o.desk.shelf.get(fmt.Sprintf("guides/block-%d/index.html", i)); !there {
				wrong = append(wrong, i)
			}
		}
		if len(wrong) == 0 {
			break
		}
	}
	if len(wrong) > 0 {
		t.Fatalf("%d of %d pages are not there, such as %d", len(wrong), burst, wrong[0])
	}
	o.close(t)
	made := regexp.MustCompile(`Made again`).FindAllString(o.out.String(), -1)
	if len(made) == 0 || len(made) > 25 {
		t.Errorf("made again %d times:\n%s", len(made), &o.out)
	}
}
