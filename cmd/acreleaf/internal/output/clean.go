package output

import (
	"errors"
	"io/fs"
	"path/filepath"
)

// clean puts back an old site whose press was cut between two renames, and removes the work folder beside the site.
// state is what the error says of the site.
func (w *Writer) clean(state string) error {
	if w.beside == "" {
		return nil
	}
	entries, err := w.disk.ReadDir(w.beside)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return sentence(w.beside, err, state)
	}
	w.cut = true
	left := map[string]fs.DirEntry{}
	for _, e := range entries {
		left[e.Name()] = e
	}
	if left[former] != nil && (left[made] != nil || !w.exists) {
		if err := w.putBack(); err != nil {
			return err
		}
		delete(left, former)
	}
	var foreign []string
	for name, e := range left {
		path := filepath.Join(w.beside, name)
		switch {
		case e.IsDir() && name == making:
			err = w.removeAll(path)
		case e.IsDir() && (name == made || name == former):
			err = w.removeListed(path)
		case e.Type().IsRegular() && stagedFile.MatchString(name):
			err = w.disk.Remove(path)
		default:
			foreign = append(foreign, path)
		}
		if err != nil {
			return sentence(path, err, state)
		}
	}
	if len(foreign) > 0 {
		return blockedError(foreign, state)
	}
	if err := w.disk.Remove(w.beside); err != nil {
		return sentence(w.beside, err, state)
	}
	return nil
}

// putBack gives an old site its name again. Somebody may have made an empty folder of that name.
func (w *Writer) putBack() error {
	old := filepath.Join(w.beside, former)
	if w.exists {
		if err := w.disk.Remove(w.home); err != nil {
			return blockedError([]string{w.shown("")}, "The old site is in "+filepath.ToSlash(old)+".")
		}
	}
	if err := w.disk.Rename(old, w.home); err != nil {
		return w.sentence("", err, "The old site is in "+filepath.ToSlash(old)+".")
	}
	w.exists = true
	return nil
}

// removeAll removes a site that is not yet built: plain files and folders, all of them ours.
func (w *Writer) removeAll(folder string) error {
	entries, err := w.disk.ReadDir(folder)
	if err != nil {
		return err
	}
	for _, e := range entries {
		inside := filepath.Join(folder, e.Name())
		switch {
		case e.IsDir():
			err = w.removeAll(inside)
		case e.Type().IsRegular():
			err = w.disk.Remove(inside)
		default:
			err = blockedError([]string{inside}, oldSiteWhole)
		}
		if err != nil {
			return err
		}
	}
	return w.disk.Remove(folder)
}
