package draft

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path"
	"path/filepath"
	"strings"
	"time"
)

// contentFolder is the folder of a new site.
const contentFolder = "content"

// Site makes a small site that works in a folder, which need not be there yet, and gives the names of its files.
// Nothing is written into a folder that has a content folder already. The error is an *Error.
func Site(folder string, today time.Time) ([]string, error) {
	if info, err := os.Stat(folder); err == nil && !info.IsDir() {
		return nil, &Error{Text: fmt.Sprintf("%q is a file, and a folder is needed", folder),
			Note: "name a new folder, or an empty one"}
	}
	if _, err := os.Lstat(filepath.Join(folder, contentFolder)); !errors.Is(err, fs.ErrNotExist) {
		return nil, &Error{Text: fmt.Sprintf("there is something named %q in %q already, and nothing was written",
			contentFolder, filepath.ToSlash(folder)), Note: "name a new folder, or an empty one"}
	}
	names, err := makeSite(folder, today)
	if err != nil {
		return nil, &Error{Text: fmt.Sprintf("no site can be made in %q: %v", filepath.ToSlash(folder), cause(err)),
			Note: "see that you may write there, and that the disk has room"}
	}
	return names, nil
}

// makeSite writes all files beside their place, and then moves them there together.
func makeSite(folder string, today time.Time) ([]string, error) {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return nil, err
	}
	root, err := os.OpenRoot(folder)
	if err != nil {
		return nil, err
	}
	defer func() { _ = root.Close() }() // all that was written is closed by then
	beside := fmt.Sprintf(".acreleaf-%016x", rand.Uint64())
	defer func() { _ = root.RemoveAll(beside) }() // it has the right name by then, or is of no use
	files, err := fs.Sub(patterns, "patterns/site")
	if err != nil {
		return nil, err
	}
	var names []string
	err = fs.WalkDir(files, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() {
			return root.MkdirAll(path.Join(beside, name), 0o755)
		}
		text, err := fs.ReadFile(files, name)
		if err != nil {
			return err
		}
		names = append(names, path.Join(contentFolder, name))
		dated := strings.ReplaceAll(string(text), "{{today}}", today.Format(time.DateOnly))
		return root.WriteFile(path.Join(beside, name), []byte(dated), 0o644)
	})
	if err != nil {
		return nil, err
	}
	return names, root.Rename(beside, contentFolder)
}
