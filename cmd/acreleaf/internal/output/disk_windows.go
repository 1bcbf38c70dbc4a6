package output

import (
	"errors"
	"io/fs"
	"os"
)

// writable does not know: the rights of Windows are not in the mode of a folder.
func writable(string) error { return nil }

func sameOwner(a, b fs.FileInfo) bool { return true }

// flush flushes a file. Windows has no such thing for a folder, whose entries its journal keeps in order.
func flush(path string) error {
	info, err := os.Lstat(path)
	if err != nil || info.IsDir() {
		return err
	}
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

// isRefused says whether a file cannot be made in a folder, for a reason that does not pass by itself.
func isRefused(err error) bool {
	return errors.Is(err, fs.ErrPermission) || isTooLong(err)
}
