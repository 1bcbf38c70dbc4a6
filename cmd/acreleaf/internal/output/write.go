package output

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
)

// Write makes the folder dir hold the files of a site and none that an earlier press left. The order of the steps, and
// what a press that is cut short leaves, are in the package's description. Nothing is written when a name fails Check,
// when a file that Acreleaf did not write is in the way, or when the disk has no room; the error is then a whole
// sentence for the user, and says what state the site is in. Bytes are not kept and not changed.
//
// The mark is kept with the list of the files, for Current.
//
// Two presses into one folder at a time do no harm to each other's files, but one of them ends with an error.
func Write(dir string, files []File, mark Mark) (Report, error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		w := &writer{dir: dir}
		return Report{}, w.sentence("", err, "No site was written.")
	}
	w := &writer{disk: realDisk{}, dir: dir, workers: runtime.GOMAXPROCS(0), mark: mark}
	return w.write(files)
}

// writer is one run of Write.
type writer struct {
	disk    disk
	dir     string // as the user gave it
	workers int
	token   string   // begins the names of this run's new files
	listed  manifest // what the last press wrote
	marked  Mark     // what it was made from
	mark    Mark     // what this one is made from
}

// real is the system's path of a slash path in the folder.
func (w *writer) real(p string) string { return filepath.Join(w.dir, filepath.FromSlash(p)) }

func (w *writer) write(files []File) (Report, error) {
	if faults := Check(files); len(faults) > 0 {
		return Report{}, fmt.Errorf("%s. %s", faults[0].Text, oldSiteWhole)
	}
	// A random token and nothing of the machine: it is gone when the press is done.
	w.token = fmt.Sprintf("%016x", rand.Uint64())
	if err := w.readManifest(); err != nil {
		return Report{}, err
	}
	if err := w.sweepStaging(); err != nil {
		return Report{}, err
	}
	found := make([]finding, len(files))
	err := w.each(len(files), func(i int) (err error) {
		found[i], err = w.examine(files[i])
		return err
	})
	if err != nil {
		return Report{}, err
	}
	p, err := w.plan(files, found)
	if err != nil {
		return Report{}, err
	}
	if len(p.blocked) > 0 {
		return Report{}, w.blockedError(p.blocked)
	}
	if p.stale || len(p.writes) > 0 {
		if err := w.carryOut(files, p); err != nil {
			return Report{}, err
		}
	}
	return Report{Written: len(p.writes), Unchanged: p.unchanged, Removed: p.removed}, nil
}

func (w *writer) readManifest() error {
	text, err := w.disk.ReadFile(w.real(manifestName))
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err == nil {
		w.listed, w.marked, err = decode(text)
	}
	if err != nil {
		return fmt.Errorf("%s, the list of the files that Acreleaf wrote, cannot be read. %s "+
			"Delete the whole folder %s if it holds nothing of yours, or choose another folder with --to: %w",
			w.shown(manifestName), oldSiteWhole, w.shown(""), bare(err))
	}
	return nil
}
