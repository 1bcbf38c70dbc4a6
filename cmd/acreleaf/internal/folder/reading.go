package folder

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"hash"
	"io"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"
	"sync"
)

// A Reading sums what is read of a folder, while it is read: the bytes of each file, the names and kinds in each
// folder. What is read again must be the same. It may be used by several goroutines at once.
type Reading struct {
	fsys fs.FS

	mutex   sync.Mutex
	sums    map[string][sha256.Size]byte // a folder's name ends in a slash
	changed map[string]bool
}

// NewReading begins a reading of a folder.
func NewReading(fsys fs.FS) *Reading {
	return &Reading{fsys: fsys, sums: map[string][sha256.Size]byte{}, changed: map[string]bool{}}
}

// Changed lists, in order, what was not the same when it was read again.
func (r *Reading) Changed() []string {
	r.mutex.Lock()
	defer r.mutex.Unlock()
	return slices.Sorted(maps.Keys(r.changed))
}

// Sum is a hash of all that was read until now, with its names.
func (r *Reading) Sum() [sha256.Size]byte {
	r.mutex.Lock()
	defer r.mutex.Unlock()
	h := sha256.New()
	for _, name := range slices.Sorted(maps.Keys(r.sums)) {
		fmt.Fprintf(h, "%q %x\n", name, r.sums[name])
	}
	return [sha256.Size]byte(h.Sum(nil))
}

// note keeps the sum of what was read.
func (r *Reading) note(name string, sum [sha256.Size]byte) {
	r.mutex.Lock()
	defer r.mutex.Unlock()
	if before, known := r.sums[name]; known && before != sum {
		r.changed[name] = true
	}
	r.sums[name] = sum
}

// Open opens a file or a folder, and sums what is read of it to its end.
func (r *Reading) Open(name string) (fs.File, error) {
	file, err := r.fsys.Open(name)
	if err != nil {
		r.missed(name, err)
		return nil, err
	}
	return &summed{File: file, reading: r, name: name, hash: sha256.New()}, nil
}

// Leave notes that a file is not read. Reading it after all is a change.
func (r *Reading) Leave(name string) { r.note(name, [sha256.Size]byte{}) }

// missed notes a file that was read before and is gone.
func (r *Reading) missed(name string, err error) {
	r.mutex.Lock()
	defer r.mutex.Unlock()
	if _, known := r.sums[name]; known && errors.Is(err, fs.ErrNotExist) {
		r.changed[name] = true
	}
}

// A summed is a file that is summed while it is read from its start to its end.
type summed struct {
	fs.File
	reading *Reading
	name    string
	hash    hash.Hash
}

func (s *summed) Read(p []byte) (int, error) {
	n, err := s.File.Read(p)
	s.hash.Write(p[:n])
	if err == io.EOF {
		s.reading.note(s.name, [sha256.Size]byte(s.hash.Sum(nil)))
	}
	return n, err
}

// ReadDir lists a folder, and sums the names in it and what each is.
func (r *Reading) ReadDir(name string) ([]fs.DirEntry, error) {
	entries, err := fs.ReadDir(r.fsys, name)
	if err != nil {
		return entries, err
	}
	h := sha256.New()
	for _, entry := range entries {
		if Hidden(entry.Name()) {
			continue // an editor puts files aside while it saves
		}
		fmt.Fprintf(h, "%q %s\n", entry.Name(), entry.Type())
	}
	r.note(name+"/", [sha256.Size]byte(h.Sum(nil)))
	return entries, nil
}

// Stat looks at what a name leads to.
func (r *Reading) Stat(name string) (fs.FileInfo, error) { return fs.Stat(r.fsys, name) }

// Lstat looks at what has the name, without following a link.
func (r *Reading) Lstat(name string) (fs.FileInfo, error) { return fs.Lstat(r.fsys, name) }

// ReadLink gives where a link leads.
func (r *Reading) ReadLink(name string) (string, error) { return fs.ReadLink(r.fsys, name) }

// Hidden says whether a name is that of a program's own file, which is no part of the content.
func Hidden(name string) bool { return name != "." && strings.HasPrefix(path.Base(name), ".") }
