package output

import (
	"errors"
	"io/fs"
	"path"
	"path/filepath"
)

// remains are those of a site that is no longer in its place. What its list has is removed; what somebody else put
// there, before the names were exchanged, is moved to the same place in the site's folder.
type remains struct {
	w       *Writer
	root    string
	list    manifest
	folders map[string]bool
	stuck   []string // what has no place in the site's folder, because there is something else
}

func (w *Writer) removeListed(root string) error {
	list, _, err := w.readList(root)
	if err != nil {
		return err
	}
	r := &remains{w: w, root: root, list: list, folders: list.folders()}
	if err := r.clear("."); err != nil {
		return err
	}
	if len(r.stuck) > 0 {
		return blockedError(r.stuck, "It was put into "+w.shown("")+" during a press, and the site has something else there.")
	}
	for _, own := range []string{lockName, manifestName} { // the list last: it is needed until then
		if err := w.disk.Remove(r.real(own)); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
	}
	return w.disk.Remove(root)
}

func (r *remains) real(p string) string { return filepath.Join(r.root, filepath.FromSlash(p)) }

func (r *remains) clear(folder string) error {
	entries, err := r.w.disk.ReadDir(r.real(folder))
	if err != nil {
		return err
	}
	for _, e := range entries {
		p := path.Join(folder, e.Name())
		ours := isOwn(p) && p != stagingName
		if ours {
			continue
		}
		if e.Type().IsRegular() {
			if ours, err = r.w.owns(r.list, r.root, p); err != nil {
				return err
			}
		}
		switch {
		case ours:
			err = r.w.disk.Remove(r.real(p))
		case e.IsDir() && r.folders[p]:
			err = r.clearFolder(p)
		default:
			err = r.carry(p, e.IsDir())
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// clearFolder clears a folder and removes it, unless something in it had to stay.
func (r *remains) clearFolder(p string) error {
	stuck := len(r.stuck)
	if err := r.clear(p); err != nil || len(r.stuck) > stuck {
		return err
	}
	return r.w.disk.Remove(r.real(p))
}

// carry moves what somebody else wrote to the site's folder. Into a folder that is there too it moves each thing.
func (r *remains) carry(p string, isFolder bool) error {
	s, _, err := r.w.standIn(p, newSiteWhole)
	if err != nil {
		return err
	}
	if s == folder && isFolder {
		return r.clearFolder(p)
	}
	if s == nothing {
		to := r.w.real(p)
		if err := r.w.makeFolder(filepath.Dir(to)); err == nil && r.w.disk.Rename(r.real(p), to) == nil {
			return nil
		}
	}
	r.stuck = append(r.stuck, r.real(p))
	return nil
}
