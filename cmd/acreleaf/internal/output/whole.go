package output

import (
	"errors"
	"maps"
	"path/filepath"
	"slices"
)

// exchange builds the new site in the work folder and exchanges it with the old one. False without an error: the folder
// has to stay where it is after all, nothing was changed in it, and the new files are below the second result.
func (w *Writer) exchange(p *plan, mark Mark) (exchanged bool, built string, err error) {
	built = filepath.Join(w.work, making)
	flushed, err := w.build(p, mark, built)
	if errors.Is(err, errUnlike) {
		return false, "", nil
	}
	if err != nil {
		return false, "", err
	}
	if err := w.disk.Flush(flushed); err != nil {
		return false, "", sentence(w.work, err, oldSiteWhole)
	}
	ready := filepath.Join(w.work, made)
	if err := w.disk.Rename(built, ready); err != nil {
		return false, "", sentence(ready, err, oldSiteWhole)
	}
	if others, err := w.hasOthers(); err != nil || others {
		return false, ready, err
	}
	if exchanged, err = w.swap(ready); !exchanged {
		return false, ready, err
	}
	w.exists = true
	if err := w.disk.Flush([]string{filepath.Dir(w.home), w.work}); err != nil {
		return true, "", w.sentence("", err, newSiteWhole)
	}
	return true, "", w.clean(newSiteWhole)
}

// build makes the new site below root, and gives what is to be flushed.
func (w *Writer) build(p *plan, mark Mark, root string) (flush []string, err error) {
	if err := w.makeWork(); err != nil {
		return nil, err
	}
	in := func(name string) string { return filepath.Join(root, filepath.FromSlash(name)) }
	if w.exists {
		err = w.disk.Twin(root, w.home)
	} else {
		err = w.disk.Mkdir(root)
	}
	if err != nil {
		return nil, sentence(root, err, oldSiteWhole)
	}
	flush = []string{root, w.work}
	for _, folder := range slices.Sorted(maps.Keys(manifest(p.after).folders())) {
		if err := w.disk.Mkdir(in(folder)); err != nil {
			return nil, sentence(in(folder), err, oldSiteWhole)
		}
		flush = append(flush, in(folder))
	}
	written := map[string]bool{}
	for _, f := range p.writes {
		written[f.path] = true
		if err := w.disk.Rename(w.staged(f.number), in(f.path)); err != nil {
			return nil, sentence(in(f.path), err, oldSiteWhole)
		}
		flush = append(flush, in(f.path))
	}
	kept := slices.DeleteFunc(slices.Sorted(maps.Keys(p.after)), func(name string) bool { return written[name] })
	copied := make([]bool, len(kept))
	err = w.each(len(kept), func(i int) (err error) {
		copied[i], err = w.keep(kept[i], in(kept[i]))
		return err
	})
	for i, name := range kept {
		if copied[i] {
			flush = append(flush, in(name))
		}
	}
	if err != nil {
		return nil, err
	}
	if err := w.disk.Create(in(manifestName), p.after.settled().encode(mark)); err != nil {
		return nil, sentence(in(manifestName), err, oldSiteWhole)
	}
	return append(flush, in(manifestName)), nil
}

// keep gives an unchanged file a second name in the new site, or copies it.
func (w *Writer) keep(name, to string) (copied bool, err error) {
	if w.disk.Link(w.real(name), to) == nil {
		return false, nil
	}
	content, err := w.disk.ReadFile(w.real(name))
	if err == nil {
		err = w.disk.Create(to, content)
	}
	if err != nil {
		return true, sentence(to, err, oldSiteWhole)
	}
	return true, nil
}

// swap puts a site that is ready in the place of the old one. False without an error: nothing was changed.
func (w *Writer) swap(ready string) (bool, error) {
	if !w.exists {
		return w.disk.Rename(ready, w.home) == nil, nil
	}
	err := w.disk.Exchange(w.home, ready)
	if err == nil || !errors.Is(err, errors.ErrUnsupported) {
		return err == nil, nil
	}
	old := filepath.Join(w.work, former)
	if w.disk.Rename(w.home, old) != nil {
		return false, nil
	}
	if err = w.disk.Rename(ready, w.home); err == nil {
		return true, nil
	}
	if w.disk.Rename(old, w.home) == nil {
		return false, nil
	}
	return false, w.sentence("", err, "The old site is in "+filepath.ToSlash(old)+
		"; the next press puts it back, unless something else has its name.")
}
