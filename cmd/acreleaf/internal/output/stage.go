package output

import (
	"errors"
	"io/fs"
	"maps"
	"path"
	"path/filepath"
	"regexp"
	"strconv"
)

// staged is the path of a new file while it is not in its place.
func (w *Writer) staged(i int) string { return filepath.Join(w.work, strconv.Itoa(i)) }

// stage writes a new file apart from the site, and gives its number there.
func (w *Writer) stage(f File) (number int, err error) {
	if number, err = w.nextNumber(); err != nil {
		return number, err
	}
	if err := w.disk.Create(w.staged(number), f.Bytes); err != nil {
		return number, w.sentence(f.Path, err, oldSiteWhole)
	}
	return number, nil
}

// nextNumber gives a number in the folder for new files.
func (w *Writer) nextNumber() (int, error) {
	if err := w.makeWork(); err != nil {
		return 0, err
	}
	w.mutex.Lock()
	defer w.mutex.Unlock()
	w.numbers++
	return w.numbers - 1, nil
}

// makeWork makes the folder for new files when it is first asked for.
func (w *Writer) makeWork() error {
	w.mutex.Lock()
	defer w.mutex.Unlock()
	if w.opened {
		return w.open
	}
	w.opened = true
	if err := w.disk.Mkdir(w.work); err != nil {
		w.open = sentence(w.work, err, oldSiteWhole)
	}
	return w.open
}

// stageLists writes the list that has the old files and the new ones, and the one at the end, and gives their numbers.
func (w *Writer) stageLists(p *plan, mark Mark) (before, after int, err error) {
	both := maps.Clone(w.listed)
	if both == nil {
		both = manifest{}
	}
	for _, f := range p.writes {
		both[f.path] = p.after[f.path]
	}
	if before, err = w.stageList(both.encode(Mark{})); err == nil {
		after, err = w.stageList(p.after.settled().encode(mark))
	}
	return before, after, err
}

func (w *Writer) stageList(list []byte) (number int, err error) {
	if number, err = w.nextNumber(); err != nil {
		return number, err
	}
	if err := w.disk.Create(w.staged(number), list); err != nil {
		return number, w.sentence(manifestName, err, oldSiteWhole)
	}
	return number, nil
}

// stagedFile is a name in the folder for new files. Earlier versions of Acreleaf wrote a token before the number.
var stagedFile = regexp.MustCompile(`^([0-9a-f]{16}-)?[0-9]+$`)

// sweepStaging removes what a press that went file by file left in the site's folder, and nothing else.
func (w *Writer) sweepStaging() error {
	s, _, err := w.stand(stagingName)
	if err != nil || s == nothing {
		return err
	}
	if s != folder {
		return w.blockedError([]string{stagingName}, oldSiteWhole)
	}
	w.cut = true
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
		return w.blockedError(foreign, oldSiteWhole)
	}
	if err := w.disk.Remove(w.real(stagingName)); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return w.sentence(stagingName, err, oldSiteWhole)
	}
	return nil
}
