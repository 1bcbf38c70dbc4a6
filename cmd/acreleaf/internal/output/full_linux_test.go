package output

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// devFull writes the bytes of every file after the first ones to /dev/full, so that the error is the kernel's own.
type devFull struct {
	disk
	room int
}

func (d *devFull) Create(path string, bytes []byte) error {
	d.room--
	if d.room >= 0 {
		return d.disk.Create(path, bytes)
	}
	f, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	_, err = f.Write(bytes)
	return errors.Join(err, f.Close())
}

func TestTheKernelSaysTheDiskIsFull(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	write(t, dir, oldSite)
	before := readTree(t, dir)
	_, err := writerOn(dir, &devFull{realDisk{}, 3}).write(newSite, Mark{})
	if !errors.Is(err, syscall.ENOSPC) ||
		!strings.Contains(err.Error(), "the disk is full, there is no room for ") ||
		!strings.Contains(err.Error(), "/public/") ||
		!strings.Contains(err.Error(), "What was there before is unchanged. Free some space and try again") {
		t.Errorf("error: %v", err)
	}
	same(t, "files", readTree(t, dir), before)
}
