package draft

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path"
)

// Write puts a page into the content folder, with the folders that it needs. The whole text goes to a name that no
// press reads, which then becomes the page's: nobody meets half a page, and a file that came meanwhile stays.
func Write(content *os.Root, folder string, f File) error {
	called := path.Join(folder, f.Name)
	err := content.MkdirAll(path.Dir(f.Name), 0o755)
	if err == nil {
		if err = write(content, f); errors.Is(err, fs.ErrExist) {
			return Taken(called)
		}
	}
	blocking := inTheWay(content, path.Dir(f.Name))
	switch {
	case err == nil:
		return nil
	case blocking != "":
		return &Error{Text: fmt.Sprintf("%s is a file, and a folder is needed", path.Join(folder, blocking)),
			Note: "rename it, then draft the page again"}
	case errors.Is(err, fs.ErrPermission):
		return &Error{Text: called + " may not be written", Note: "give yourself the right to write in its folder"}
	}
	return &Error{Text: fmt.Sprintf("%s cannot be written: %v", called, cause(err)),
		Note: "see that the disk is there and has room"}
}

// inTheWay is the part of the way to a folder that is no folder, or "".
func inTheWay(content *os.Root, folder string) string {
	for ; folder != "."; folder = path.Dir(folder) {
		if info, err := content.Stat(folder); err == nil && !info.IsDir() {
			return folder
		}
	}
	return ""
}

func write(content *os.Root, f File) error {
	beside := path.Join(path.Dir(f.Name), fmt.Sprintf(".acreleaf-%016x", rand.Uint64()))
	file, err := content.OpenFile(beside, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	_, err = file.Write(f.Text)
	if err = errors.Join(err, file.Close()); err == nil {
		err = settle(content, beside, f.Name, content.Link)
	}
	if err != nil {
		_ = content.Remove(beside) // it holds nothing that is not reported again
	}
	return err
}

// settle gives a file its name, unless another has it. A second name is refused where there is a first; some disks,
// such as those of USB sticks, know no second names, and there the name is looked for before.
func settle(content *os.Root, from, to string, link func(from, to string) error) error {
	err := link(from, to)
	if err == nil {
		return content.Remove(from)
	}
	if errors.Is(err, fs.ErrExist) {
		return err
	}
	if _, err := content.Lstat(to); !errors.Is(err, fs.ErrNotExist) {
		return fs.ErrExist
	}
	return content.Rename(from, to)
}

// cause is an error without the way to the file, which the message has already.
func cause(err error) error {
	var at *fs.PathError
	var two *os.LinkError
	switch {
	case errors.As(err, &at):
		return at.Err
	case errors.As(err, &two):
		return two.Err
	}
	return err
}
