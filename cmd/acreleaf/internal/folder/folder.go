// Package folder opens the content folder: plain files and folders alone, without waiting for any of them, and none
// that lies outside. A Reading sees whether they stay the same while they are read.
//
// It must not know what is in a file.
package folder

import (
	"io/fs"
	"os"
	"path"

	"acreleaf/cmd/acreleaf/internal/message"
)

// A Folder is a folder that was opened. Links of the file system that lead out of it are not followed.
type Folder struct {
	root *os.Root
	fsys fs.FS // of the root: it has the rules for names
}

// Open opens a folder by its name on the disk.
func Open(name string) (*Folder, error) {
	root, err := os.OpenRoot(name)
	if err != nil {
		return nil, err
	}
	return &Folder{root, root.FS()}, nil
}

// Close closes the folder.
func (f *Folder) Close() error { return f.root.Close() }

// Open opens a plain file or a folder. To open a pipe would wait until somebody writes into it, and to open a device
// may set it going, so their kind is asked before. It is asked again of what was opened, since another may be in its
// place by then; the opening itself does not wait.
func (f *Folder) Open(name string) (fs.File, error) {
	info, err := fs.Stat(f.fsys, name)
	if err != nil {
		return nil, err
	}
	if err := plain(name, info); err != nil {
		return nil, err
	}
	file, err := f.root.OpenFile(name, os.O_RDONLY|withoutWaiting, 0)
	if err != nil {
		return nil, err
	}
	if info, err = file.Stat(); err == nil {
		err = plain(name, info)
	}
	if err != nil {
		_ = file.Close() // nothing was read
		return nil, err
	}
	return file, nil
}

func plain(name string, info fs.FileInfo) error {
	if info.IsDir() || info.Mode().IsRegular() {
		return nil
	}
	return &fs.PathError{Op: "open", Path: name, Err: message.NotPlain(info.Mode())}
}

// Stat looks at what a name leads to.
func (f *Folder) Stat(name string) (fs.FileInfo, error) { return fs.Stat(f.fsys, name) }

// Lstat looks at what has the name, without following a link.
func (f *Folder) Lstat(name string) (fs.FileInfo, error) { return fs.Lstat(f.fsys, name) }

// ReadLink gives where a link leads.
func (f *Folder) ReadLink(name string) (string, error) { return fs.ReadLink(f.fsys, name) }

// ReadDir lists a folder.
func (f *Folder) ReadDir(name string) ([]fs.DirEntry, error) { return fs.ReadDir(f.fsys, name) }

// Pages lists the Markdown files of a folder of the content and of those in it, in order. A folder that is not there
// has none, and one that cannot be read is reported by those who read it.
func Pages(content fs.FS, in string) []string {
	var list []string
	_ = fs.WalkDir(content, in, func(name string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() && path.Ext(name) == ".md" {
			list = append(list, name)
		}
		return nil
	})
	return list
}
