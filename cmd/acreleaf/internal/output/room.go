package output

import (
	"path"
	"slices"
)

// roomMaker finds out what must be made and removed so that the files of a plan have a place.
type roomMaker struct {
	w      *Writer
	plan   *plan
	known  map[string]standing // what is at the paths of folders that were looked at
	needed map[string]bool     // folders that are already seen to
	had    map[string]bool     // folders of files on the list
}

// look gives what is at a folder's path, from the top down; below anything but a folder there is nothing.
func (r *roomMaker) look(p string) (standing, error) {
	if p == "." {
		return folder, nil
	}
	if s, ok := r.known[p]; ok {
		return s, nil
	}
	s, err := r.look(path.Dir(p))
	if err != nil {
		return nothing, err
	}
	if s == folder {
		s, _, err = r.w.stand(p)
	} else {
		s = nothing
	}
	r.known[p] = s
	return s, err
}

// makeFor plans the folders of a file, and the removal of a folder of ours that is in its place.
func (r *roomMaker) makeFor(p string, isFolder bool) error {
	if err := r.need(path.Dir(p)); err != nil || !isFolder {
		return err
	}
	s, err := r.look(p) // not the same as isFolder: a link may have led there
	if err != nil || s != folder {
		return err
	}
	return r.clearFolder(p)
}

// need plans a folder and those above it.
func (r *roomMaker) need(p string) error {
	if p == "." || r.needed[p] {
		return nil
	}
	r.needed[p] = true
	if err := r.need(path.Dir(p)); err != nil {
		return err
	}
	s, err := r.look(p)
	if err != nil {
		return err
	}
	ours := false
	if s == file {
		if ours, err = r.dropped(p); err != nil {
			return err
		}
	}
	switch {
	case ours:
		r.plan.clear = append(r.plan.clear, p)
		r.plan.folders = append(r.plan.folders, p)
	case s == nothing:
		r.plan.folders = append(r.plan.folders, p)
	case s != folder:
		r.plan.blocked = append(r.plan.blocked, p)
	}
	return nil
}

// dropped says whether a file in the folder is one of ours that the site no longer has.
func (r *roomMaker) dropped(p string) (bool, error) {
	if _, kept := r.plan.after[p]; kept {
		return false, nil
	}
	return r.w.owns(r.w.listed, r.w.dir, p)
}

// clearFolder plans the removal of a folder that holds nothing but files of ours that the site no longer has.
func (r *roomMaker) clearFolder(p string) error {
	entries, err := r.w.disk.ReadDir(r.w.real(p))
	if err != nil {
		return r.w.sentence(p, err, oldSiteWhole)
	}
	if len(entries) == 0 && !r.had[p] {
		r.plan.blocked = append(r.plan.blocked, p) // somebody else made it
	}
	for _, e := range entries {
		inside := path.Join(p, e.Name())
		if e.IsDir() {
			if err := r.clearFolder(inside); err != nil {
				return err
			}
			continue
		}
		ours := false
		if e.Type().IsRegular() {
			if ours, err = r.dropped(inside); err != nil {
				return err
			}
		}
		if ours {
			r.plan.clear = append(r.plan.clear, inside)
		} else {
			r.plan.blocked = append(r.plan.blocked, inside)
		}
	}
	r.plan.clear = append(r.plan.clear, p)
	return nil
}

// planRemovals lists the files of ours that the site no longer has. What somebody put in the place of one is left.
func (r *roomMaker) planRemovals() error {
	early := map[string]bool{}
	for _, p := range r.plan.clear {
		early[p] = true
	}
	for p := range r.w.listed {
		if _, kept := r.plan.after[p]; kept {
			continue
		}
		if early[p] {
			r.plan.removed++
			continue
		}
		if err := r.remove(p); err != nil {
			return err
		}
	}
	slices.SortFunc(r.plan.removals, func(a, b string) int { return compareFiles(b, a) })
	slices.Sort(r.plan.emptied)
	r.plan.emptied = slices.Compact(r.plan.emptied)
	return nil
}

// remove plans the removal of one file, or of the empty folders that a press that was cut short made for it.
func (r *roomMaker) remove(p string) error {
	above := path.Dir(p)
	s, err := r.look(above)
	for ; err == nil && s == nothing; s, err = r.look(above) {
		above = path.Dir(above)
	}
	if err != nil || s != folder {
		return err
	}
	if s, _, err = r.w.stand(p); err != nil {
		return err
	}
	ours := false
	if s == file {
		if ours, err = r.dropped(p); err != nil {
			return err
		}
	}
	if ours {
		r.plan.removals = append(r.plan.removals, p)
		r.plan.removed++
	}
	r.plan.emptied = append(r.plan.emptied, above)
	return nil
}
