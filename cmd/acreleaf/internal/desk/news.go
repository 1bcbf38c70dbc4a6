package desk

import (
	"encoding/json"
	"fmt"
	"net/http"
	"net/netip"
	"sync"
	"time"
)

// news tells the browsers that listen that the site was looked at again. What of it concerns a browser is found when
// it is told, so that one that was away misses nothing. The zero value is ready.
type news struct {
	mutex     sync.Mutex
	listeners map[chan struct{}]bool // true for one on this computer
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

// join gives a listener, or nil when there are as many as may be. Those on this computer are counted apart, so that
// nobody else on a network can take the author's own.
func (n *news) join(near bool, most int) chan struct{} {
	n.mutex.Lock()
	defer n.mutex.Unlock()
	count := 0
	for _, is := range n.listeners {
		if is == near {
			count++
		}
	}
	if count >= most {
		return nil
	}
	if n.listeners == nil {
		n.listeners = map[chan struct{}]bool{}
	}
	listener := make(chan struct{}, 1)
	listener <- struct{}{} // what is now is news to it
	n.listeners[listener] = near
	return listener
}

func (n *news) leave(listener chan struct{}) {
	n.mutex.Lock()
	defer n.mutex.Unlock()
	delete(n.listeners, listener)
}

// serveNews keeps a stream of server-sent events (WHATWG HTML, 9.2) open until the browser goes away or the desk stops.
func (d *Desk) serveNews(w http.ResponseWriter, r *http.Request) {
	if !fromOwnPage(r) {
		http.Error(w, "The news of the desk is for its own pages.", http.StatusForbidden)
		return
	}
	if r.Method == http.MethodHead {
		w.Header().Set("Content-Type", "text/event-stream")
		return
	}
	listener := d.news.join(fromThisComputer(r), d.limits.streams)
	if listener == nil {
		http.Error(w, fmt.Sprintf("%d pages follow the desk, and no more can. Close some of them.", d.limits.streams),
			http.StatusServiceUnavailable)
		return
	}
	defer d.news.leave(listener)
	_ = http.NewResponseController(w).SetReadDeadline(time.Time{}) // nothing more is read, and that is no fault
	w.Header().Set("Content-Type", "text/event-stream")
	// A browser whose desk was restarted asks again after this many milliseconds.
	if d.sendNews(w, "retry: 500\n\n") != nil {
		return
	}
	d.follower(w, r, listener)
}

// follower sends what is news to one page. The browser says which page it shows, and the mark of it. It is told
// "changed" when that is no longer what it would get, and "faults" when what is wrong with the site is no longer what
// it was told.
func (d *Desk) follower(w http.ResponseWriter, r *http.Request, listener <-chan struct{}) {
	page, made := r.URL.Query().Get("page"), r.URL.Query().Get("made")
	told := "" // it may show faults from before, so it is told of none too
	var err error
	for err == nil {
		select {
		case <-r.Context().Done():
			return
		case <-listener:
		}
		if d.shelf.mark(d.shelf.at(page)) != made {
			err = d.sendNews(w, "event: changed\ndata: {}\n\n")
		} else if faults := d.faultsNow(); faults != told {
			err = d.sendNews(w, "event: faults\ndata: "+faults+"\n\n")
			told = faults
		}
	}
}

func (d *Desk) sendNews(w http.ResponseWriter, text string) error {
	if _, err := (patientWriter{w, d.limits.write}).Write([]byte(text)); err != nil {
		return err
	}
	return http.NewResponseController(w).Flush()
}

// fromOwnPage says whether a page of the desk asks, or somebody by hand, and no page from elsewhere. Browsers tell one
// or the other (Fetch, 3.2 and Fetch Metadata Request Headers).
func fromOwnPage(r *http.Request) bool {
	site, origin := r.Header.Get("Sec-Fetch-Site"), r.Header.Get("Origin")
	return (site == "" || site == "same-origin" || site == "none") && (origin == "" || origin == "http://"+r.Host)
}

func fromThisComputer(r *http.Request) bool {
	from, err := netip.ParseAddrPort(r.RemoteAddr)
	return err == nil && from.Addr().Unmap().IsLoopback()
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
