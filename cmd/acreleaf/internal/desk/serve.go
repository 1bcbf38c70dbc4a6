package desk

import (
	"bytes"
	_ "embed"
	"fmt"
	"net/http"
	"path"
	"strconv"
	"strings"
	"time"

	"acreleaf/cmd/acreleaf/internal/offline"
)

// Paths of the desk itself. The site's own paths never start with a dot.
const (
	eventsPath = "/.desk/events"
	scriptPath = "/.desk/desk.js"
	stylePath  = "/.desk/desk.css"
)

// missingFile is the site's page for an address that is not there.
const missingFile = "404.html"

//go:embed place.js
var placeScript []byte

//go:embed swap.js
var swapScript []byte

//go:embed fault.js
var faultScript []byte

//go:embed follow.js
var followScript []byte

//go:embed end.js
var endScript []byte

//go:embed desk.css
var style []byte

// script is the parts in one function, so that no name of theirs meets one of the page.
var script = bytes.Join([][]byte{
	[]byte("(() => {"), placeScript, swapScript, faultScript, followScript, []byte("})();\n"),
}, []byte("\n"))

// limits keep others on a shared network from taking all that a desk has.
type limits struct {
	ask     time.Duration // for a request to come in whole
	idle    time.Duration // between two requests on a connection
	write   time.Duration // for a browser to take the next part of an answer
	streams int           // of news, from this computer; as many again from others
}

var usualLimits = limits{ask: 10 * time.Second, idle: time.Minute, write: 30 * time.Second, streams: 100}

// Handler serves the site, the news and what follows it in the browser.
func (d *Desk) Handler() http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		defer d.guard(w, r)
		w.Header().Set("Cache-Control", "no-store")
		w.Header().Set("X-Content-Type-Options", "nosniff")
		w.Header().Set("Cross-Origin-Resource-Policy", "same-origin")
		w.Header().Set("Content-Security-Policy", "frame-ancestors 'none'") // a page cannot say it of itself
		switch {
		case !d.answersTo(r.Host):
			http.Error(w, "The desk answers only at this computer's own address.", http.StatusForbidden)
		case r.Method != http.MethodGet && r.Method != http.MethodHead:
			http.Error(w, "The desk only shows pages.", http.StatusMethodNotAllowed)
		case r.URL.Path == eventsPath:
			d.serveNews(w, r)
		case r.URL.Path == scriptPath:
			d.send(w, r, http.StatusOK, "text/javascript; charset=utf-8", script)
		case r.URL.Path == "/"+offline.WorkerPath:
			d.send(w, r, http.StatusOK, "text/javascript; charset=utf-8", endScript)
		case r.URL.Path == stylePath:
			d.send(w, r, http.StatusOK, "text/css; charset=utf-8", style)
		default:
			d.serveFile(w, r)
		}
	})
}

// guard tells a panic: a page is made again when it is asked for, and the program may fail on it.
func (d *Desk) guard(w http.ResponseWriter, r *http.Request) {
	if cause := recover(); cause != nil {
		text := fmt.Sprintf("The program failed on %q: %v. This is a mistake in the program: report it, with the page.",
			r.URL.Path, cause)
		d.tell(text)
		http.Error(w, text, http.StatusInternalServerError)
	}
}

func (d *Desk) serveFile(w http.ResponseWriter, r *http.Request) {
	name := strings.TrimPrefix(r.URL.Path, "/")
	if !d.shelf.has(name) && d.shelf.has(name+"/index.html") {
		// The path is one of the site's own, so the way is a way inside it.
		http.Redirect(w, r, "/"+name+"/", http.StatusFound)
		return
	}
	a := d.shelf.at(r.URL.Path)
	status := http.StatusOK
	switch {
	case a.name == "":
		status = http.StatusInternalServerError
	case !a.there:
		status = http.StatusNotFound
	}
	if a.name == "" || path.Ext(a.name) == ".html" {
		d.send(w, r, status, "text/html; charset=utf-8", withScript(a.content, d.shelf.mark(a)))
		return
	}
	w.Header().Set("ETag", `"`+strconv.FormatUint(a.hash, 16)+`"`) // a film whose file changes is not pieced together
	d.send(w, r, status, mediaType(a.name), a.content)
}

// send sends bytes, or the part of them that a browser asks for, as it does to move about in a film.
func (d *Desk) send(w http.ResponseWriter, r *http.Request, status int, kind string, content []byte) {
	w.Header().Set("Content-Type", kind)
	patient := patientWriter{w, d.limits.write}
	if status == http.StatusOK {
		http.ServeContent(patient, r, "", time.Time{}, bytes.NewReader(content))
		return
	}
	w.Header().Set("Content-Length", strconv.Itoa(len(content)))
	w.WriteHeader(status)
	if r.Method == http.MethodGet {
		_, _ = patient.Write(content) // a browser that went away
	}
}

// A patientWriter gives each part of an answer its own time: a whole film may take minutes.
type patientWriter struct {
	http.ResponseWriter
	patience time.Duration
}

func (w patientWriter) Write(b []byte) (int, error) {
	_ = http.NewResponseController(w.ResponseWriter).SetWriteDeadline(time.Now().Add(w.patience)) // a recorder has none
	return w.ResponseWriter.Write(b)
}

// withScript adds the script that follows the desk, with the mark of the page. It is not in the bytes that press
// writes. It runs before the page is painted, to bring back the reader's place in it.
func withScript(page []byte, mark string) []byte {
	tag := []byte(`<script src="` + scriptPath + `" data-made="` + mark + `"></script></head>`)
	return bytes.Replace(page, []byte("</head>"), tag, 1)
}
