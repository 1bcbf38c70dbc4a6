//go:build !windows

package output

import (
	"errors"
	"syscall"
)

// isFull says whether a disk, or the user's share of it, has no room left.
func isFull(err error) bool {
	return errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT)
}

// isBusy says whether a file is in use and cannot be replaced.
func isBusy(err error) bool { return errors.Is(err, syscall.EBUSY) }

// isTooLong says whether a name has more bytes than the system takes.
func isTooLong(err error) bool { return errors.Is(err, syscall.ENAMETOOLONG) }

// noRight is why a file may not be written.
const noRight = "its folder is read-only"
