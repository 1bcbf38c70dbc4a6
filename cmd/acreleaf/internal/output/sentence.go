package output

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"path/filepath"
	"strings"
	"syscall"
)

// How far a press had come, for the end of a sentence.
const (
	oldSiteWhole = "What was there before is unchanged."
	newSiteWhole = "All that is new is in place."
	siteMixed    = "A part of what is new is in place; do the same again to finish it."
	nothingMade  = "Nothing was written."
)

// sentence says in plain words why a file of the site could not be written, what state the site is in, and what to do.
func (w *Writer) sentence(p string, err error, state string) error {
	return sentence(w.shown(p), err, state)
}

// said is an error that is a whole sentence already.
type said struct{ error }

func (s said) Unwrap() error { return s.error }

// sentence is the method sentence for a path that is not in the site's folder.
func sentence(path string, err error, state string) error {
	var already said
	if errors.As(err, &already) {
		return err
	}
	return said{inWords(filepath.ToSlash(path), err, state)}
}

func inWords(shown string, err error, state string) error {
	switch {
	case isFull(err):
		return fmt.Errorf("the disk is full, there is no room for %s. %s Free some space and try again: %w",
			shown, state, bare(err))
	case isBusy(err):
		return fmt.Errorf("%s is in use by another program. %s Close it there and try again: %w", shown, state, bare(err))
	case errors.Is(err, syscall.EROFS), errors.Is(err, fs.ErrPermission):
		return fmt.Errorf("%s may not be written, %s. %s "+
			"Give yourself the right to write there, or choose another folder with --to: %w", shown, noRight, state, bare(err))
	case errors.Is(err, syscall.ENOTDIR):
		return fmt.Errorf("%s needs a folder where there is a file. %s "+
			"Move that file away, or choose another folder with --to: %w", shown, state, bare(err))
	case isTooLong(err):
		return fmt.Errorf("%s is a longer name than this computer allows. %s Choose another folder with --to: %w",
			shortened(shown), state, bare(err))
	}
	return fmt.Errorf("%s could not be written. %s Try again, or choose another folder with --to: %w",
		shown, state, bare(err))
}

// shortened leaves out the middle of a long name.
func shortened(name string) string {
	const part = 40
	if len(name) <= 3*part {
		return name
	}
	return strings.ToValidUTF8(name[:part], "") + "…" + strings.ToValidUTF8(name[len(name)-part:], "")
}

// blockedError names the files of somebody else that are where a file of the site must go.
func (w *Writer) blockedError(blocked []string, state string) error {
	var shown []string
	for _, p := range blocked {
		shown = append(shown, w.shown(p))
	}
	return blockedError(shown, state)
}

func blockedError(blocked []string, state string) error {
	const most = 10
	var names []string
	for _, p := range blocked[:min(most, len(blocked))] {
		names = append(names, filepath.ToSlash(p))
	}
	verb := "is"
	if len(blocked) > 1 {
		verb = "are"
	}
	list := strings.Join(names, ", ")
	if len(blocked) > most {
		list += fmt.Sprintf(" and %d more", len(blocked)-most)
	}
	return said{fmt.Errorf("%s %s in the way: Acreleaf did not write this and will not replace it. %s "+
		"Move it away, or choose another folder with --to", list, verb, state)}
}

// shown is a path as the user would write it.
func (w *Writer) shown(p string) string { return path.Join(filepath.ToSlash(w.dir), p) }

// bare leaves out the path that the system's error repeats, which may be that of a temporary file.
func bare(err error) error {
	var one *fs.PathError
	if errors.As(err, &one) {
		return one.Err
	}
	var link interface{ Unwrap() error }
	if errors.As(err, &link) && link.Unwrap() != nil {
		return link.Unwrap()
	}
	return err
}
