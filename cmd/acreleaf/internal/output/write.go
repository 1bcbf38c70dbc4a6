package output

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"syscall"
)

// Write makes the folder dir hold the files of a site and none that an earlier press left, as a Writer does that is
// given all of them at once.
func Write(dir string, files []File, mark Mark) (Report, error) {
	return newWriter(dir).write(files, mark)
}

// A Writer takes the files of a site one after the other, as they are made, and puts them in place when all are there.
// What it keeps of a file is its name and a hash. It holds the folder's lock until Commit or Drop.
type Writer struct {
	disk    disk
	dir     string // as the user gave it
	workers int
	listed  manifest // what the last press wrote
	marked  Mark     // what it was made from
	ground

	mutex   sync.Mutex
	open    error    // why there is no folder for new files
	opened  bool     // there is one, or an error
	placed  []placed // the files so far
	numbers int      // how many numbers were given in the folder for new files
	failed  error    // the first error of Put
}

// placed is a file that was taken.
type placed struct {
	path   string
	number int // in the folder for new files; -1 for one that is in its place already
	finding
}

// Begin takes the folder dir, which need not be there yet, for one press, puts in order what a press that was cut short
// left, and looks at what is there.
func Begin(dir string) (*Writer, error) {
	w := newWriter(dir)
	return w, w.begin()
}

// Lists says whether a file of that slash path is among those that were written into the folder before.
func (w *Writer) Lists(name string) bool {
	_, listed := w.listed[name]
	return listed
}

// ListsAny says whether any of those files has a name that ends so.
func (w *Writer) ListsAny(ending string) bool {
	for name := range w.listed {
		if strings.HasSuffix(name, ending) {
			return true
		}
	}
	return false
}

// WasCut says whether the press before this one was cut short.
func (w *Writer) WasCut() bool { return w.cut }

// IsNew says whether no file was written into the folder before, as far as is known.
func (w *Writer) IsNew() bool { return len(w.listed) == 0 }

func newWriter(dir string) *Writer {
	return &Writer{disk: realDisk{}, dir: dir, workers: runtime.GOMAXPROCS(0)}
}

func (w *Writer) begin() error {
	if err := w.find(); err != nil {
		return err
	}
	if err := w.lock(); err != nil {
		w.unmake()
		return err
	}
	err := w.takeOver()
	if err != nil {
		w.unlock()
		w.unmake()
	}
	return err
}

// Put takes a file, and writes it beside the site if it is new or changed. The bytes are not kept and not changed. Put
// may be called by several goroutines at once. After an error it takes no more files, and gives that error again.
func (w *Writer) Put(f File) error {
	w.mutex.Lock()
	err := w.failed
	w.mutex.Unlock()
	if err == nil {
		err = w.take(f)
	}
	if err != nil {
		w.mutex.Lock()
		if w.failed == nil {
			w.failed = err
		}
		w.mutex.Unlock()
	}
	return err
}

func (w *Writer) take(f File) error {
	p := placed{path: f.Path, number: -1}
	if checkPath(f.Path) == "" { // else Commit says what is wrong with it
		var err error
		if p.finding, err = w.examine(f); err != nil {
			return err
		}
		if !p.blocked && !p.same {
			if p.number, err = w.stage(f); err != nil {
				return err
			}
		}
	}
	w.mutex.Lock()
	defer w.mutex.Unlock()
	w.placed = append(w.placed, p)
	return nil
}

// Commit puts the files in place. The order of the steps, and what a press that is cut short leaves, are in the
// package's description. The site stays as it was when a name fails Check, when a file that Acreleaf did not write is
// in the way, or when the disk had no room. The error is then a whole sentence for the user, and says what state the
// site is in.
//
// The mark is kept with the list of the files, for Current.
func (w *Writer) Commit(mark Mark) (Report, error) {
	p, err := w.decide(mark)
	if err != nil {
		w.Drop()
		return Report{}, err
	}
	if p.stale || len(p.writes) > 0 {
		err = w.carryOut(p, mark)
	}
	w.Drop()
	if err != nil {
		return Report{}, err
	}
	return Report{Written: len(p.writes), Unchanged: p.unchanged, Removed: p.removed}, nil
}

// decide plans what to do with the files that were taken.
func (w *Writer) decide(mark Mark) (*plan, error) {
	if w.failed != nil {
		return nil, w.failed
	}
	slices.SortFunc(w.placed, func(a, b placed) int { return cmp.Compare(a.path, b.path) })
	if faults := Check(w.paths()); len(faults) > 0 {
		return nil, fmt.Errorf("%s. %s", faults[0].Text, oldSiteWhole)
	}
	p, err := w.plan(mark)
	if err != nil {
		return nil, err
	}
	if len(p.blocked) > 0 {
		return nil, w.blockedError(p.blocked, oldSiteWhole)
	}
	return p, nil
}

func (w *Writer) paths() []string {
	paths := make([]string, len(w.placed))
	for i, p := range w.placed {
		paths[i] = p.path
	}
	return paths
}

// write takes all files of a site and puts them in place.
func (w *Writer) write(files []File, mark Mark) (Report, error) {
	if err := w.begin(); err != nil {
		return Report{}, err
	}
	_ = w.each(len(files), func(i int) error { return w.Put(files[i]) }) // Commit gives the error
	return w.Commit(mark)
}

// real is the system's path of a slash path in the folder.
func (w *Writer) real(p string) string { return filepath.Join(w.dir, filepath.FromSlash(p)) }

func (w *Writer) readManifest() (err error) {
	if w.listed, w.marked, err = w.readList(w.real("")); err != nil {
		return fmt.Errorf("%s, the list of the files that Acreleaf wrote, cannot be read. %s "+
			"Delete the whole folder %s if it holds nothing of yours, or choose another folder with --to: %w",
			w.shown(manifestName), oldSiteWhole, w.shown(""), bare(err))
	}
	return nil
}

// readList reads the list in a folder; it is empty where there is none.
func (w *Writer) readList(root string) (manifest, Mark, error) {
	text, err := w.disk.ReadFile(filepath.Join(root, manifestName))
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, syscall.ENOTDIR) {
		return nil, Mark{}, nil
	}
	if err != nil {
		return nil, Mark{}, err
	}
	return decode(text)
}
