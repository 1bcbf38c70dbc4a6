package desk

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/qrcode"
)

// request sends a request with these headers, written as "Name: value", and reads the answer.
func (o *office) request(t *testing.T, method, way string, headers ...string) (*http.Response, string) {
	t.Helper()
	r, err := http.NewRequest(method, o.address+way, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, header := range headers {
		name, value, _ := strings.Cut(header, ": ")
		r.Header.Set(name, value)
	}
	answer, err := http.DefaultClient.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = answer.Body.Close() }()
	return answer, text(t, answer)
}

// filmOf is a file that is built as a film (ISO/IEC 14496-12), and has one text many times for its pictures.
func filmOf(text string, times int) string {
	const head = "\x00\x00\x00\x14ftypisom\x00\x00\x02\x00isom\x00\x00\x00\x08moov\x00\x00\x00\x00mdat"
	return head + strings.Repeat(text, times)[len(head):]
}

// A film is shown from any place in it, and one whose file changes is not pieced together from two.
func TestPartsOfAFile(t *testing.T) {
	o := open(t, guideHead+"[The rows](rows.mp4)\n", 0)
	film := filmOf("0123456789", 100_000)
	save(t, filepath.Join(o.content, "guides", "rows.mp4"), film)
	o.out.waitFor(t, "Made again")
	whole, body := o.request(t, "GET", "guides/rows.mp4")
	tag := whole.Header.Get("ETag")
	if body != film || whole.ContentLength != int64(len(film)) || whole.Header.Get("Accept-Ranges") != "bytes" {
		t.Fatalf("%d bytes, %v", len(body), whole.Header)
	}
	for _, c := range []struct {
		parts  string
		status int
		body   string
	}{
		{"bytes=43-45", http.StatusPartialContent, "345"},
		{"bytes=-4", http.StatusPartialContent, "6789"},
		{"bytes=999999-", http.StatusPartialContent, "9"},
	} {
		part, body := o.request(t, "GET", "guides/rows.mp4", "Range: "+c.parts, "If-Range: "+tag)
		if part.StatusCode != c.status || body != c.body || part.ContentLength != int64(len(c.body)) {
			t.Errorf("%s: %d, %q, %v", c.parts, part.StatusCode, body, part.Header)
		}
	}
	if r, _ := o.request(t, "GET", "guides/rows.mp4", "Range: bytes=1000000-"); r.StatusCode != 416 {
		t.Errorf("past the end: %d", r.StatusCode)
	}
	save(t, filepath.Join(o.content, "guides", "rows.mp4"), filmOf("9", len(film)))
	o.out.waitFor(t, "Made again in")
	for end := time.Now().Add(patience); ; time.Sleep(10 * time.Millisecond) {
		r, body := o.request(t, "GET", "guides/rows.mp4", "Range: bytes=3-5", "If-Range: "+tag)
		if r.StatusCode == http.StatusOK && len(body) == len(film) {
			break
		}
		if time.Now().After(end) {
			t.Fatalf("a part of another film: %d, %q", r.StatusCode, body)
		}
	}
}

// Every answer says how long it is, and that no other page may show it in a frame.
func TestHeadersOfAnswers(t *testing.T) {
	o := open(t, goodGuide, 0)
	for way, status := range map[string]int{
		"": 200, "guides/soil/": 200, "guides/gone/": 404, "assets/none.css": 404, ".desk/desk.js": 200,
		".desk/desk.css": 200,
	} {
		for _, method := range []string{"GET", "HEAD", "POST"} {
			want := status
			if method == "POST" {
				want = http.StatusMethodNotAllowed
			}
			r, body := o.request(t, method, way)
			if r.StatusCode != want || r.ContentLength <= 0 || method == "GET" && r.ContentLength != int64(len(body)) ||
				r.Header.Get("Content-Security-Policy") != "frame-ancestors 'none'" {
				t.Errorf("%s %s: %d, %d bytes, %v", method, way, r.StatusCode, len(body), r.Header)
			}
		}
	}
}

// News are for the desk's own pages: a page from elsewhere would learn when the author works, and could take all
// streams.
func TestNewsAreForOwnPages(t *testing.T) {
	o := open(t, goodGuide, 0)
	own := strings.TrimSuffix(o.address, "/")
	for _, c := range []struct {
		header string
		status int
	}{
		{"Accept: text/event-stream", 200}, {"Origin: " + own, 200}, {"Sec-Fetch-Site: same-origin", 200},
		{"Sec-Fetch-Site: none", 200}, {"Sec-Fetch-Site: cross-site", 403}, {"Sec-Fetch-Site: same-site", 403},
		{"Origin: null", 403}, {"Origin: http://rows.example.org", 403}, {"Origin: https" + own[len("http"):], 403},
		{"Origin: " + own + "0", 403},
	} {
		r, _ := o.request(t, "HEAD", ".desk/events", c.header)
		if r.StatusCode != c.status {
			t.Errorf("%s: %d, not %d", c.header, r.StatusCode, c.status)
		}
		if c.status == http.StatusForbidden {
			if r, body := o.request(t, "GET", ".desk/events", c.header); r.StatusCode != 403 || body == "" {
				t.Errorf("%s: %d, %q", c.header, r.StatusCode, body)
			}
		}
	}
}

// So many streams are open and no more, and one that ends makes room. Others on the network cannot take those of this
// computer.
func TestStreamsAreCounted(t *testing.T) {
	o := open(t, goodGuide, 0)
	var opened []io.Closer
	for range usualLimits.streams {
		r, err := http.Get(o.address + ".desk/events")
		if err != nil || r.StatusCode != http.StatusOK {
			t.Fatal(r, err)
		}
		opened = append(opened, r.Body)
	}
	full := func() bool {
		r, err := http.Get(o.address + ".desk/events")
		if err != nil {
			t.Fatal(err)
		}
		defer func() { _ = r.Body.Close() }()
		if r.StatusCode == http.StatusOK {
			return false
		}
		const sentence = "100 pages follow the desk, and no more can. Close some of them.\n"
		if body := text(t, r); r.StatusCode != http.StatusServiceUnavailable || body != sentence {
			t.Fatalf("%d, %q", r.StatusCode, body)
		}
		return true
	}
	if !full() {
		t.Fatal("a stream more is opened")
	}
	if o.desk.news.join(false, usualLimits.streams) == nil {
		t.Error("the streams of this computer are counted with those of others")
	}
	_ = opened[0].Close()
	for end := time.Now().Add(patience); full(); time.Sleep(10 * time.Millisecond) {
		if time.Now().After(end) {
			t.Fatal("a stream that ended makes no room")
		}
	}
	for _, one := range opened[1:] {
		_ = one.Close()
	}
}

// A connection on which nothing comes is closed: before a request, within one, after one, and where nobody takes the
// answer. A stream of news stays, as does a film that is taken slowly.
func TestIdleConnectionsAreClosed(t *testing.T) {
	o := &office{content: filepath.Join(t.TempDir(), "content")}
	o.limits = limits{ask: time.Second, idle: time.Second, write: 2 * time.Second, streams: 3}
	o.fill(t, guideHead+"[The rows](rows.mp4)\n")
	film := filmOf("0123456789", 3_000_000)
	save(t, filepath.Join(o.content, "guides", "rows.mp4"), film)
	o.run(t, 0)
	events := o.follow(t, "guides/soil/")
	host := strings.Trim(o.address, "htp:/")
	head := " HTTP/1.1\r\nHost: " + host + "\r\n"
	for what, sent := range map[string]string{
		"nothing": "", "half a request": "GET / HTT", "half a head": "GET /" + head, "half a body": "POST /" + head +
			"Content-Length: 9\r\n\r\nhalf", "one request": "GET /" + head + "\r\n",
	} {
		c := dial(t, host)
		if _, err := io.WriteString(c, sent); err != nil {
			t.Fatal(err)
		}
		_ = c.SetReadDeadline(time.Now().Add(patience))
		if _, err := io.Copy(io.Discard, c); errors.Is(err, os.ErrDeadlineExceeded) {
			t.Errorf("after %s the connection stays open", what)
		}
	}
	untaken := dial(t, host)
	if _, err := io.WriteString(untaken, "GET /guides/rows.mp4"+head+"\r\n"); err != nil {
		t.Fatal(err)
	}
	slow := dial(t, host)
	if _, err := io.WriteString(slow, "GET /guides/rows.mp4"+head+"Connection: close\r\n\r\n"); err != nil {
		t.Fatal(err)
	}
	reader, total := bufio.NewReader(slow), int64(0)
	for range 25 { // longer than one write may take
		n, err := io.CopyN(io.Discard, reader, 1_100_000)
		if total += n; err != nil {
			break
		}
		time.Sleep(100 * time.Millisecond)
	}
	rest, err := io.Copy(io.Discard, reader)
	if total += rest; err != nil || total < int64(len(film)) {
		t.Errorf("a film that is taken slowly ends after %d bytes: %v", total, err)
	}
	if n, _ := io.Copy(io.Discard, untaken); n > int64(len(film)) {
		t.Error("an answer that nobody takes is sent whole") // its end came late enough to be read
	}
	o.save(t, otherGuide)
	if e := next(t, events); e != "changed {}" {
		t.Errorf("the stream of news says %q", e)
	}
}

func dial(t *testing.T, host string) net.Conn {
	t.Helper()
	c, err := net.Dial("tcp", host)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = c.Close() })
	return c
}

// What is made when a browser asks can fail as any making can. The desk says where, and shows the other pages.
func TestAPanicOfAnAnswer(t *testing.T) {
	o := open(t, goodGuide, 0)
	fails := func() book.File { return book.File{Path: "guides/soil/index.html"} } // which has no way to be made
	o.desk.shelf.mutex.Lock()
	o.desk.shelf.files["guides/soil/index.html"] = fails()
	o.desk.shelf.mutex.Unlock()
	r, body := o.request(t, "GET", "guides/soil/")
	if r.StatusCode != http.StatusInternalServerError || !strings.Contains(body, `failed on "/guides/soil/"`) {
		t.Errorf("%d, %q", r.StatusCode, body)
	}
	o.err.waitFor(t, `The program failed on "/guides/soil/"`)
	if r, _ := o.request(t, "GET", ""); r.StatusCode != http.StatusOK {
		t.Errorf("the home page: %d", r.StatusCode)
	}
}

// A shared desk says what it opens, and shows the address as a code that a camera reads: the one of the address, dark
// on light, with a quiet zone. Where no terminal is, the address alone is printed.
func TestSharingIsSaid(t *testing.T) {
	if len(sharedAddresses(ownAddresses())) == 0 {
		t.Log("this computer is on no network now, so nothing can be shared")
		return
	}
	for _, code := range []bool{true, false} {
		o := &office{content: filepath.Join(t.TempDir(), "content"), share: true, code: code}
		o.fill(t, goodGuide)
		o.run(t, 0)
		said := o.out.String()
		_, typed, _ := strings.Cut(said, "On a phone, type:\n  ")
		typed, _, _ = strings.Cut(typed, "\n")
		if !strings.Contains(said, sharing) || !strings.HasPrefix(typed, "http://") {
			t.Error(said)
		}
		if strings.Contains(said, blackOnWhite) != code || code && !strings.HasSuffix(said, drawCode(typed)) {
			t.Errorf("with a code: %v\n%s", code, said)
		}
	}
}

func TestDrawnCodeIsTheCode(t *testing.T) {
	const address = "http://192.168.1.7:4480/"
	rows, err := qrcode.Of(address)
	if err != nil {
		t.Fatal(err)
	}
	var drawn [][]bool
	for line := range strings.Lines(drawCode(address)) {
		inside, is := strings.CutPrefix(strings.TrimSuffix(line, asBefore+"\n"), "  "+blackOnWhite)
		var top, bottom []bool
		for _, r := range inside {
			top, bottom = append(top, r == '█' || r == '▀'), append(bottom, r == '█' || r == '▄')
		}
		if drawn = append(drawn, top, bottom); !is || len(top) != len(rows)+2*quietZone {
			t.Fatalf("%q", line)
		}
	}
	if lines := len(rows) + 2*quietZone; len(drawn) != lines && len(drawn) != lines+1 {
		t.Fatalf("%d rows for %d modules", len(drawn), len(rows))
	}
	for y, row := range drawn {
		for x, dark := range row {
			module := y >= quietZone && y-quietZone < len(rows) && x >= quietZone && x-quietZone < len(rows) &&
				rows[y-quietZone][x-quietZone]
			if dark != module {
				t.Fatalf("module %d, %d is dark: %v", x, y, dark)
			}
		}
	}
	if fmt.Sprint(rows[0][:8]) != "[true true true true true true true false]" { // the corner of any code
		t.Error(rows[0])
	}
}
