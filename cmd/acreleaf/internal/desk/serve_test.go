package desk

import (
	"io"
	"mime"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/message"
)

// shown is a desk with a small site on its shelf.
func shown() *Desk {
	d := New(Options{})
	d.shelf.put(kept([]plain{
		{Path: "index.html", Bytes: []byte("<html><head></head>home")},
		{Path: "guides/soil/index.html", Bytes: []byte("<html><head></head>soil")},
		{Path: "404.html", Bytes: []byte("<html><head></head>not here")},
		{Path: "assets/page.css", Bytes: []byte("p{}")},
		{Path: "plan.unknown", Bytes: []byte("plan")},
	}))
	return d
}

// plain is a file whose bytes are kept.
type plain struct {
	Path  string
	Bytes []byte
}

func kept(files []plain) []book.File {
	var kept []book.File
	for _, f := range files {
		kept = append(kept, book.Kept(f.Path, f.Bytes))
	}
	return kept
}

func ask(d *Desk, method, target, host string) *http.Response {
	r := httptest.NewRequest(method, target, nil)
	r.Host = host
	w := httptest.NewRecorder()
	d.Handler().ServeHTTP(w, r)
	return w.Result()
}

func text(t *testing.T, r *http.Response) string {
	t.Helper()
	b, err := io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// A page on the web whose own name is made to point at this computer could read an author's drafts. It asks by its
// own name, and is refused.
func TestOnlyThisComputersNamesAreServed(t *testing.T) {
	for host, status := range map[string]int{
		"127.0.0.1:4480": http.StatusOK, "127.0.0.1": http.StatusOK, "localhost:4480": http.StatusOK,
		"localhost": http.StatusOK, "[::1]:4480": http.StatusOK, "[::1]": http.StatusOK, "127.9.9.9:1": http.StatusOK,

		"rows.example.org": http.StatusForbidden, "rows.example.org:4480": http.StatusForbidden,
		"127.0.0.1.example.org": http.StatusForbidden, "localhost.example.org:4480": http.StatusForbidden,
		"192.168.1.7:4480": http.StatusForbidden, "0.0.0.0:4480": http.StatusForbidden, "": http.StatusForbidden,
		"[2001:db8::1]:4480": http.StatusForbidden, "2130706433:4480": http.StatusForbidden,
	} {
		for _, target := range []string{"/", scriptPath, stylePath, "/assets/page.css"} {
			if r := ask(shown(), http.MethodGet, target, host); r.StatusCode != status {
				t.Errorf("%q asks for %s: %d, not %d", host, target, r.StatusCode, status)
			}
		}
	}
}

// A pressed site that was once served here may have left a worker. It finds one that ends it, whatever the site has.
func TestWorkerOfAnEarlierSiteIsEnded(t *testing.T) {
	r := ask(shown(), http.MethodGet, "/worker.js", "localhost")
	got := text(t, r)
	for _, part := range []string{"skipWaiting()", "caches.delete(name)", "registration.unregister()"} {
		if r.StatusCode != http.StatusOK || !strings.Contains(got, part) {
			t.Errorf("status %d, and the worker has no %s:\n%s", r.StatusCode, part, got)
		}
	}
}

func TestFilesAreServed(t *testing.T) {
	const tag = `<script src="/.desk/desk.js" data-made=""></script></head>`
	for _, c := range []struct {
		method, target string
		status         int
		kind, body     string
	}{
		{"GET", "/", 200, "text/html; charset=utf-8", "<html><head>" + tag + "home"},
		{"GET", "/index.html", 200, "text/html; charset=utf-8", "<html><head>" + tag + "home"},
		{"GET", "/guides/soil/", 200, "text/html; charset=utf-8", "<html><head>" + tag + "soil"},
		{"GET", "/assets/page.css", 200, "text/css; charset=utf-8", "p{}"},
		{"GET", "/plan.unknown", 200, "application/octet-stream", "plan"},
		{"GET", "/guides/rows/", 404, "text/html; charset=utf-8", `<html><head><base href="/">` + tag + "not here"},
		{"GET", "/../../etc/passwd", 404, "text/html; charset=utf-8", `<html><head><base href="/">` + tag + "not here"},
		{"GET", `/..\..\secret`, 404, "text/html; charset=utf-8", `<html><head><base href="/">` + tag + "not here"},
		{"GET", scriptPath, 200, "text/javascript; charset=utf-8", string(script)},
		{"HEAD", "/", 200, "text/html; charset=utf-8", ""},
		{"POST", "/", 405, "text/plain; charset=utf-8", "The desk only shows pages.\n"},
		{"DELETE", "/index.html", 405, "text/plain; charset=utf-8", "The desk only shows pages.\n"},
	} {
		r := ask(shown(), c.method, c.target, "localhost")
		body := madeMark.ReplaceAllString(text(t, r), `data-made=""`)
		if r.StatusCode != c.status || r.Header.Get("Content-Type") != c.kind || body != c.body {
			t.Errorf("%s %s: %d %s %q", c.method, c.target, r.StatusCode, r.Header.Get("Content-Type"), body)
		}
		if r.Header.Get("Cache-Control") != "no-store" || r.Header.Get("X-Content-Type-Options") != "nosniff" {
			t.Errorf("%s %s: %v", c.method, c.target, r.Header)
		}
	}
}

// A computer where another program has said that a style sheet is plain text shows the site as any other.
func TestTypesAreNotTheSystems(t *testing.T) {
	before := mime.TypeByExtension(".css")
	t.Cleanup(func() { _ = mime.AddExtensionType(".css", before) })
	if err := mime.AddExtensionType(".css", "text/plain"); err != nil {
		t.Fatal(err)
	}
	r := ask(shown(), "GET", "/assets/page.css", "localhost")
	if kind := r.Header.Get("Content-Type"); kind != "text/css; charset=utf-8" {
		t.Errorf("a style sheet is served as %q", kind)
	}
}

// The folder of a page leads to the page, and never to another host.
func TestFolderLeadsToItsPage(t *testing.T) {
	r := ask(shown(), http.MethodGet, "/guides/soil", "localhost")
	if way := r.Header.Get("Location"); r.StatusCode != http.StatusFound || way != "/guides/soil/" {
		t.Errorf("%d, to %q", r.StatusCode, way)
	}
	d := shown()
	d.shelf.put(kept([]plain{{Path: "rows.example.org/index.html"}}))
	r = ask(d, http.MethodGet, "http://localhost//rows.example.org", "localhost")
	if way := r.Header.Get("Location"); strings.HasPrefix(way, "//") {
		t.Errorf("%d, to %q", r.StatusCode, way)
	}
}

// Until there has been a good site, every address says what is wrong, as text.
func TestFaultsAreShownWhenThereIsNoSite(t *testing.T) {
	d := New(Options{})
	d.shelf.blame(message.List{{
		ID: "html", Text: "<script>alert(1)</script> & so on", Note: "write \"it\"",
		Source: &message.Source{Name: "content/a.md", Text: []byte("<b>\n")}, Span: message.Span{Start: 0, End: 3},
	}})
	for _, target := range []string{"/", "/guides/soil/", "/assets/page.css"} {
		r := ask(d, http.MethodGet, target, "localhost")
		body := text(t, r)
		if r.StatusCode != http.StatusInternalServerError || strings.Contains(body, "<script>alert") ||
			!strings.Contains(body, ">content/a.md:1:1: error: &lt;script&gt;alert(1)&lt;/script&gt; &amp; so on [html]<") ||
			!strings.Contains(body, ">    1 | &lt;b&gt;\n      | ^~~<") || !strings.Contains(body, scriptPath) {
			t.Errorf("%s: %d\n%s", target, r.StatusCode, body)
		}
	}
	d.shelf.put(kept([]plain{{Path: "index.html", Bytes: []byte("home")}}))
	if r := ask(d, http.MethodGet, "/", "localhost"); r.StatusCode != http.StatusOK {
		t.Errorf("%d after a good site", r.StatusCode)
	}
}

// A site with a fault leaves the last good one on the shelf.
func TestLastGoodSiteStays(t *testing.T) {
	d := shown()
	d.shelf.blame(message.List{{Text: "wrong"}})
	if r := ask(d, http.MethodGet, "/guides/soil/", "localhost"); r.StatusCode != http.StatusOK {
		t.Errorf("%d", r.StatusCode)
	}
}

func TestShelfTellsWhatChanged(t *testing.T) {
	file := func(path, text string) plain { return plain{Path: path, Bytes: []byte(text)} }
	var s shelf
	s.put(kept([]plain{file("a.html", "1"), file("b.html", "1"), file("c.png", "1")}))
	page, picture := s.mark(s.at("/a.html")), s.others
	next := []plain{file("d.html", "1"), file("b.html", "2"), file("a.html", "1"), file("c.png", "1")}
	if n := s.put(kept(next)); n != 2 {
		t.Errorf("%d files changed", n)
	}
	if s.mark(s.at("/a.html")) != page || s.others != picture {
		t.Error("a page that did not change has another mark")
	}
	if n := s.put(kept([]plain{file("a.html", "1"), file("c.png", "2")})); n != 3 {
		t.Errorf("%d files changed", n)
	}
	if _, there := s.get("d.html"); there || s.mark(s.at("/a.html")) == page {
		t.Error("a file stays, or a picture that changed leaves the mark of pages as it was")
	}
}
