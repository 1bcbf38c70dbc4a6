//go:build !windows

package output

import (
	"errors"
	"os"
	"slices"
	"syscall"
)

// take asks for the system's lock, which belongs to the open file and not to the process; see flock(2).
func take(f *os.File) error {
	for {
		err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
		switch {
		case errors.Is(err, syscall.EINTR):
			continue
		case errors.Is(err, syscall.EWOULDBLOCK):
			return errTaken
		case slices.ContainsFunc([]error{syscall.ENOTSUP, syscall.EOPNOTSUPP, syscall.ENOSYS, syscall.ENOLCK, syscall.EINVAL},
			func(none error) bool { return errors.Is(err, none) }):
			return errNoLocks
		}
		return err
	}
}

// runs says whether there is a process of that number; see kill(2) with signal 0.
func runs(process int) bool {
	return process > 0 && !errors.Is(syscall.Kill(process, 0), syscall.ESRCH)
}

// discard closes a lock, and removes its file before, while nobody else can have taken it.
func discard(f *os.File, path string) {
	if isStill(f, path) {
		_ = os.Remove(path)
	}
	_ = f.Close()
}
