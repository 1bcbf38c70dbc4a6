package output

import (
	"errors"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
)

// carryOut does what was planned, in one of the two ways of the package's description.
func (w *Writer) carryOut(p *plan, mark Mark) error {
	built := ""
	if w.whole && len(p.writes)+len(p.removals)+len(p.clear) > 0 {
		exchanged, at, err := w.exchange(p, mark)
		if err != nil || exchanged {
			return err
		}
		built = at
	}
	if w.work == w.beside {
		if err := w.bringInside(p, built); err != nil {
			return err
		}
	}
	before, after, err := w.stageLists(p, mark)
	if err != nil {
		return err
	}
	if err := w.lookAgain(p); err != nil {
		return err
	}
	flushed := []string{w.work, w.staged(before), w.staged(after)}
	for _, f := range p.writes {
		flushed = append(flushed, w.staged(f.number))
	}
	if err := w.disk.Flush(flushed); err != nil {
		return sentence(w.work, err, oldSiteWhole)
	}
	return w.replace(p, before, after)
}

// bringInside copies the new files from the work folder beside the site into one in it, which may be on another disk.
// built is the folder of a site that could not be exchanged; "" when none was built.
func (w *Writer) bringInside(p *plan, built string) error {
	if err := w.makeFolder(w.home); err != nil {
		return w.sentence("", err, oldSiteWhole)
	}
	w.exists = true
	from := w.work
	w.work, w.opened = w.real(stagingName), false
	if err := w.makeWork(); err != nil {
		return err
	}
	for _, f := range p.writes {
		at := filepath.Join(from, strconv.Itoa(f.number))
		if built != "" {
			at = filepath.Join(built, filepath.FromSlash(f.path))
		}
		content, err := w.disk.ReadFile(at)
		if err == nil {
			err = w.disk.Create(w.staged(f.number), content)
		}
		if err != nil {
			return w.sentence(f.path, err, oldSiteWhole)
		}
	}
	return w.clean(oldSiteWhole)
}

// lookAgain sees that nobody has put anything where a new file must go since the file was planned.
func (w *Writer) lookAgain(p *plan) error {
	var blocked []string
	for _, f := range p.writes {
		if f.ours || f.folder {
			continue
		}
		if s, _, err := w.stand(f.path); err != nil {
			return err
		} else if s != nothing {
			blocked = append(blocked, f.path)
		}
	}
	if len(blocked) > 0 {
		return w.blockedError(blocked, oldSiteWhole)
	}
	return nil
}

// replace turns the old site into the new one, file by file. Nothing here needs room on the disk but the folders, and
// those come before the first page is touched.
func (w *Writer) replace(p *plan, before, after int) error {
	if err := w.move(before, manifestName, oldSiteWhole); err != nil {
		return err
	}
	for _, old := range p.clear {
		if err := w.disk.Remove(w.real(old)); err != nil {
			return w.sentence(old, err, siteMixed)
		}
	}
	if err := w.makeFolders(p); err != nil {
		return err
	}
	state := oldSiteWhole
	if len(p.clear)+len(p.folders) > 0 {
		state = siteMixed
	}
	for _, f := range p.writes {
		if err := w.place(f, state); err != nil {
			return err
		}
		state = siteMixed
	}
	for _, old := range p.removals {
		if err := w.disk.Remove(w.real(old)); err != nil {
			return w.sentence(old, err, siteMixed)
		}
	}
	for _, name := range p.emptied {
		w.removeEmpty(name)
	}
	return w.move(after, manifestName, newSiteWhole)
}

// place moves a new file to its place, unless somebody has just put something there.
func (w *Writer) place(f placed, state string) error {
	if !f.ours {
		if s, _, err := w.standIn(f.path, state); err != nil {
			return err
		} else if s != nothing {
			return w.blockedError([]string{f.path}, state)
		}
	}
	return w.move(f.number, f.path, state)
}

func (w *Writer) move(staged int, to, state string) error {
	if err := w.disk.Rename(w.staged(staged), w.real(to)); err != nil {
		return w.sentence(to, err, state)
	}
	return nil
}

// makeFolders makes all folders or, on an error, none. Somebody else may have made one meanwhile.
func (w *Writer) makeFolders(p *plan) error {
	var made []string
	for _, name := range p.folders {
		err := w.disk.Mkdir(w.real(name))
		if err == nil {
			made = append(made, name)
			continue
		}
		state := oldSiteWhole
		if len(p.clear) > 0 {
			state = siteMixed
		}
		if errors.Is(err, fs.ErrExist) {
			s, _, there := w.standIn(name, state)
			if there == nil && s == folder {
				continue
			}
			err = blockedError([]string{w.shown(name)}, state)
		}
		for _, name := range slices.Backward(made) {
			_ = w.disk.Remove(w.real(name))
		}
		return w.sentence(name, err, state)
	}
	return nil
}

// removeEmpty removes a folder and those above it while they are empty; the system refuses to remove any other. Where
// a folder was, a new file may stand by now.
func (w *Writer) removeEmpty(p string) {
	for ; p != "."; p = path.Dir(p) {
		if s, _, err := w.stand(p); err != nil || s != folder || w.disk.Remove(w.real(p)) != nil {
			return
		}
	}
}
