package output

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// inUse is a disk with one file that another program holds.
type inUse struct {
	disk
	name string
}

func (h *inUse) Rename(from, to string) error {
	if filepath.Base(to) == h.name {
		return &os.LinkError{Op: "rename", Old: from, New: to, Err: syscall.EBUSY}
	}
	return h.disk.Rename(from, to)
}

// A file that another program holds is named, and the next press goes on from there.
func TestHeldFile(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	plant(t, dir, tree{"mine.txt": "mine"})
	files := []File{{Path: "a.html", Bytes: []byte("a")}, {Path: "held.html", Bytes: []byte("b")}}
	_, err := writerOn(dir, &inUse{realDisk{}, "held.html"}).write(files, Mark{})
	said := "/held.html is in use by another program. " + siteMixed + " Close it there and try again"
	if !errors.Is(err, syscall.EBUSY) || !strings.Contains(err.Error(), said) {
		t.Errorf("error: %v", err)
	}
	if report, err := Write(dir, files, Mark{}); err != nil || report.Written != 1 || report.Unchanged != 1 {
		t.Errorf("%+v, %v", report, err)
	}
}
