package output

import (
	"errors"
	"io/fs"
	"syscall"
)

// standing is what is at a path of the site's folder.
type standing int

const (
	nothing standing = iota
	folder
	file
	other // a link or a device: never ours, and never written through, since it may lead out of the folder
)

// stand looks at a path before anything is changed; info is nil for nothing.
func (w *Writer) stand(p string) (standing, fs.FileInfo, error) { return w.standIn(p, oldSiteWhole) }

// standIn looks at a path; state is what an error says of the site.
func (w *Writer) standIn(p, state string) (standing, fs.FileInfo, error) {
	info, err := w.disk.Lstat(w.real(p))
	switch {
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, syscall.ENOTDIR):
		return nothing, nil, nil
	case err != nil:
		return nothing, nil, w.sentence(p, err, state)
	case info.IsDir():
		return folder, info, nil
	case info.Mode().IsRegular():
		return file, info, nil
	}
	return other, info, nil
}
