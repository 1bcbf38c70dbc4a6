package desk

import (
	"bytes"
	_ "embed"
	"net/http"
	"path"
	"strings"
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

//go:embed desk.css
var style []byte

// script is the parts in one function, so that no name of theirs meets one of the page.
var script = bytes.Join([][]byte{
	[]byte("(() => {"), placeScript, swapScript, faultScript, followScript, []byte("})();\n"),
}, []byte("\n"))

// Handler serves the site, the news and what follows it in the browser.
func (d *Desk) Handler() http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Cache-Control", "no-store")
		w.Header().Set("X-Content-Type-Options", "nosniff")
		w.Header().Set("Cross-Origin-Resource-Policy", "same-origin")
		switch {
		case !d.answersTo(r.Host):
			http.Error(w, "The desk answers only at this computer's own address.", http.StatusForbidden)
		case r.Method != http.MethodGet && r.Method != http.MethodHead:
			http.Error(w, "The desk only shows pages.", http.StatusMethodNotAllowed)
		case r.URL.Path == eventsPath:
			d.serveNews(w, r)
		case r.URL.Path == scriptPath:
			send(w, r, http.StatusOK, "text/javascript; charset=utf-8", script)
		case r.URL.Path == stylePath:
			send(w, r, http.StatusOK, "text/css; charset=utf-8", style)
		default:
			d.serveFile(w, r)
		}
	})
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
		send(w, r, status, "text/html; charset=utf-8", withScript(a.content, d.shelf.mark(a)))
		return
	}
	send(w, r, status, mediaType(a.name), a.content)
}

func send(w http.ResponseWriter, r *http.Request, status int, kind string, content []byte) {
	w.Header().Set("Content-Type", kind)
	w.WriteHeader(status)
	if r.Method == http.MethodGet {
		_, _ = w.Write(content) // a browser that went away
	}
}

// withScript adds the script that follows the desk, with the mark of the page. It is not in the bytes that press
// writes. It runs before the page is painted, to bring back the reader's place in it.
func withScript(page []byte, mark string) []byte {
	tag := []byte(`<script src="` + scriptPath + `" data-made="` + mark + `"></script></head>`)
	return bytes.Replace(page, []byte("</head>"), tag, 1)
}
