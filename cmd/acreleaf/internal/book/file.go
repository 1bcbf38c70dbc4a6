package book

import (
	"hash/maphash"
	"sync/atomic"

	"acreleaf/cmd/acreleaf/internal/output"
)

// A File is a file of an edition that a Maker made. A site of ten thousand pages is a gigabyte, so a page is made again
// when somebody asks for it. Files of later makings do not change it.
type File struct {
	Path string
	Hash uint64 // of its bytes, to compare files that one program made
	made *making
}

// A making gives the bytes of a file.
type making struct{ again func() []byte }

// Bytes gives what is in the file.
func (f File) Bytes() []byte { return f.made.again() }

// Kept is a file whose bytes are kept.
func Kept(path string, content []byte) File {
	return File{path, hashOf(content), &making{func() []byte { return content }}}
}

var seed = maphash.MakeSeed()

func hashOf(content []byte) uint64 { return maphash.Bytes(seed, content) }

// A taker takes the files that are made.
type taker struct {
	put     func(output.File) error // nil where the files are made again when they are asked for
	stopped atomic.Bool             // what is made now would be thrown away
}

// once says whether the files are given away as they are made, and not made again.
func (t *taker) once() bool { return t != nil && t.put != nil }

// wants says whether more pages are to be made.
func (t *taker) wants() bool { return t != nil && !t.stopped.Load() }

// stop notes that the edition will not be whole. A press makes no more pages then. A desk does, for when the fault is
// fixed.
func (t *taker) stop() {
	if t.once() {
		t.stopped.Store(true)
	}
}

// take gives away a file, or keeps the way to make it again.
func (t *taker) take(f output.File, again func() []byte) File {
	if !t.once() {
		return File{f.Path, hashOf(f.Bytes), &making{again}}
	}
	if t.put(f) != nil {
		t.stop() // who takes the files knows why
	}
	return File{}
}
