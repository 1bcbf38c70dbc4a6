package draft

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"math/rand/v2"
	"os"
	"path"
	"path/filepath"
	"slices"
	"time"

	"acreleaf/cmd/acreleaf/internal/schema"
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
	files, err := siteFiles(today)
	if err != nil {
		return nil, err
	}
	var names []string
	for _, name := range slices.Sorted(maps.Keys(files)) {
		at := path.Join(beside, name)
		if err := root.MkdirAll(path.Dir(at), 0o755); err != nil {
			return nil, err
		}
		if err := root.WriteFile(at, files[name], 0o644); err != nil {
			return nil, err
		}
		names = append(names, path.Join(contentFolder, name))
	}
	return names, root.Rename(beside, contentFolder)
}

// siteFiles are the files of the small site by their names in the content folder, and the shapes of what an author
// writes there: an editor that knows such shapes finds them beside the files.
func siteFiles(today time.Time) (map[string][]byte, error) {
	site, err := fs.Sub(patterns, "patterns/site")
	if err != nil {
		return nil, err
	}
	files := map[string][]byte{}
	err = fs.WalkDir(site, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := fs.ReadFile(site, name)
		files[name] = bytes.ReplaceAll(text, []byte("{{today}}"), []byte(today.Format(time.DateOnly)))
		return err
	})
	for name, text := range schema.Files() {
		files[path.Join(schema.Folder, name)] = text
	}
	return files, err
}
