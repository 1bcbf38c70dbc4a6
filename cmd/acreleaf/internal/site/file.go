package site

import (
	"hash/maphash"

	"acreleaf/cmd/acreleaf/internal/output"
)

// A File is a file of a site that a Maker made. A site of ten thousand pages is a gigabyte, so a page is made again
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

// give gives away a file that is made, or keeps the way to make it again.
func (p *press) give(path string, content []byte, again func() []byte) File {
	if p.put == nil {
		return File{path, hashOf(content), &making{again}}
	}
	if p.put(output.File{Path: path, Bytes: content}) != nil {
		p.stop() // who takes the files knows why
	}
	return File{}
}

// giveKept gives away a file, or keeps it.
func (p *press) giveKept(f output.File) File {
	return p.give(f.Path, f.Bytes, func() []byte { return f.Bytes })
}
