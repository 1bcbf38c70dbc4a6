package desk

import (
	"encoding/json"
	"fmt"
	"net/http"
	"sync"
)

// news tells the browsers that listen that the site was looked at again. What of it concerns a browser is found when
// it is told, so that one that was away misses nothing. The zero value is ready.
type news struct {
	mutex     sync.Mutex
	listeners map[chan struct{}]bool
}

func (n *news) tell() {
	n.mutex.Lock()
	defer n.mutex.Unlock()
	for listener := range n.listeners {
		select {
		case listener <- struct{}{}:
		default: // it has yet to look, and will see this too
		}
	}
}

func (n *news) join() chan struct{} {
	n.mutex.Lock()
	defer n.mutex.Unlock()
	if n.listeners == nil {
		n.listeners = map[chan struct{}]bool{}
	}
	listener := make(chan struct{}, 1)
	listener <- struct{}{} // what is now is news to it
	n.listeners[listener] = true
	return listener
}

func (n *news) leave(listener chan struct{}) {
	n.mutex.Lock()
	defer n.mutex.Unlock()
	delete(n.listeners, listener)
}

// serveNews keeps a stream of server-sent events (WHATWG HTML, 9.2) open until the browser goes away or the desk stops.
// The browser says what page it shows, and the mark of it. It is told "changed" when that is no longer what it would
// get, and "faults" when what is wrong with the site is no longer what it was told.
func (d *Desk) serveNews(w http.ResponseWriter, r *http.Request) {
	flusher, ok := w.(http.Flusher)
	if !ok {
		http.Error(w, "This connection cannot carry news.", http.StatusInternalServerError)
		return
	}
	page, made := r.URL.Query().Get("page"), r.URL.Query().Get("made")
	listener := d.news.join()
	defer d.news.leave(listener)
	w.Header().Set("Content-Type", "text/event-stream")
	// A browser whose desk was restarted asks again after this many milliseconds.
	fmt.Fprint(w, "retry: 500\n\n")
	flusher.Flush()
	told := "" // it may show faults from before, so it is told of none too
	for {
		select {
		case <-r.Context().Done():
			return
		case <-listener:
		}
		if d.shelf.mark(d.shelf.at(page)) != made {
			fmt.Fprint(w, "event: changed\ndata: {}\n\n")
		} else if faults := d.faultsNow(); faults != told {
			fmt.Fprintf(w, "event: faults\ndata: %s\n\n", faults)
			told = faults
		}
		flusher.Flush()
	}
}

// noFaults is what a browser is told when nothing is wrong.
var noFaults = asJSON(tellFaults(nil))

// faultsNow is what to show over a page. While there is no good site, the page itself tells the faults.
func (d *Desk) faultsNow() string {
	if faults, blank := d.shelf.blank(); !blank {
		return asJSON(tellFaults(faults))
	}
	return noFaults
}

func asJSON(t toldFaults) string {
	text, err := json.Marshal(t)
	if err != nil {
		panic(err) // strings always have a JSON
	}
	return string(text)
}
