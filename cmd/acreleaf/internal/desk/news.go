package desk

import (
	"encoding/json"
	"fmt"
	"net/http"
	"sync"
)

// An event is one piece of news for the browsers.
type event struct {
	name  string
	paths []string
}

// news hands events to the browsers that are listening, as server-sent events (WHATWG HTML, 9.2). The zero value is
// ready.
type news struct {
	mutex     sync.Mutex
	listeners map[chan event]bool
}

// tell hands an event to every listener. One that has not taken the last yet misses this one: it reloads anyway.
func (n *news) tell(e event) {
	n.mutex.Lock()
	defer n.mutex.Unlock()
	for listener := range n.listeners {
		select {
		case listener <- e:
		default:
		}
	}
}

func (n *news) join() chan event {
	n.mutex.Lock()
	defer n.mutex.Unlock()
	if n.listeners == nil {
		n.listeners = map[chan event]bool{}
	}
	listener := make(chan event, 8)
	n.listeners[listener] = true
	return listener
}

func (n *news) leave(listener chan event) {
	n.mutex.Lock()
	defer n.mutex.Unlock()
	delete(n.listeners, listener)
}

// serve keeps a stream open until the browser goes away or the desk stops.
func (n *news) serve(w http.ResponseWriter, r *http.Request) {
	flusher, ok := w.(http.Flusher)
	if !ok {
		http.Error(w, "This connection cannot carry news.", http.StatusInternalServerError)
		return
	}
	listener := n.join()
	defer n.leave(listener)
	w.Header().Set("Content-Type", "text/event-stream")
	// A browser whose desk was restarted asks again after this many milliseconds.
	fmt.Fprint(w, "retry: 500\n\n")
	flusher.Flush()
	for {
		select {
		case <-r.Context().Done():
			return
		case e := <-listener:
			paths, err := json.Marshal(e.paths)
			if err != nil {
				return // a list of strings always has a JSON
			}
			fmt.Fprintf(w, "event: %s\ndata: %s\n\n", e.name, paths)
			flusher.Flush()
		}
	}
}
