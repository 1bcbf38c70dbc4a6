package output

import (
	"errors"
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strconv"
)

// Places in the staging folder, after those of the files.
const (
	stagedBefore = iota // the list that has the old files and the new ones
	stagedAfter         // the list at the end
	stagedLists         // how many there are
)

// staged is the slash path of a new file while it is not in its place. The token keeps apart the files of two presses
// that run at a time, so that none can move the other's file to a wrong name.
func (w *Writer) staged(i int) string { return path.Join(stagingName, w.token+"-"+strconv.Itoa(i)) }

// stage writes a new file beside the site, and gives its number there.
func (w *Writer) stage(f File) (number int, err error) {
	if number, err = w.nextNumber(); err != nil {
		return number, err
	}
	if err := w.disk.Create(w.real(w.staged(number)), f.Bytes); err != nil {
		return number, w.sentence(f.Path, err, oldSiteWhole)
	}
	return number, nil
}

// nextNumber gives a number in the folder for new files, which is made for the first of them.
func (w *Writer) nextNumber() (int, error) {
	w.mutex.Lock()
	defer w.mutex.Unlock()
	if !w.opened {
		w.opened = true
		w.open = w.openStaging()
	}
	w.numbers++
	return w.numbers - 1, w.open
}

// openStaging makes the folder for new files, and the site's folder where there is none.
func (w *Writer) openStaging() error {
	for above := filepath.Clean(w.dir); ; above = filepath.Dir(above) {
		if _, err := os.Lstat(above); !errors.Is(err, fs.ErrNotExist) || filepath.Dir(above) == above {
			break
		}
		w.made = append(w.made, above)
	}
	if err := os.MkdirAll(w.dir, 0o755); err != nil {
		return w.sentence("", err, "Nothing was written.")
	}
	if err := w.disk.Mkdir(w.real(stagingName)); err != nil {
		return w.sentence(stagingName, err, oldSiteWhole)
	}
	return nil
}

// stageLists writes the lists beside the new files, and gives the number of the first.
func (w *Writer) stageLists(p *plan, mark Mark) (first int, err error) {
	before := maps.Clone(w.listed)
	if before == nil {
		before = manifest{}
	}
	for _, f := range p.writes {
		e := p.after[f.path]
		before[f.path] = e
		p.after[f.path] = entry{hash: e.hash}
	}
	lists := [stagedLists][]byte{stagedBefore: before.encode(Mark{}), stagedAfter: p.after.encode(mark)}
	for i, list := range lists {
		number, err := w.nextNumber()
		if err != nil {
			return first, err
		}
		if i == 0 {
			first = number
		}
		if err := w.disk.Create(w.real(w.staged(number)), list); err != nil {
			return first, w.sentence(manifestName, err, oldSiteWhole)
		}
	}
	return first, nil
}

// sameStaging sees that nobody took a new file away: another press does, that began later.
func (w *Writer) sameStaging() error {
	if w.numbers == 0 {
		return nil
	}
	there := map[string]bool{}
	entries, err := w.disk.ReadDir(w.real(stagingName))
	for _, e := range entries {
		there[path.Join(stagingName, e.Name())] = true
	}
	for _, p := range w.placed {
		if err == nil && p.number >= 0 && !there[w.staged(p.number)] {
			err = fs.ErrNotExist
		}
	}
	if err != nil {
		return w.sentence(stagingName, err, oldSiteWhole)
	}
	return nil
}

// Drop takes back what Put wrote beside the site, as far as it can: what stays is swept by the next press. The site
// stays as it was, and a folder for it that is new goes again.
func (w *Writer) Drop() {
	for i := range w.numbers {
		_ = w.disk.Remove(w.real(w.staged(i)))
	}
	if w.numbers > 0 {
		_ = w.disk.Remove(w.real(stagingName))
	}
	for _, folder := range w.made {
		_ = os.Remove(folder)
	}
}

var stagedFile = regexp.MustCompile(`^[0-9a-f]{16}-[0-9]+$`)

// sweepStaging removes what a press that was cut short left, and nothing else.
func (w *Writer) sweepStaging() error {
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
