package output

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"slices"
	"syscall"
)

// ground is where a press works. All paths are the system's own.
type ground struct {
	home   string   // the site's folder, without a link
	exists bool     // it is there
	whole  bool     // it can be exchanged whole
	beside string   // the work folder beside the site; "" when the parent folder may not be written
	work   string   // the folder for new files: beside, or one in the site's folder
	unlock func()   // ends the lock
	cut    bool     // a press that was cut short left something
	made   []string // folders that were made for the site's folder, the deepest first
}

// find looks at the site's folder.
func (w *Writer) find() error {
	w.home, w.whole = filepath.Clean(w.dir), true
	info, err := w.disk.Lstat(w.home)
	if err == nil && info.Mode()&fs.ModeSymlink != 0 {
		w.whole = false
		real, err := w.disk.Real(w.home)
		if errors.Is(err, fs.ErrNotExist) {
			return fmt.Errorf("%s is a link to something that is not there. %s Make the folder that it leads to, "+
				"delete the link, or choose another folder with --to", w.shown(""), nothingMade)
		}
		if err != nil {
			return w.sentence("", err, nothingMade)
		}
		w.home = real
		info, err = w.disk.Lstat(real)
		if err != nil {
			return w.sentence("", err, nothingMade)
		}
	}
	switch {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil:
		return w.sentence("", err, nothingMade)
	case !info.IsDir():
		return w.sentence("", syscall.ENOTDIR, nothingMade)
	default:
		w.exists = true
		if err := w.disk.Writable(w.home); err != nil {
			w.refuse(w.sentence(stagingName, err, oldSiteWhole))
		}
	}
	if name := filepath.Base(w.home); name == "." || name == ".." {
		if w.home, err = filepath.Abs(w.home); err != nil {
			return w.sentence("", err, nothingMade)
		}
	}
	return nil
}

// sibling is the path of something of ours beside the site's folder.
func (w *Writer) sibling(name string) string {
	return filepath.Join(filepath.Dir(w.home), name+"-"+filepath.Base(w.home))
}

// lock takes the lock beside the site's folder, or in that folder if there can be none beside it.
func (w *Writer) lock() error {
	err := w.makeFolder(filepath.Dir(w.home))
	if err != nil {
		w.refuse(w.sentence("", err, nothingMade))
		return nil
	}
	w.beside = w.sibling(stagingName)
	unlock, err := w.disk.Lock(w.sibling(lockName))
	if err == nil {
		w.unlock = unlock
		return nil
	}
	if !isRefused(err) {
		return w.lockFault(err)
	}
	w.beside, w.whole = "", false
	if err := w.makeFolder(w.home); err != nil {
		w.refuse(w.sentence("", err, nothingMade))
		return nil
	}
	w.exists = true
	if w.open != nil {
		return nil // nothing can be written there, the lock neither
	}
	if unlock, err = w.disk.Lock(w.real(lockName)); err != nil {
		return w.lockFault(err)
	}
	w.unlock = unlock
	return nil
}

// refuse keeps why nothing can be written, for the first file: what is wrong with the content is told before.
func (w *Writer) refuse(err error) {
	w.opened, w.open, w.whole, w.beside, w.unlock = true, err, false, "", func() {}
}

func (w *Writer) lockFault(err error) error {
	var h *held
	if errors.As(err, &h) {
		h.folder = w.shown("")
		return err
	}
	return w.sentence(lockName, err, oldSiteWhole)
}

// makeFolder makes a folder and those above it that are missing.
func (w *Writer) makeFolder(folder string) error {
	var missing []string
	for ; ; folder = filepath.Dir(folder) {
		_, err := w.disk.Lstat(folder)
		if err == nil || !errors.Is(err, fs.ErrNotExist) || filepath.Dir(folder) == folder {
			break // Mkdir gives the error
		}
		missing = append(missing, folder)
	}
	for _, folder := range slices.Backward(missing) {
		if err := w.disk.Mkdir(folder); err != nil {
			return err
		}
		w.made = slices.Insert(w.made, 0, folder)
	}
	return nil
}

// unmake removes the folders that were made, if they are empty.
func (w *Writer) unmake() {
	for _, folder := range w.made {
		_ = w.disk.Remove(folder)
	}
}

// takeOver puts in order what a press that was cut short left, and decides how to write.
func (w *Writer) takeOver() error {
	if err := w.clean(oldSiteWhole); err != nil {
		return err
	}
	if err := w.sweepStaging(); err != nil {
		return err
	}
	if err := w.readManifest(); err != nil {
		return err
	}
	for _, e := range w.listed {
		w.cut = w.cut || e.pending
	}
	others, err := w.hasOthers()
	if err != nil {
		return err
	}
	w.whole = w.whole && !others
	w.work = w.beside
	if !w.whole {
		w.work = w.real(stagingName)
	}
	return nil
}

// Drop ends a press: it takes back what Put wrote and was not put in place, as far as it can, and frees the lock. What
// stays is swept by the next press. A folder for the site that is new goes again if it is empty.
func (w *Writer) Drop() {
	if w.unlock == nil {
		return // it is over
	}
	if w.opened {
		_ = w.clean(oldSiteWhole)
		_ = w.sweepStaging()
	}
	w.unlock()
	w.unlock = nil
	w.unmake()
}
