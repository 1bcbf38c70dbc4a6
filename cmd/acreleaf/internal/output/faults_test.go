package output

import (
	"errors"
	"io/fs"
	"os"
	"sync"
	"syscall"
)

// countingDisk counts the changes to a disk, and lets a test look on after each change.
type countingDisk struct {
	disk
	mutex   sync.Mutex
	changes int
	after   func(change string)
}

func (d *countingDisk) count(change string) {
	d.mutex.Lock()
	defer d.mutex.Unlock()
	d.changes++
	if d.after != nil {
		d.after(change)
	}
}

func (d *countingDisk) Create(path string, bytes []byte) error {
	defer d.count("create " + path)
	return d.disk.Create(path, bytes)
}

func (d *countingDisk) Mkdir(path string) error {
	defer d.count("mkdir " + path)
	return d.disk.Mkdir(path)
}

func (d *countingDisk) Rename(from, to string) error {
	defer d.count("rename " + to)
	return d.disk.Rename(from, to)
}

func (d *countingDisk) Remove(path string) error {
	defer d.count("remove " + path)
	return d.disk.Remove(path)
}

var errCut = errors.New("the power went off")

// cutDisk does a number of changes and then none: what a press leaves that is killed there. The first change that is
// refused is half done when it is a file.
type cutDisk struct {
	disk
	left int
}

func (d *cutDisk) cut() bool {
	d.left--
	return d.left < 0
}

func (d *cutDisk) Create(path string, bytes []byte) error {
	if d.cut() {
		if d.left == -1 {
			_ = d.disk.Create(path, bytes[:len(bytes)/2])
		}
		return errCut
	}
	return d.disk.Create(path, bytes)
}

func (d *cutDisk) Mkdir(path string) error {
	if d.cut() {
		return errCut
	}
	return d.disk.Mkdir(path)
}

func (d *cutDisk) Rename(from, to string) error {
	if d.cut() {
		return errCut
	}
	return d.disk.Rename(from, to)
}

func (d *cutDisk) Remove(path string) error {
	if d.cut() {
		return errCut
	}
	return d.disk.Remove(path)
}

// fullDisk has room for a number of files and folders. What was begun when it filled up stays half written; files can
// still be moved and removed.
type fullDisk struct {
	disk
	room int
}

func (d *fullDisk) full(path string) error {
	d.room--
	if d.room < 0 {
		return &fs.PathError{Op: "write", Path: path, Err: syscall.ENOSPC}
	}
	return nil
}

func (d *fullDisk) Create(path string, bytes []byte) error {
	if err := d.full(path); err != nil {
		_ = d.disk.Create(path, bytes[:len(bytes)/2])
		return err
	}
	return d.disk.Create(path, bytes)
}

func (d *fullDisk) Mkdir(path string) error {
	if err := d.full(path); err != nil {
		return err
	}
	return d.disk.Mkdir(path)
}

// refusingDisk refuses one change, as a folder without the right to write does.
type refusingDisk struct {
	disk
	at   int
	seen int
}

func (d *refusingDisk) refuse(path string) error {
	d.seen++
	if d.seen == d.at {
		return &fs.PathError{Op: "open", Path: path, Err: os.ErrPermission}
	}
	return nil
}

func (d *refusingDisk) Create(path string, bytes []byte) error {
	if err := d.refuse(path); err != nil {
		return err
	}
	return d.disk.Create(path, bytes)
}

func (d *refusingDisk) Mkdir(path string) error {
	if err := d.refuse(path); err != nil {
		return err
	}
	return d.disk.Mkdir(path)
}
