package desk

import (
	"errors"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"runtime"
	"syscall"
	"time"
)

// A stamp is what can be seen of a file or folder without reading it.
type stamp struct {
	mode fs.FileMode
	size int64 // of a file
	time int64 // of a file, in nanoseconds
}

func (s stamp) isFolder() bool { return s.mode.IsDir() }
func (s stamp) isLink() bool   { return s.mode&fs.ModeSymlink != 0 }

func stampOf(full string) (s stamp, there bool) {
	info, err := os.Lstat(full)
	if err != nil {
		return stamp{}, false
	}
	return stampFrom(full, info), true
}

// stampFrom makes the stamp of a link from what it leads to: a file that is saved there is a change here.
func stampFrom(full string, info fs.FileInfo) stamp {
	mode := info.Mode()
	if mode&fs.ModeSymlink != 0 {
		if target, err := os.Stat(full); err == nil {
			info = target
		}
	}
	if info.IsDir() {
		return stamp{mode: mode} // its time and size are of what is in it, which has stamps of its own
	}
	return stamp{mode, info.Size(), info.ModTime().UnixNano()}
}

// scan gives a stamp of each thing in a folder and in those below it, but for what programs keep there, which begins
// with a dot. A folder that cannot be read has nothing in it.
func scan(full, name string, note func(name string, s stamp)) {
	entries, _ := os.ReadDir(full) // as many as can be read
	for _, entry := range entries {
		if hidden(entry.Name()) {
			continue
		}
		info, err := entry.Info()
		if err != nil {
			continue // it is gone by now
		}
		inside := filepath.Join(full, entry.Name())
		s := stampFrom(inside, info)
		way := path.Join(name, entry.Name())
		note(way, s)
		if s.isFolder() {
			scan(inside, way, note)
		}
	}
}

// A look is all that is in a folder.
type look struct {
	things []thing
	took   time.Duration
}

type thing struct {
	name string
	stamp
}

func lookAt(folder string) look {
	start := time.Now()
	var l look
	scan(folder, ".", func(name string, s stamp) { l.things = append(l.things, thing{name, s}) })
	l.took = time.Since(start)
	return l
}

// Between two looks. A look must cost little, however large the folder is: a hundredth of a processor as long as the
// system reports changes, a twentieth when it does not.
const (
	seldom = 2 * time.Second
	often  = time.Second
)

func (w *watcher) pause(last look) time.Duration {
	if w.limited || w.deaf {
		return max(often, 20*last.took)
	}
	return max(seldom, 100*last.took)
}

// compare finds what no report has told of. What was found by the look before, and still has no report, shows that
// reports do not come.
func (w *watcher) compare(l look) {
	if len(w.unheard) > 0 && !w.deaf && !w.limited {
		w.deaf = true
		w.say("Some changes in " + w.name + " come without a report of the system, as on a shared folder, so the desk " +
			"looks at the folder every second.")
		for folder := range w.watched {
			w.addOne(folder) // a watch may have been lost among many changes
		}
	}
	clear(w.unheard)
	for _, t := range l.things {
		if before, known := w.seen[t.name]; !known || before != t.stamp {
			w.check(t.name)
		}
	}
	if len(w.seen) == len(l.things) {
		return
	}
	there := make(map[string]bool, len(l.things))
	for _, t := range l.things {
		there[t.name] = true
	}
	for name := range w.seen {
		if !there[name] {
			w.check(name)
		}
	}
}

// check looks once more at what seems to have changed: a report may have come since the look.
func (w *watcher) check(name string) {
	full := filepath.Join(w.folder, filepath.FromSlash(name))
	before, known := w.seen[name]
	now, there := stampOf(full)
	if there == known && now == before {
		return
	}
	folder := before.isFolder() || now.isFolder()
	if known && before.isFolder() {
		w.forget(full)
	}
	if w.note(name); now.isFolder() {
		w.add(full)
	}
	if !before.isLink() && !now.isLink() { // nobody reports what a link leads to
		w.unheard[name] = true
	}
	w.tell(name, folder)
}

// isLimit says whether a system watches no more folders.
func isLimit(err error) bool {
	return errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EMFILE) || errors.Is(err, syscall.ENFILE)
}

// limit says once that not every change will be reported.
func (w *watcher) limit(err error) {
	if w.limited {
		return
	}
	w.limited = true
	const instead = ", so the desk looks at the folder every second"
	switch {
	case runtime.GOOS == "linux" && errors.Is(err, syscall.ENOSPC):
		w.say("The system watches no more folders, by its limit fs.inotify.max_user_watches" + instead + "; to raise it, " +
			"type: sudo sysctl fs.inotify.max_user_watches=524288")
	case runtime.GOOS == "linux" && errors.Is(err, syscall.EMFILE):
		w.say("The system watches folders for no more programs, by its limit fs.inotify.max_user_instances" + instead +
			"; to raise it, type: sudo sysctl fs.inotify.max_user_instances=512")
	default:
		w.say("The system does not report changes in " + w.name + " (" + err.Error() + ")" + instead + ".")
	}
}
