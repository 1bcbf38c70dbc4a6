package media

import (
	"bufio"
	"encoding/binary"
	"errors"
	"io"

	"acreleaf/cmd/acreleaf/internal/message"
)

// CheckWhole reads a file to its end, and reports one that no program could open: cut off, or changed on its way. It
// follows how a file of its kind is built, and never has more than a part of it in memory. What CheckHead and CheckSVG
// look at it leaves to them. An error is one of reading.
func (k Kind) CheckWhole(file io.Reader) (message.List, error) {
	w := newWalk(file)
	var said message.List
	if k.whole != nil {
		if reason := w.why(k.whole(w)); reason != "" {
			said = message.List{{ID: "file-damaged", Text: "this file is damaged: " + reason,
				Note: "copy it here again, or save it again from the program that made it"}}
		}
	}
	_, err := io.Copy(io.Discard, w.r)
	return said, errors.Join(w.failed, err)
}

// A walk reads a file from its beginning to its end.
type walk struct {
	r      *bufio.Reader
	failed error // an error of the disk
}

func newWalk(file io.Reader) *walk {
	w := &walk{}
	w.r = bufio.NewReader(reading{file, w})
	return w
}

// A reading keeps the error of the disk, which is no fault of the file.
type reading struct {
	io.Reader
	walk *walk
}

func (r reading) Read(p []byte) (int, error) {
	n, err := r.Reader.Read(p)
	if err != nil && !errors.Is(err, io.EOF) {
		r.walk.failed = err
	}
	return n, err
}

// A damage is what is wrong with a file, in words.
type damage string

func (d damage) Error() string { return string(d) }

// The damages of more than one kind.
const (
	cutOff    damage = "it is cut off, and its end is missing"
	changed   damage = "a part of it is not what was saved"
	noPicture damage = "there is no picture in it"
	noFilm    damage = "there is no film in it"
)

// why is what is wrong, in words; "" for nothing, and for a file that the disk did not give.
func (w *walk) why(err error) string {
	var d damage
	switch {
	case err == nil || w.failed != nil:
		return ""
	case errors.As(err, &d):
		return string(d)
	}
	return string(cutOff)
}

// take reads so many bytes, which are few.
func (w *walk) take(n int) ([]byte, error) {
	b := make([]byte, n)
	_, err := io.ReadFull(w.r, b)
	return b, err
}

// skip leaves out so many bytes.
func (w *walk) skip(n int64) error {
	if n < 0 {
		return changed
	}
	_, err := io.CopyN(io.Discard, w.r, n)
	return err
}

// ended says whether nothing is left.
func (w *walk) ended() bool {
	_, err := w.r.Peek(1)
	return err != nil
}

// tail reads all, and gives the last bytes of it, so many at most.
func (w *walk) tail(most int) ([]byte, int64, error) {
	var last []byte
	part, read := make([]byte, most), int64(0)
	for {
		n, err := io.ReadFull(w.r, part)
		read += int64(n)
		last = append(last, part[:n]...)
		last = append(last[:0], last[max(0, len(last)-most):]...)
		if err != nil {
			if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
				err = nil
			}
			return last, read, err
		}
	}
}

var big, little = binary.BigEndian, binary.LittleEndian
