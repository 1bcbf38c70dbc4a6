package output

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"
	"unicode"
)

// An owner is the press that holds a lock.
type owner struct {
	process  int
	computer string
	since    time.Time
}

func (m machine) owner() owner { return owner{os.Getpid(), m.name, m.now()} }

const ownerForm = "acreleaf writes here: process %d on %q since %s\n"

func (o owner) text() string {
	return fmt.Sprintf(ownerForm, o.process, o.computer, o.since.Format(time.RFC3339))
}

func (o owner) String() string {
	computer := o.computer
	if computer == "" || strings.ContainsFunc(computer, func(r rune) bool { return !unicode.IsPrint(r) }) {
		computer = fmt.Sprintf("%q", computer)
	}
	return fmt.Sprintf("process %d on %s, since %s", o.process, computer, o.since.Local().Format(time.DateTime))
}

func parseOwner(text string) (o owner, known bool) {
	var since string
	_, err := fmt.Sscanf(text, ownerForm, &o.process, &o.computer, &since)
	if err == nil {
		o.since, err = time.Parse(time.RFC3339, since)
	}
	return o, err == nil && strings.HasSuffix(text, "\n")
}

// readOwner reads who holds a lock. One that was taken a moment ago may not say so yet.
func readOwner(f *os.File) (o owner, known bool) {
	for range 20 {
		text, err := io.ReadAll(io.NewSectionReader(f, 0, 1<<10))
		if o, known = parseOwner(string(text)); known || err != nil {
			break
		}
		time.Sleep(5 * time.Millisecond)
	}
	return o, known
}

// Why a lock is held.
type why int

const (
	writing    why = iota // by a press of this computer, or of another when the system's locks reach so far
	elsewhere             // by a press of another computer, as far as its file says
	future                // its time is still to come
	unreadable            // it does not say by whom
)

// held is the error of a folder that another press may be writing.
type held struct {
	path   string // of the lock
	by     owner
	known  bool
	why    why
	folder string // as the user gave it
}

func (h *held) Error() string {
	lock := filepath.ToSlash(h.path)
	switch h.why {
	case writing:
		return h.who() + ". Nothing was changed. Wait until it is done, or add --wait"
	case elsewhere:
		return fmt.Sprintf("another computer writes %s, or failed while it did: %v. Nothing was changed. "+
			"If no acreleaf runs there, delete %s and try again", h.folder, h.by, lock)
	case future:
		return fmt.Sprintf("%s says that a press into %s begins in the future: %v; a clock was wrong. "+
			"Nothing was changed. If no other acreleaf runs, delete that file and try again", lock, h.folder, h.by)
	}
	return fmt.Sprintf("%s is in the way: it does not say who is writing %s. Nothing was changed. "+
		"If no other acreleaf runs, delete that file and try again", lock, h.folder)
}

func (h *held) who() string {
	text := "another acreleaf is writing " + h.folder
	if h.known {
		text += ": " + h.by.String()
	}
	return text
}

// Wait is Begin that waits until the presses of others into the folder are done. It says once for whom.
func Wait(dir string, say func(text string)) (*Writer, error) {
	const pause = 200 * time.Millisecond
	for said := false; ; said = true {
		w, err := Begin(dir)
		var h *held
		if !errors.As(err, &h) || h.why != writing && h.why != elsewhere {
			return w, err
		}
		if !said {
			say(h.who() + "; waiting until it is done")
		}
		time.Sleep(pause)
	}
}
