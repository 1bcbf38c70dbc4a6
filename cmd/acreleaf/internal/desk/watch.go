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

// A watcher tells what changed under a folder. The system reports most of it at once; what it does not report, as on
// many shared folders, is found by looking (look.go). It watches folders and not files, because editors save by putting
// a new file in the old one's place, and a watch on the old file would be lost with it. When a folder came or went,
// names do not tell all: what was in it then may have changed before it was watched.
type watcher struct {
	changes chan struct{} // holds one at most: who reads it takes all that was gathered

	folder string            // absolute
	name   string            // what sentences call it
	say    func(text string) // gives the author a sentence
	ended  chan struct{}

	// From here to the mutex for the pump alone, once it runs.
	system  reports
	root    fs.FileInfo      // the folder that is watched; nil while there is none
	moved   bool             // it was moved or removed since it was watched
	watched map[string]bool  // folders by their full names
	seen    map[string]stamp // what is in the folder, as it was when it was last told of
	unheard map[string]bool  // what was found by looking, and no report has come of
	limited bool             // the system takes no more folders
	deaf    bool             // reports do not come

	mutex    sync.Mutex
	gathered map[string]bool // names
	all      bool            // more may have changed than the names tell
}

// reports are what a system tells of the folders that it was asked to watch.
type reports struct {
	events  <-chan fsnotify.Event
	errors  <-chan error
	folders interface {
		Add(folder string) error
		Remove(folder string) error
		Close() error
	}
}

// reportsOfTheSystem are those of the system that the desk runs on.
func reportsOfTheSystem() (reports, error) {
	w, err := fsnotify.NewWatcher()
	if err != nil {
		return reports{}, err
	}
	return reports{w.Events, w.Errors, w}, nil
}

// watch watches a folder. Without reports of the system it looks at the folder every second.
func watch(folder, name string, say func(string), system func() (reports, error)) (*watcher, error) {
	absolute, err := filepath.Abs(folder)
	if err != nil {
		return nil, err
	}
	w := &watcher{changes: make(chan struct{}, 1), folder: absolute, name: name, say: say, ended: make(chan struct{}),
		watched: map[string]bool{}, seen: map[string]stamp{}, unheard: map[string]bool{}, gathered: map[string]bool{}}
	w.root, err = identify(absolute)
	if err != nil {
		return nil, err
	}
	if w.system, err = system(); err != nil {
		w.limit(err)
	}
	w.add(absolute)
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

// add watches a folder and every folder below it, and notes what is in them now.
func (w *watcher) add(folder string) {
	w.addOne(folder)
	scan(folder, w.relative(folder), func(name string, s stamp) {
		w.seen[name] = s
		if s.isFolder() {
			w.addOne(filepath.Join(w.folder, filepath.FromSlash(name)))
		}
	})
}

func (w *watcher) addOne(folder string) {
	w.watched[folder] = true
	if w.system.folders == nil {
		return
	}
	if err := w.system.folders.Add(folder); isLimit(err) {
		w.limit(err) // a folder that may not be read is no concern of ours: the press says so
	}
}

// forget ends the watch on a folder that is gone or has another name now, and on those that were in it.
func (w *watcher) forget(folder string) {
	for path := range w.watched {
		if within(path, folder, string(filepath.Separator)) {
			if w.system.folders != nil {
				_ = w.system.folders.Remove(path) // the watch may have ended with the folder
			}
			delete(w.watched, path)
		}
	}
	name := w.relative(folder)
	for seen := range w.seen {
		if name == "." || within(seen, name, "/") {
			delete(w.seen, seen)
		}
	}
}

// within says whether a name is that of a folder or of something in it.
func within(name, folder, separator string) bool {
	return name == folder || strings.HasPrefix(name, folder+separator)
}

// pulse is how often the watcher sees whether the folder is still the same one.
const pulse = 300 * time.Millisecond

func (w *watcher) pump() {
	beat := time.NewTicker(pulse)
	defer beat.Stop()
	looked := make(chan look, 1)
	next := time.After(w.pause(look{}))
	for {
		select {
		case <-w.ended:
			return
		case event, open := <-w.system.events:
			if !open {
				w.system.events = nil
				continue
			}
			w.see(event)
		case _, open := <-w.system.errors:
			if !open {
				w.system.errors = nil
				continue
			}
			clear(w.unheard)
			w.tell("", true) // events were lost
		case <-beat.C:
		case <-next:
			go func() { looked <- lookAt(w.folder) }() // a shared folder may not answer for minutes
		case l := <-looked:
			w.compare(l)
			next = time.After(w.pause(l))
		}
		w.checkRoot()
	}
}

// checkRoot sees whether the folder is still the one that is watched. No event tells: while somebody has it open, and
// the desk has, a system does not report that it was removed.
func (w *watcher) checkRoot() {
	now, err := identify(w.folder)
	switch {
	case err != nil && w.root == nil, err == nil && w.root != nil && !w.moved && os.SameFile(now, w.root):
		return
	case err != nil:
		w.say(w.name + " is not there now. The desk looks for it every second, and goes on when it is back.")
	case w.root == nil:
		w.say(w.name + " is there again, and the desk follows it.")
	default:
		w.say(w.name + " was moved or replaced, and the desk follows what is there now.")
	}
	w.forget(w.folder)
	if w.root, w.moved = now, false; now != nil {
		w.add(w.folder)
	}
	clear(w.unheard)
	w.tell("", true)
}

// identify gives what tells a folder from another one in its place.
func identify(folder string) (fs.FileInfo, error) {
	info, err := os.Stat(folder)
	if err == nil && !info.IsDir() {
		err = fs.ErrNotExist
	}
	if err != nil {
		return nil, err
	}
	os.SameFile(info, info) // Windows finds out only when asked, and later another folder may have the name
	return info, nil
}

// see takes in one event.
func (w *watcher) see(event fsnotify.Event) {
	name := w.relative(event.Name)
	if name == "" || name != "." && slices.ContainsFunc(strings.Split(name, "/"), hidden) {
		return // elsewhere, or a program's own file
	}
	folder := w.watched[event.Name]
	if folder && event.Has(fsnotify.Remove|fsnotify.Rename) {
		if name == "." {
			w.moved = true
			return
		}
		w.forget(event.Name)
	}
	w.note(name)
	if event.Has(fsnotify.Create|fsnotify.Chmod) && w.seen[name].isFolder() {
		w.add(event.Name)
		folder = true
	}
	for unheard := range w.unheard {
		if within(unheard, name, "/") {
			delete(w.unheard, unheard)
		}
	}
	w.tell(name, folder)
}

// note notes how something is now that is about to be told of.
func (w *watcher) note(name string) {
	if s, there := stampOf(filepath.Join(w.folder, filepath.FromSlash(name))); !there {
		delete(w.seen, name)
	} else if name != "." {
		w.seen[name] = s
	}
}

// relative is the slash path in the folder; "" for what is elsewhere.
func (w *watcher) relative(path string) string {
	name, err := filepath.Rel(w.folder, path)
	if err != nil || !filepath.IsLocal(name) {
		return ""
	}
	return filepath.ToSlash(name)
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

func (w *watcher) close() {
	close(w.ended)
	if w.system.folders != nil {
		_ = w.system.folders.Close()
	}
}
