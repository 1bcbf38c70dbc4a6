package output

import (
	"io/fs"
	"os"
)

// disk is what Write needs of a file system. Tests put one in its place that fills up or stops at a chosen step.
// Paths are the system's own.
type disk interface {
	Lstat(path string) (fs.FileInfo, error)
	ReadFile(path string) ([]byte, error)
	ReadDir(path string) ([]fs.DirEntry, error)
	Create(path string, bytes []byte) error // a file that must not be there yet
	Mkdir(path string) error
	Rename(from, to string) error
	Remove(path string) error // a file or an empty folder
}

// realDisk is the machine's own.
type realDisk struct{}

func (realDisk) Lstat(path string) (fs.FileInfo, error)     { return os.Lstat(path) }
func (realDisk) ReadFile(path string) ([]byte, error)       { return os.ReadFile(path) }
func (realDisk) ReadDir(path string) ([]fs.DirEntry, error) { return os.ReadDir(path) }
func (realDisk) Mkdir(path string) error                    { return os.Mkdir(path, 0o755) }
func (realDisk) Rename(from, to string) error               { return os.Rename(from, to) }
func (realDisk) Remove(path string) error                   { return os.Remove(path) }

// Create does not wait for the disk (no fsync): a site can be pressed again, and waiting would cost far more than all
// the rest.
func (realDisk) Create(path string, bytes []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	_, err = f.Write(bytes)
	if closing := f.Close(); err == nil {
		err = closing
	}
	return err
}
