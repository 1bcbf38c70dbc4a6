package book

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"sync"

	"acreleaf/cmd/acreleaf/internal/folder"
	"acreleaf/cmd/acreleaf/internal/media"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A Mark stands for all that a site is made from. What is made with its Options is made from just that, or Changed says
// what was something else when it was read.
type Mark struct {
	Hash    string // of this program and the content; "" when something cannot be read: then there is a message to give
	Options Options
	reading *folder.Reading
}

// MarkOf reads a content folder: its names, and the bytes of every file that may become part of a site. No other is
// opened, however large it is.
func MarkOf(o Options) Mark {
	reading := folder.NewReading(o.Content)
	o.Content = reading
	m := Mark{Options: o, reading: reading}
	program, err := program()
	if err != nil || sumContent(reading) != nil {
		return m
	}
	h := sha256.New()
	fmt.Fprintf(h, "%s %q %x\n", program, o.Name, reading.Sum())
	m.Hash = hex.EncodeToString(h.Sum(nil))
	return m
}

// Changed lists the files and folders that were not the same when the book was made from them.
func (m Mark) Changed() []string { return m.reading.Changed() }

// sumContent reads every file to its end that a press may read.
func sumContent(content *folder.Reading) error {
	return fs.WalkDir(content, ".", func(name string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case folder.Hidden(name): // as load does
			if entry.IsDir() {
				return fs.SkipDir
			}
			return nil
		case entry.IsDir():
			return nil
		}
		info, err := fs.Stat(content, name) // of what a link leads to
		if err != nil {
			return err
		}
		if !info.Mode().IsRegular() || !mayBeRead(name, info.Size()) {
			content.Leave(name)
			return nil
		}
		return readThrough(content, name)
	})
}

// mayBeRead says whether a press may read a file to its end. It refuses any other that a page links to, so that no site
// with it has a mark.
func mayBeRead(name string, size int64) bool {
	if ending := path.Ext(name); ending == ".md" || ending == ".yaml" {
		return size <= message.MaxSize
	}
	kind, known := media.Of(name)
	return known && size <= kind.Most
}

func readThrough(content fs.FS, name string) error {
	file, err := content.Open(name)
	if err != nil {
		return err
	}
	defer func() { _ = file.Close() }() // it was only read
	_, err = io.Copy(io.Discard, file)
	return err
}

// program is a hash of the running program, which has the theme and the calculations in it.
var program = sync.OnceValues(func() (string, error) {
	name, err := os.Executable()
	if err != nil {
		return "", err
	}
	file, err := os.Open(name)
	if err != nil {
		return "", err
	}
	defer func() { _ = file.Close() }() // it was only read
	h := sha256.New()
	if _, err := io.Copy(h, file); err != nil {
		return "", err
	}
	return hex.EncodeToString(h.Sum(nil)), nil
})
