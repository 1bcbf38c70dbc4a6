package cli

import (
	"errors"
	"io"
	"io/fs"
)

// A keptWriter keeps the first error of writing, so that no command ends well whose result is lost.
type keptWriter struct {
	to  io.Writer
	err error
}

func (w *keptWriter) Write(p []byte) (int, error) {
	n, err := w.to.Write(p)
	if w.err == nil {
		w.err = err
	}
	return n, err
}

// lost says that what was printed did not all arrive.
func (w *keptWriter) lost() error {
	err := w.err
	var path *fs.PathError
	if errors.As(err, &path) {
		err = path.Err // the name is the system's own, as /dev/stdout
	}
	return fault{"what this command prints could not be written: " + err.Error(),
		"free some space, or let it print to another place, and try again"}
}
