package output

import (
	"errors"
	"io/fs"
	"maps"
	"path"
	"regexp"
	"strconv"
)

// Places in the staging folder, after those of the files to write.
const (
	stagedBefore = iota // the list that has the old files and the new ones
	stagedAfter         // the list at the end
	stagedLists         // how many there are
)

// staged is the slash path of a new file while it is not in its place. The token keeps apart the files of two presses
// that run at a time, so that none can move the other's file to a wrong name.
func (w *writer) staged(i int) string { return path.Join(stagingName, w.token+"-"+strconv.Itoa(i)) }

// stage writes all new bytes: the files of the plan, in its order, and the lists. On an error it leaves nothing.
func (w *writer) stage(files []File, p *plan) error {
	if err := w.disk.Mkdir(w.real(stagingName)); err != nil {
		return w.sentence(stagingName, err, oldSiteWhole)
	}
	err := w.each(len(p.writes), func(i int) error {
		f := files[p.writes[i]]
		if err := w.disk.Create(w.real(w.staged(i)), f.Bytes); err != nil {
			return w.sentence(f.Path, err, oldSiteWhole)
		}
		return nil
	})
	if err == nil {
		err = w.stageLists(files, p)
	}
	if err != nil {
		w.dropStaging(len(p.writes))
	}
	return err
}

func (w *writer) stageLists(files []File, p *plan) error {
	before := maps.Clone(w.listed)
	if before == nil {
		before = manifest{}
	}
	for _, i := range p.writes {
		name := files[i].Path
		e := p.after[name]
		before[name] = e
		p.after[name] = entry{hash: e.hash}
	}
	lists := [stagedLists][]byte{stagedBefore: before.encode(Mark{}), stagedAfter: p.after.encode(w.mark)}
	for i, list := range lists {
		if err := w.disk.Create(w.real(w.staged(len(p.writes)+i)), list); err != nil {
			return w.sentence(manifestName, err, oldSiteWhole)
		}
	}
	return nil
}

// dropStaging removes what stage wrote, as far as it can: what stays is swept by the next press.
func (w *writer) dropStaging(writes int) {
	for i := range writes + stagedLists {
		_ = w.disk.Remove(w.real(w.staged(i)))
	}
	_ = w.disk.Remove(w.real(stagingName))
}

var stagedFile = regexp.MustCompile(`^[0-9a-f]{16}-[0-9]+$`)

// sweepStaging removes what a press that was cut short left, and nothing else.
func (w *writer) sweepStaging() error {
	s, _, err := w.stand(stagingName)
	if err != nil || s == nothing {
		return err
	}
	if s != folder {
		return w.blockedError([]string{stagingName})
	}
	entries, err := w.disk.ReadDir(w.real(stagingName))
	if err != nil {
		return w.sentence(stagingName, err, oldSiteWhole)
	}
	var foreign []string
	for _, e := range entries {
		inside := path.Join(stagingName, e.Name())
		if !e.Type().IsRegular() || !stagedFile.MatchString(e.Name()) {
			foreign = append(foreign, inside)
			continue
		}
		if err := w.disk.Remove(w.real(inside)); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return w.sentence(inside, err, oldSiteWhole)
		}
	}
	if len(foreign) > 0 {
		return w.blockedError(foreign)
	}
	if err := w.disk.Remove(w.real(stagingName)); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return w.sentence(stagingName, err, oldSiteWhole)
	}
	return nil
}
