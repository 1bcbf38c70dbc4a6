package desk

import (
	"io/fs"
	"path/filepath"
	"strings"

	"github.com/fsnotify/fsnotify"
)

// A watcher tells that something under a folder changed. It watches folders and not files, because editors save by
// putting a new file in the old one's place, and a watch on the old file would be lost with it.
type watcher struct {
	changes chan struct{} // holds one at most: who reads it looks at everything anyway

	source *fsnotify.Watcher
}

func watch(folder string) (*watcher, error) {
	source, err := fsnotify.NewWatcher()
	if err != nil {
		return nil, err
	}
	w := &watcher{changes: make(chan struct{}, 1), source: source}
	if err := w.add(folder); err != nil {
		_ = source.Close() // the first error is the one to tell
		return nil, err
	}
	go w.pump()
	return w, nil
}

// add watches a folder and every folder below it, but for those of programs, which begin with a dot.
func (w *watcher) add(folder string) error {
	return filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		switch {
		case !entry.IsDir():
			return nil
		case path != folder && strings.HasPrefix(entry.Name(), "."):
			return filepath.SkipDir
		}
		return w.source.Add(path)
	})
}

func (w *watcher) pump() {
	for {
		select {
		case event, open := <-w.source.Events:
			if !open {
				return
			}
			if strings.HasPrefix(filepath.Base(event.Name), ".") {
				continue // an editor's own file
			}
			if event.Has(fsnotify.Create) {
				// A file, or a folder that is gone again, cannot be walked; the change is told all the same.
				_ = w.add(event.Name)
			}
			w.tell()
		case _, open := <-w.source.Errors:
			if !open {
				return
			}
			w.tell() // events were lost: look at everything
		}
	}
}

func (w *watcher) tell() {
	select {
	case w.changes <- struct{}{}:
	default:
	}
}

func (w *watcher) close() { _ = w.source.Close() }
