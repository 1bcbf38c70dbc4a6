package output

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"time"
)

// A machine is what a lock needs of the computer; tests have others.
type machine struct {
	take func(*os.File) error // takes the system's lock of a file: errTaken, or errNoLocks where there are none
	runs func(process int) bool
	name string
	now  func() time.Time
}

var (
	errTaken   = errors.New("another process has the lock")
	errNoLocks = errors.New("this file system has no locks")
)

func thisMachine() machine {
	name, _ := os.Hostname() // "" is a name too: two computers without one are taken for the same
	return machine{take: take, runs: runs, name: name, now: time.Now}
}

// lock makes a file that says who holds it, and takes the lock that the system has for it, which ends with the process.
// free removes the file. Where the file system has no locks, the file alone is the lock, and what it says is judged.
func (m machine) lock(path string) (free func(), err error) {
	for {
		f, isNew, err := openLock(path)
		if errors.Is(err, fs.ErrNotExist) {
			continue // freed since it was found
		}
		if err != nil {
			return nil, err
		}
		switch err := m.take(f); {
		case errors.Is(err, errTaken):
			by, known := readOwner(f)
			_ = f.Close()
			return nil, &held{path: path, by: by, known: known, why: writing}
		case errors.Is(err, errNoLocks) && !isNew:
			_ = f.Close()
			if err := m.judge(path); err != nil {
				return nil, err
			}
			continue
		case err != nil && !errors.Is(err, errNoLocks):
			_ = f.Close()
			return nil, err
		}
		// A file that was there already was left by a press that was killed, or is being removed by one that is done.
		if !isNew || !isStill(f, path) {
			discard(f, path)
			continue
		}
		if _, err := f.WriteString(m.owner().text()); err != nil {
			discard(f, path)
			return nil, err
		}
		return func() { discard(f, path) }, nil
	}
}

func openLock(path string) (f *os.File, isNew bool, err error) {
	info, err := os.Lstat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		f, err = os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o644)
		if errors.Is(err, fs.ErrExist) {
			err = fs.ErrNotExist // another was quicker: look again
		}
		return f, true, err
	case err != nil:
		return nil, false, err
	case !info.Mode().IsRegular():
		return nil, false, &held{path: path, why: unreadable}
	}
	f, err = os.Open(path)
	return f, false, err
}

// isStill says whether an open file is the one that a path leads to.
func isStill(f *os.File, path string) bool {
	opened, err := f.Stat()
	if err != nil {
		return false
	}
	there, err := os.Lstat(path)
	return err == nil && os.SameFile(opened, there)
}

// judge decides by its content whether a lock holds, and removes it if not.
func (m machine) judge(path string) error {
	text, err := os.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	by, known := parseOwner(string(text))
	h := &held{path: path, by: by, known: known}
	const clocksDiffer = 5 * time.Minute
	switch {
	case !known:
		h.why = unreadable
	case by.since.After(m.now().Add(clocksDiffer)):
		h.why = future
	case by.computer != m.name:
		h.why = elsewhere
	case m.runs(by.process):
		h.why = writing
	default:
		return removeJudged(path, string(text))
	}
	return h
}

// removeJudged removes a lock that holds no more. Another press may do the same and have taken it already: what is
// removed is looked at under a name that nobody else uses.
func removeJudged(path, text string) error {
	aside := fmt.Sprintf("%s-%d", path, os.Getpid())
	if err := os.Rename(path, aside); err != nil {
		if errors.Is(err, fs.ErrNotExist) {
			return nil
		}
		return err
	}
	if now, err := os.ReadFile(aside); err == nil && string(now) != text {
		return os.Rename(aside, path)
	}
	return os.Remove(aside)
}
