package desk

import (
	"bytes"
	_ "embed"
	"fmt"
	"html"
	"mime"
	"net"
	"net/http"
	"path"
	"strings"

	"acreleaf/cmd/acreleaf/internal/message"
)

// Paths of the desk itself. The site's own paths never start with a dot.
const (
	eventsPath = "/.desk/events"
	scriptPath = "/.desk/follow.js"
)

//go:embed follow.js
var followScript []byte

// Handler serves the site, the events and the script that follows them.
func (d *Desk) Handler() http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Cache-Control", "no-store")
		w.Header().Set("X-Content-Type-Options", "nosniff")
		switch {
		case !local(r.Host):
			http.Error(w, "The desk answers only at this computer's own address.", http.StatusForbidden)
		case r.Method != http.MethodGet && r.Method != http.MethodHead:
			http.Error(w, "The desk only shows pages.", http.StatusMethodNotAllowed)
		case r.URL.Path == eventsPath:
			d.news.serve(w, r)
		case r.URL.Path == scriptPath:
			w.Header().Set("Content-Type", "text/javascript; charset=utf-8")
			_, _ = w.Write(followScript) // a browser that went away
		default:
			d.serveFile(w, r)
		}
	})
}

// local says whether a request names this computer. A page elsewhere that has its own name point at 127.0.0.1 would
// name itself.
func local(host string) bool {
	name, _, err := net.SplitHostPort(host)
	if err != nil {
		name = host
	}
	ip := net.ParseIP(strings.Trim(name, "[]"))
	return name == "localhost" || ip != nil && ip.IsLoopback()
}

func (d *Desk) serveFile(w http.ResponseWriter, r *http.Request) {
	if faults, blank := d.shelf.blank(); blank {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		w.WriteHeader(http.StatusInternalServerError)
		_, _ = w.Write(withScript(faultPage(faults)))
		return
	}
	name := strings.TrimPrefix(r.URL.Path, "/")
	if name == "" || strings.HasSuffix(name, "/") {
		name += "index.html"
	}
	content, there := d.shelf.get(name)
	if _, folder := d.shelf.get(name + "/index.html"); !there && folder {
		// The path is one of the site's own, so the way is a way inside it.
		http.Redirect(w, r, "/"+name+"/", http.StatusFound)
		return
	}
	status := http.StatusOK
	if !there {
		status = http.StatusNotFound
		name = "404.html"
		content, _ = d.shelf.get(name)
		// The page is served at any depth here, so its ways start at the root.
		content = bytes.Replace(content, []byte("<head>"), []byte(`<head><base href="/">`), 1)
	}
	kind := mime.TypeByExtension(path.Ext(name))
	if path.Ext(name) == ".html" {
		kind = "text/html; charset=utf-8"
		content = withScript(content)
	}
	if kind == "" {
		kind = "application/octet-stream"
	}
	w.Header().Set("Content-Type", kind)
	w.WriteHeader(status)
	if r.Method == http.MethodGet {
		_, _ = w.Write(content)
	}
}

// withScript adds the script that follows the desk. It is not in the bytes that press writes.
func withScript(page []byte) []byte {
	tag := []byte(`<script defer src="` + scriptPath + `"></script></head>`)
	return bytes.Replace(page, []byte("</head>"), tag, 1)
}

// faultPage says what is wrong while there is no good site to show: the same text as in the terminal.
func faultPage(faults message.List) []byte {
	var text bytes.Buffer
	message.Printer{}.Print(&text, faults)
	return fmt.Appendf(nil, "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">"+
		"<meta name=\"viewport\" content=\"width=device-width\"><title>The site has a fault</title></head>"+
		"<body><h1>The site has a fault</h1><p>It shows here as soon as this is mended and saved.</p>"+
		"<pre>%s</pre></body></html>\n", html.EscapeString(text.String()))
}
