package desk

import (
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"

	"github.com/fsnotify/fsnotify"

	"acreleaf/cmd/acreleaf/internal/book"
)

// A watcher tells what changed under a folder. It watches folders and not files, because editors save by putting a new
// file in the old one's place, and a watch on the old file would be lost with it. When a folder came or went, names do
// not tell all: what was in it then may have changed before it was watched.
type watcher struct {
	changes chan struct{} // holds one at most: who reads it takes all that was gathered

	folder  string // absolute
	source  *fsnotify.Watcher
	watched map[string]bool // folders; for the pump alone, once it runs

	mutex    sync.Mutex
	gathered map[string]bool // names
	all      bool            // more may have changed than the names tell
}

// absence is how often a folder that is gone is looked for.
const absence = 300 * time.Millisecond

func watch(folder string) (*watcher, error) {
	absolute, err := filepath.Abs(folder)
	if err != nil {
		return nil, err
	}
	source, err := fsnotify.NewWatcher()
	if err != nil {
		return nil, err
	}
	w := &watcher{changes: make(chan struct{}, 1), folder: absolute, source: source, watched: map[string]bool{},
		gathered: map[string]bool{}}
	if err := w.add(absolute); err != nil {
		_ = source.Close() // the first error is the one to tell
		return nil, err
	}
	go w.pump()
	return w, nil
}

// take gives what changed since it was last asked.
func (w *watcher) take() book.Changes {
	w.mutex.Lock()
	defer w.mutex.Unlock()
	changes := book.Changes{Everything: w.all}
	for name := range w.gathered {
		changes.Names = append(changes.Names, name)
	}
	slices.Sort(changes.Names)
	w.all = false
	clear(w.gathered)
	return changes
}

// add watches a folder and every folder below it, but for those of programs, which begin with a dot. A file has no
// folders.
func (w *watcher) add(folder string) error {
	return filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil && path == folder:
			return err
		case err != nil: // a folder that may not be read; the press says so
			return nil
		case !entry.IsDir():
			return nil
		case path != folder && strings.HasPrefix(entry.Name(), "."):
			return filepath.SkipDir
		}
		if err := w.source.Add(path); err != nil {
			return err
		}
		w.watched[path] = true
		return nil
	})
}

// forget ends the watch on a folder that is gone or has another name now, and on those that were in it.
func (w *watcher) forget(folder string) {
	for path := range w.watched {
		if path == folder || strings.HasPrefix(path, folder+string(filepath.Separator)) {
			_ = w.source.Remove(path) // the watch may have ended with the folder
			delete(w.watched, path)
		}
	}
}

func (w *watcher) pump() {
	var gone <-chan time.Time // while the folder itself is away
	for {
		select {
		case event, open := <-w.source.Events:
			if !open {
				return
			}
			w.see(event)
		case _, open := <-w.source.Errors:
			if !open {
				return
			}
			w.tell("", true) // events were lost
		case <-gone:
		}
		gone = nil
		if !w.watched[w.folder] {
			if _, err := os.Stat(w.folder); err == nil && w.add(w.folder) == nil {
				w.tell("", true)
			} else {
				gone = time.After(absence)
			}
		}
	}
}

// see takes in one event.
func (w *watcher) see(event fsnotify.Event) {
	name, err := filepath.Rel(w.folder, event.Name)
	if err != nil || !filepath.IsLocal(name) {
		return
	}
	name = filepath.ToSlash(name)
	if name != "." && slices.ContainsFunc(strings.Split(name, "/"), hidden) {
		return // a program's own file
	}
	folder := w.watched[event.Name]
	if folder && event.Has(fsnotify.Remove|fsnotify.Rename) {
		w.forget(event.Name)
	}
	if event.Has(fsnotify.Create) {
		// What is gone again cannot be walked; that it was there is told all the same.
		_ = w.add(event.Name)
		folder = folder || w.watched[event.Name]
	}
	w.tell(name, folder)
}

func hidden(element string) bool { return strings.HasPrefix(element, ".") }

func (w *watcher) tell(name string, all bool) {
	w.mutex.Lock()
	if name != "" {
		w.gathered[name] = true
	}
	w.all = w.all || all
	w.mutex.Unlock()
	select {
	case w.changes <- struct{}{}:
	default:
	}
}

func (w *watcher) close() { _ = w.source.Close() }
