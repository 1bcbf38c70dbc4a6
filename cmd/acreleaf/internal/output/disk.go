package output

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// disk is what Write needs of a file system. Tests put one in its place that fails, fills up or loses its power at a
// chosen call. Paths are the system's own.
type disk interface {
	Lstat(path string) (fs.FileInfo, error)
	ReadFile(path string) ([]byte, error)
	ReadDir(path string) ([]fs.DirEntry, error)
	Real(path string) (string, error)        // the path without links
	Writable(path string) error              // why nothing can be made in a folder
	Create(path string, bytes []byte) error  // a file that must not be there yet
	Link(from, to string) error              // a second name for a file
	Mkdir(path string) error                 // a folder that must not be there yet
	Twin(path, of string) error              // the same, with the owner and the rights of another folder
	Rename(from, to string) error            // a file, or a folder to a name that is free
	Exchange(a, b string) error              // two folders; errors.ErrUnsupported where the system cannot
	Remove(path string) error                // a file or an empty folder
	Flush(paths []string) error              // waits until files and folders will outlast a power cut
	Lock(path string) (free func(), _ error) // see lock.go
}

// realDisk is the machine's own.
type realDisk struct{}

func (realDisk) Lstat(path string) (fs.FileInfo, error)     { return os.Lstat(path) }
func (realDisk) ReadFile(path string) ([]byte, error)       { return os.ReadFile(path) }
func (realDisk) ReadDir(path string) ([]fs.DirEntry, error) { return os.ReadDir(path) }
func (realDisk) Real(path string) (string, error)           { return filepath.EvalSymlinks(path) }
func (realDisk) Writable(path string) error                 { return writable(path) }
func (realDisk) Link(from, to string) error                 { return os.Link(from, to) }
func (realDisk) Mkdir(path string) error                    { return os.Mkdir(path, 0o755) }
func (realDisk) Rename(from, to string) error               { return os.Rename(from, to) }
func (realDisk) Exchange(a, b string) error                 { return exchange(a, b) }
func (realDisk) Remove(path string) error                   { return os.Remove(path) }
func (realDisk) Lock(path string) (func(), error)           { return thisMachine().lock(path) }

// Create does not wait for the disk: Flush does, once for all files.
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

var errUnlike = errors.New("a new folder has another owner or other rights")

func (realDisk) Twin(path, of string) error {
	if err := os.Mkdir(path, 0o755); err != nil {
		return err
	}
	model, err := os.Lstat(of)
	if err != nil {
		return err
	}
	_ = os.Chmod(path, model.Mode()) // what it did is looked at
	twin, err := os.Lstat(path)
	if err == nil && (twin.Mode() != model.Mode() || !sameOwner(twin, model)) {
		err = fmt.Errorf("%s: %w", path, errUnlike)
	}
	return err
}

// Flush asks for the whole file system to be flushed, where that can be asked and the files are many: that is one wait
// in place of one for each file.
func (d realDisk) Flush(paths []string) error {
	const few = 16
	if len(paths) > few {
		if err := flushAll(paths[0]); !errors.Is(err, errors.ErrUnsupported) {
			return err
		}
	}
	return each(flushers, len(paths), func(i int) error { return flush(paths[i]) })
}

// flushers is how many files are flushed at a time: the disk takes the waits of several together.
const flushers = 8
