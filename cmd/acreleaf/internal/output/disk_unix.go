//go:build !windows

package output

import (
	"errors"
	"io/fs"
	"os"
	"syscall"

	"golang.org/x/sys/unix"
)

func writable(folder string) error {
	if err := unix.Access(folder, unix.W_OK|unix.X_OK); err != nil {
		return &fs.PathError{Op: "access", Path: folder, Err: err}
	}
	return nil
}

func sameOwner(a, b fs.FileInfo) bool {
	one, isUnix := a.Sys().(*syscall.Stat_t)
	two, _ := b.Sys().(*syscall.Stat_t)
	return !isUnix || one.Uid == two.Uid && one.Gid == two.Gid
}

// flush flushes a file or a folder. Some file systems, over a network above all, cannot flush a folder alone.
func flush(path string) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	err = f.Sync()
	if errors.Is(err, syscall.EINVAL) || errors.Is(err, syscall.ENOTSUP) {
		err = nil
	}
	return errors.Join(err, f.Close())
}

// isRefused says whether a file cannot be made in a folder, for a reason that does not pass by itself.
func isRefused(err error) bool {
	return errors.Is(err, fs.ErrPermission) || errors.Is(err, syscall.EROFS) || isTooLong(err)
}
