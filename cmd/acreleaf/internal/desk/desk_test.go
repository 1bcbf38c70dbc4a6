package desk

import (
	"bufio"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net"
	"net/http"
	"net/url"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"acreleaf/cmd/acreleaf/internal/book"
)

// A screen is what a desk prints, to be read while it prints.
type screen struct {
	mutex sync.Mutex
	text  string
}

func (s *screen) Write(b []byte) (int, error) {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	s.text += string(b)
	return len(b), nil
}

func (s *screen) String() string {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	return s.text
}

// waitFor waits until the screen shows a text.
func (s *screen) waitFor(t *testing.T, want string) {
	t.Helper()
	for end := time.Now().Add(patience); !strings.Contains(s.String(), want); time.Sleep(5 * time.Millisecond) {
		if time.Now().After(end) {
			t.Fatalf("the screen never shows %q, but\n%s", want, s)
		}
	}
}

// An office is a desk at work on a content folder.
type office struct {
	content  string
	out, err screen
	address  string // "http://127.0.0.1:4480/"
	share    bool
	code     bool
	limits   limits
	desk     *Desk
	stop     context.CancelFunc
	ended    chan error
}

const (
	guideHead  = "---\ntitle: Soil\nsummary: What is in it.\n---\n"
	goodGuide  = guideHead + "Deep.\n"
	otherGuide = guideHead + "Deeper.\n"
	faultGuide = guideHead + "See [it](gone.md).\n"
	fault      = "content/guides/soil.md:5:10: error: there is no file \"guides/gone.md\" in content [link-broken]\n" +
		"    5 | See [it](gone.md).\n      |          ^~~~~~~\n" +
		"   note: write the way from this file to one that is there, such as ../home.md\n1 error\n"
)

// open starts a desk on a new content folder with one guide, and waits for its address.
func open(t *testing.T, guide string, port int) *office {
	t.Helper()
	o := &office{content: filepath.Join(t.TempDir(), "content")}
	o.fill(t, guide)
	o.run(t, port)
	return o
}

func (o *office) fill(t *testing.T, guide string) {
	t.Helper()
	save(t, filepath.Join(o.content, "site.yaml"), "office: Test Row Orchard Office\n")
	save(t, filepath.Join(o.content, "home.md"), "---\ntitle: Test Row\nsummary: One guide.\n---\n")
	o.save(t, guide)
}

// run starts a desk on the content that is there.
func (o *office) run(t *testing.T, port int) {
	t.Helper()
	o.out, o.err, o.ended = screen{}, screen{}, make(chan error, 1)
	ctx, stop := context.WithCancel(context.Background())
	o.stop = stop
	d := New(Options{
		Site: book.Options{Name: "content"}, Folder: o.content, Port: port, Share: o.share, Code: o.code,
		Out: &o.out, Err: &o.err,
	})
	if o.limits != (limits{}) {
		d.limits = o.limits
	}
	o.desk = d
	ended := o.ended
	go func() { ended <- d.Run(ctx) }()
	t.Cleanup(func() { o.close(t) })
	o.out.waitFor(t, "Press Ctrl+C to stop.\n")
	o.address = regexp.MustCompile(`http://\S+`).FindString(o.out.String())
}

func (o *office) save(t *testing.T, guide string) {
	t.Helper()
	save(t, filepath.Join(o.content, "guides", "soil.md"), guide)
}

// close ends the desk and waits for it. It may be called again.
func (o *office) close(t *testing.T) {
	t.Helper()
	o.stop()
	select {
	case err := <-o.ended:
		if err != nil {
			t.Errorf("the desk ends with %v", err)
		}
		o.ended <- nil
	case <-time.After(patience):
		t.Error("the desk does not end")
	}
}

func (o *office) read(t *testing.T, path string) string {
	t.Helper()
	r, err := http.Get(o.address + path)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = r.Body.Close() }()
	return text(t, r)
}

var madeMark = regexp.MustCompile(`data-made="([0-9a-f]+-[0-9a-f]*)"`)

// follow shows a page in a browser that listens for news of it, and gives the events one by one, as "changed {}".
func (o *office) follow(t *testing.T, path string) <-chan string {
	t.Helper()
	found := madeMark.FindStringSubmatch(o.read(t, path))
	if found == nil {
		t.Fatalf("the page at %q has no mark", path)
	}
	return o.listen(t, "/"+path, found[1])
}

// listen listens for news of a page that a browser was given before. That nothing is wrong at first is no news.
func (o *office) listen(t *testing.T, path, made string) <-chan string {
	t.Helper()
	query := url.Values{"page": {path}, "made": {made}}.Encode()
	r, err := http.Get(o.address + strings.TrimPrefix(eventsPath, "/") + "?" + query)
	if err != nil || r.Header.Get("Content-Type") != "text/event-stream" {
		t.Fatal(err, r)
	}
	t.Cleanup(func() { _ = r.Body.Close() })
	events := make(chan string, 100)
	lines := bufio.NewScanner(r.Body)
	for lines.Scan() && lines.Text() != "" { // the head of the stream
	}
	go func() {
		defer close(events)
		name, first := "", true
		for lines.Scan() {
			if data, is := strings.CutPrefix(lines.Text(), "data: "); is {
				if e := name + " " + data; !first || e != "faults "+noFaults {
					events <- e
				}
				first = false
			}
			name = strings.TrimPrefix(lines.Text(), "event: ")
		}
	}()
	return events
}

func next(t *testing.T, events <-chan string) string {
	t.Helper()
	select {
	case e := <-events:
		return e
	case <-time.After(patience):
		t.Fatal("no event comes")
		return ""
	}
}

func TestSaveIsSeen(t *testing.T) {
	o := open(t, goodGuide, 0)
	if page := o.read(t, "guides/soil/"); !strings.Contains(page, "Deep.") {
		t.Fatal(page)
	}
	events, home := o.follow(t, "guides/soil/"), o.follow(t, "")

	o.save(t, otherGuide)
	if e := next(t, events); e != "changed {}" {
		t.Error(e)
	}
	if page := o.read(t, "guides/soil/"); !strings.Contains(page, "Deeper.") {
		t.Error(page)
	}
	o.out.waitFor(t, "ms: 1 file changed.\n")

	o.save(t, strings.Replace(otherGuide, "title: Soil", "title: Earth", 1)) // which the home page shows
	if e := next(t, home); e != "changed {}" {
		t.Error(e)
	}
}

// A save with a fault is told of on the screen and in the browser, in the same lines, and the last good site stays up;
// fixed, it goes on.
func TestFaultLeavesTheLastGoodSite(t *testing.T) {
	o := open(t, goodGuide, 0)
	events := o.follow(t, "")

	o.save(t, faultGuide)
	if got := linesOf(t, next(t, events)); got != fault {
		t.Errorf("the browser shows\n%s\nwant\n%s", got, fault)
	}
	if want := fault + "The last good site stays up until this is fixed.\n"; o.err.String() != want {
		t.Errorf("%s\nwant\n%s", &o.err, want)
	}
	if page := o.read(t, "guides/soil/"); !strings.Contains(page, "Deep.") {
		t.Error(page)
	}
	if got := linesOf(t, next(t, o.follow(t, "guides/soil/"))); got != fault {
		t.Errorf("a browser that comes later shows\n%s", got)
	}

	o.save(t, goodGuide)
	o.out.waitFor(t, "Fixed: the site is as it was.\n")
	if e := next(t, events); e != "faults "+noFaults {
		t.Error(e)
	}
}

// linesOf joins the faults of an event to the lines that a terminal has.
func linesOf(t *testing.T, event string) string {
	t.Helper()
	data, is := strings.CutPrefix(event, "faults ")
	var told toldFaults
	if err := json.Unmarshal([]byte(data), &told); err != nil || !is {
		t.Fatal(event, err)
	}
	var lines []string
	for _, f := range told.Faults {
		for _, part := range []string{f.Head, f.Source, f.Note} {
			if part != "" {
				lines = append(lines, part)
			}
		}
	}
	return strings.Join(append(lines, told.Summary), "\n") + "\n"
}

// A desk that begins with a fault shows it in the browser until it is fixed.
func TestFaultAtTheStart(t *testing.T) {
	o := open(t, faultGuide, 0)
	if want := fault + "The desk shows this in the browser too, until it is fixed.\n"; o.err.String() != want {
		t.Errorf("%s\nwant\n%s", &o.err, want)
	}
	if page := o.read(t, ""); !strings.Contains(page, "there is no file") {
		t.Error(page)
	}
	events := o.follow(t, "guides/soil/")
	o.save(t, guideHead+"See [it](away.md).\n")
	if e := next(t, events); e != "changed {}" {
		t.Error(e)
	}
	events = o.follow(t, "guides/soil/")
	o.save(t, goodGuide)
	if e := next(t, events); e != "changed {}" {
		t.Error(e)
	}
	if page := o.read(t, "guides/soil/"); !strings.Contains(page, "Deep.") {
		t.Error(page)
	}
}

// A browser that was left open while the desk was away is told of what changed meanwhile, and of nothing else.
func TestRestart(t *testing.T) {
	o := open(t, goodGuide, 0)
	soil := madeMark.FindStringSubmatch(o.read(t, "guides/soil/"))[1]
	home := madeMark.FindStringSubmatch(o.read(t, ""))[1]
	o.close(t)
	o.save(t, otherGuide)
	o.run(t, 0)
	if e := next(t, o.listen(t, "/guides/soil/", soil)); e != "changed {}" {
		t.Error(e)
	}
	events := o.listen(t, "/", home)
	o.save(t, faultGuide) // so that there is something to be told
	if got := linesOf(t, next(t, events)); got != fault {
		t.Error(got)
	}
}

// The end closes open streams and the port, waits for none of them, and is no error.
func TestEnd(t *testing.T) {
	o := open(t, goodGuide, 0)
	events := o.follow(t, "")
	o.close(t)
	select {
	case e, more := <-events:
		if more {
			t.Error(e)
		}
	case <-time.After(patience):
		t.Error("the stream stays open")
	}
	if c, err := net.Dial("tcp", strings.Trim(o.address, "htp:/")); err == nil {
		_ = c.Close()
		t.Error("the port stays open")
	}
}

// The desk listens where only this computer reaches it.
func TestLoopbackOnly(t *testing.T) {
	o := open(t, goodGuide, 0)
	host, port, err := net.SplitHostPort(strings.Trim(o.address, "htp:/"))
	if err != nil || host != "127.0.0.1" {
		t.Fatalf("%s, %v", o.address, err)
	}
	addresses, err := net.InterfaceAddrs()
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range addresses {
		if own, is := a.(*net.IPNet); is && !own.IP.IsLoopback() && own.IP.To4() != nil {
			if c, err := net.DialTimeout("tcp", net.JoinHostPort(own.IP.String(), port), time.Second); err == nil {
				_ = c.Close()
				t.Errorf("it can be reached at %s", own.IP)
			}
		}
	}
}

func TestPortThatIsTaken(t *testing.T) {
	taken, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = taken.Close() }()
	port := taken.Addr().(*net.TCPAddr).Port
	o := open(t, goodGuide, port)
	if want := fmt.Sprintf("Port %d cannot be used, so the desk takes another one.\n", port); o.err.String() != want {
		t.Errorf("%s\nwant\n%s", &o.err, want)
	}
	if page := o.read(t, "guides/soil/"); !strings.Contains(page, "Deep.") {
		t.Error(page)
	}
}

// Two browsers both hear of a change, and one that went away is forgotten.
func TestEveryBrowserHears(t *testing.T) {
	o := open(t, goodGuide, 0)
	first, second := o.follow(t, "guides/soil/"), o.follow(t, "guides/soil/")
	o.save(t, otherGuide)
	if a, b := next(t, first), next(t, second); a != b {
		t.Errorf("%s, %s", a, b)
	}
}

// A listener that accepts no more fails as a network does that went away.
type failing struct{ net.Listener }

func (failing) Accept() (net.Conn, error) { return nil, errNetwork }

var errNetwork = errors.New("the network is gone")

// A desk whose server fails ends with that error, and waits for nothing.
func TestADeskEndsWhenItsServerFails(t *testing.T) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = listener.Close() }()
	ended := make(chan error, 1)
	go func() { ended <- New(Options{}).serve(t.Context(), failing{listener}) }()
	select {
	case err := <-ended:
		if !errors.Is(err, errNetwork) {
			t.Errorf("the desk ends with %v", err)
		}
	case <-time.After(patience):
		t.Error("the desk waits for ever")
	}
}
