package output

import (
	"errors"
	"io/fs"
	"sync/atomic"
)

// Current says whether the folder holds, whole and unchanged, a site that was made from what the hash from stands for.
// Every file is read again: its time and size are no proof that nobody edited it. Any doubt is a no, and costs nothing
// but making the site.
func Current(dir, from string) (Report, Mark, bool) {
	w := newWriter(dir)
	if err := w.readManifest(); err != nil || from == "" || w.marked.From != from {
		return Report{}, Mark{}, false
	}
	if s, _, err := w.stand(stagingName); err != nil || s != nothing || w.find() != nil || w.hasWork() {
		return Report{}, Mark{}, false
	}
	var names []string
	for name := range w.listed {
		names = append(names, name)
	}
	var differ atomic.Bool
	err := w.each(len(names), func(i int) error {
		if !differ.Load() && !w.standsAsWritten(names[i]) {
			differ.Store(true)
		}
		return nil
	})
	return Report{Unchanged: len(names)}, w.marked, err == nil && !differ.Load()
}

// hasWork says whether a press beside the site is at work or was cut short.
func (w *Writer) hasWork() bool {
	_, err := w.disk.Lstat(w.sibling(stagingName))
	return !errors.Is(err, fs.ErrNotExist)
}

// standsAsWritten says whether a file of the list is there with the bytes that were written.
func (w *Writer) standsAsWritten(name string) bool {
	s, _, err := w.stand(name)
	if err != nil || s != file || w.listed[name].pending {
		return false
	}
	content, err := w.disk.ReadFile(w.real(name))
	return err == nil && hashOf(content) == w.listed[name].hash
}
