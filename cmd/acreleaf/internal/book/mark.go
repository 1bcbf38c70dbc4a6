package book

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"strings"
	"sync"
)

// Mark is a hash of all that a site is made from: this program, and the files of the content folder. It is "" when one
// of them cannot be read; then there is a message to give.
func Mark(o Options) string {
	program, err := program()
	if err != nil {
		return ""
	}
	h := sha256.New()
	fmt.Fprintf(h, "%s %q\n", program, o.Name)
	err = fs.WalkDir(o.Content, ".", func(name string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case name != "." && strings.HasPrefix(path.Base(name), "."): // as load does
			if entry.IsDir() {
				return fs.SkipDir
			}
			return nil
		case entry.IsDir():
			_, err := fmt.Fprintf(h, "folder %q\n", name)
			return err
		}
		content, err := fs.ReadFile(o.Content, name)
		fmt.Fprintf(h, "file %q %d\n", name, len(content))
		h.Write(content)
		return err
	})
	if err != nil {
		return ""
	}
	return hex.EncodeToString(h.Sum(nil))
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
