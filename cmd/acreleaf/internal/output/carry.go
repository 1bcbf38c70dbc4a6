package output

import (
	"path"
	"slices"
)

// carryOut does what was planned, in the steps of the package's description.
func (w *Writer) carryOut(p *plan, mark Mark) error {
	lists, err := w.stageLists(p, mark)
	if err == nil {
		err = w.replace(p, lists)
	}
	if err != nil {
		w.Drop()
		return err
	}
	if err := w.disk.Remove(w.real(stagingName)); err != nil {
		return w.sentence(stagingName, err, newSiteWhole)
	}
	return nil
}

// replace turns the old site into the new one. Nothing here needs room on the disk but the folders, and those come
// before the first page is touched.
func (w *Writer) replace(p *plan, lists int) error {
	if err := w.move(lists+stagedBefore, manifestName, oldSiteWhole); err != nil {
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
	for _, f := range p.writes {
		if err := w.move(f.number, f.path, state); err != nil {
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
	return w.move(lists+stagedAfter, manifestName, newSiteWhole)
}

func (w *Writer) move(staged int, to, state string) error {
	if err := w.disk.Rename(w.real(w.staged(staged)), w.real(to)); err != nil {
		return w.sentence(to, err, state)
	}
	return nil
}

// makeFolders makes all folders or, on an error, none.
func (w *Writer) makeFolders(p *plan) error {
	for i, name := range p.folders {
		err := w.disk.Mkdir(w.real(name))
		if err == nil {
			continue
		}
		for _, made := range slices.Backward(p.folders[:i]) {
			_ = w.disk.Remove(w.real(made))
		}
		state := oldSiteWhole
		if len(p.clear) > 0 {
			state = siteMixed
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
